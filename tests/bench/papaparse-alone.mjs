// The floor of `check`: papaparse reading the same file as a stream, and doing nothing with it.
import {createReadStream} from 'node:fs'
import Papa from 'papaparse'

let rows = 0
Papa.parse(createReadStream(process.argv[2], {encoding: 'utf8', highWaterMark: 256 * 1024}), {
  header: false,
  step: () => {
    rows += 1
  },
  complete: () => console.log(rows)
})
