/** `verify` in a process of its own, with the most memory that it ever held. */
import {verified} from './small-report.ts'

const {code, err} = await verified(process.argv[2])
console.log(JSON.stringify({code, err, peakMegabytes: process.resourceUsage().maxRSS / 1024}))
