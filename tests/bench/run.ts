import {archiveRows} from './archive-rows.ts'
import {checkRows} from './check-rows.ts'
import {report} from './report.ts'
import {statistics} from './statistics.ts'

/** `npm run bench` runs all; `npm run bench -- check` one. Times depend on the machine: read ratios. */
const benches: Readonly<Record<string, () => Promise<void>>> = {
  archive: archiveRows,
  check: checkRows,
  statistics,
  report
}

const wanted = process.argv.slice(2)
for (const [name, bench] of Object.entries(benches)) {
  if (wanted.length === 0 || wanted.includes(name)) await bench()
}
