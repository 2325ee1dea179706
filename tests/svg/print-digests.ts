/** Prints the sums of the example charts, for the test that draws them in other processes. */
import {drawDigests} from './draw-digest.ts'
import {exampleSpecs} from './example-specs.ts'

console.log(JSON.stringify(await drawDigests(Object.keys(exampleSpecs))))
