import type {Channel} from './terminal.ts'
import {visible} from './visible.ts'

/** Work that is over sooner than this shows no progress. */
const patienceMs = 400
const betweenMs = 80

export interface Progress {
  /** A new stage of the work, shown at once: what follows may keep the whole program busy. */
  readonly stage: (what: string) => void
  /** How far it has come, shown now and then, and not at all when the work is short. */
  readonly say: (what: string) => void
  readonly clear: () => void
}

/** A line on a terminal that says what is being done, and goes away when it is done. Silent everywhere else. */
export function progress(channel: Channel, quiet: boolean): Progress {
  if (quiet || !channel.isTerminal) return {stage: () => {}, say: () => {}, clear: () => {}}
  const started = performance.now()
  let last = Number.NEGATIVE_INFINITY
  let isShown = false
  const show = (what: string): void => {
    last = performance.now()
    isShown = true
    channel.write(`\r\u001b[K${channel.paint('faint', visible(what).slice(0, channel.width - 1))}`)
  }
  return {
    stage: show,
    say(what) {
      const now = performance.now()
      if (now - started >= patienceMs && now - last >= betweenMs) show(what)
    },
    clear() {
      if (isShown) channel.write('\r\u001b[K')
      isShown = false
    }
  }
}
