/** `archive` in a process of its own, years later: run with a zone, a umask and a language of the caller's. */
const real = Date
const late = 1_900_000_000_000

class LateDate extends real {
  constructor(...given: readonly unknown[]) {
    super(...((given.length > 0 ? given : [late]) as [number]))
  }
  static override now(): number {
    return late
  }
}
globalThis.Date = LateDate as DateConstructor

const [study = '', zip = ''] = process.argv.slice(2)
const {archived} = await import('./small-report.ts')
const {code, err} = await archived(study, {out: zip})
if (code !== 0) throw new Error(err)
