import type {LoggerInterface} from 'vega'
import type {TopLevelSpec} from 'vega-lite'
import type {PictureRequest} from '../model/draw-picture.ts'
import {closedLoader} from './closed-loader.ts'
import {loadEngine} from './engine.ts'
import {polishSvg} from './polish-svg.ts'
import {requireUtc} from './require-utc.ts'
import {theme} from './theme.ts'

export interface SvgRequest extends PictureRequest {
  /**
   * Receives what the chart library finds doubtful, for example a logarithmic axis with a zero on it. Without this
   * function a doubt is a fault: a picture that is quietly wrong would be printed like any other.
   */
  readonly onWarning?: (warning: string) => void
}

/** The library numbers clip paths and gradients in a counter of the whole process: one chart at a time, then. */
let queue: Promise<unknown> = Promise.resolve()

/**
 * The picture as SVG text that can stand in an HTML page or as a file of its own. The same request gives the same
 * bytes in every process, time zone and language, whatever was drawn before.
 *
 * @throws Error naming the figure, when the specification is not sound or doubtful, asks for a file or an address,
 * depends on the time zone, or leads to coordinates that are not numbers. These are faults of the chart, not of data.
 */
export function renderSvg(request: SvgRequest): Promise<string> {
  const turn = queue.then(() => draw(request))
  queue = turn.catch(() => undefined)
  return turn
}

async function draw(request: SvgRequest): Promise<string> {
  try {
    if (!/^[A-Za-z][\w-]*$/.test(request.id))
      throw new Error('the id must be a letter, then letters, digits, - and _')
    return polishSvg(await renderScene(request), request)
  } catch (cause) {
    throw new Error(`Figure ${request.id}: ${cause instanceof Error ? cause.message : String(cause)}`, {
      cause
    })
  }
}

async function renderScene({spec, onWarning}: SvgRequest): Promise<string> {
  const {vega, vegaLite} = await loadEngine()
  const {logger, errors} = collectingLogger(onWarning)
  // A copy, because the library marks the data rows that it is given, and a second drawing would find the marks.
  const copy = structuredClone(spec) as unknown as TopLevelSpec
  const compiled = vegaLite.compile(copy, {config: theme, logger}).spec
  requireUtc(compiled)

  vega.resetSVGDefIds()
  const {loader, refused} = closedLoader()
  const view = new vega.View(vega.parse(compiled), {renderer: 'none', loader, logger})
  try {
    const svg = await view.toSVG()
    if (refused.length > 0)
      throw new Error(`charts read no files and no addresses, but this one asks for ${refused[0]}`)
    if (errors.length > 0) throw new Error(errors[0]!)
    return svg
  } finally {
    view.finalize()
  }
}

/** The library reports faults and goes on; here they are kept, so that a faulty picture is never handed out. */
function collectingLogger(onWarning: SvgRequest['onWarning']): {
  logger: LoggerInterface
  errors: readonly string[]
} {
  const errors: string[] = []
  function level(): number
  function level(value: number): LoggerInterface
  function level(value?: number): number | LoggerInterface {
    return value === undefined ? 2 : logger
  }
  const logger: LoggerInterface = {
    level,
    error(...parts) {
      errors.push(parts.map(String).join(' '))
      return logger
    },
    warn(...parts) {
      const warning = parts.map(String).join(' ')
      if (onWarning) onWarning(warning)
      else errors.push(warning)
      return logger
    },
    info: () => logger,
    debug: () => logger
  }
  return {logger, errors}
}
