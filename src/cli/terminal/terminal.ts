import type {BrowserPlaces} from '../../browser/find-browser.ts'
import type {Paint} from './paint.ts'

/** One of the two ways out of a command, and what it can show. */
export interface Channel {
  write(text: string): void
  readonly isTerminal: boolean
  /** Columns to fill. */
  readonly width: number
  readonly paint: Paint
  /** Whether lines may be drawn with box characters; plain ASCII where not. */
  readonly draws: boolean
}

/** The world of a command: results go to `out`, everything else to `err`. */
export interface Terminal {
  readonly out: Channel
  readonly err: Channel
  /** Show where in the code a fault of ours happened. */
  readonly debug: boolean
  /** Where a browser may be, for printing; the usual places where absent. */
  readonly browsers?: BrowserPlaces
}
