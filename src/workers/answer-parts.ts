import {workerData} from 'node:worker_threads'
import type {Rows, RowsOfParts} from '../model/split-work.ts'
import {
  type PartsAnswer,
  type PartsRequest,
  type ThreadData,
  takeParts,
  tellAnswered
} from './shared-parts.ts'

/** The far end of splitAmongThreads: takes parts of each task as long as there are any, and answers their rows. */
export function answerParts(rowsOf: (task: unknown) => RowsOfParts): void {
  const {port} = workerData as ThreadData
  port.on('message', (request: PartsRequest) => {
    let range = takeParts(request)
    if (range === undefined) return
    const rows = rowsOf(request.task)
    for (; range !== undefined; range = takeParts(request)) {
      const {first, end} = range
      const answer: PartsAnswer = {id: request.id, first, rows: rows(first, end)}
      port.postMessage(answer, buffersOf(answer.rows))
      tellAnswered(request.control)
    }
  })
}

/** What is handed over rather than copied. */
function buffersOf(rows: Rows): ArrayBuffer[] {
  const buffers = rows.flatMap((row) =>
    row instanceof Float64Array && row.buffer instanceof ArrayBuffer ? [row.buffer] : []
  )
  return [...new Set(buffers)]
}
