import {MessageChannel, type MessagePort, receiveMessageOnPort, Worker} from 'node:worker_threads'
import type {Rows, SplitWork} from '../model/split-work.ts'
import {
  answersGiven,
  awaitAnswer,
  newControl,
  type PartsAnswer,
  type PartsRequest,
  type ThreadData,
  takeParts
} from './shared-parts.ts'

export interface ThreadOptions {
  /** The script of the threads, which calls answerParts. JavaScript: a thread cannot load TypeScript. */
  readonly entry: URL
  /** Threads that compute, this one included. */
  readonly cores: number
}

/** Takes by each thread, if all are equally quick: enough that none waits long for the last. */
const takesEach = 4

/** A thread that is silent for longer has died: its parts are computed here. */
const patience = 60_000

/**
 * Work shared by threads. This thread computes too, and waits at the end only for parts that another has taken; so a
 * thread that starts slowly, or never, costs nothing. Threads start with the first work and do not keep the process
 * alive.
 */
export function splitAmongThreads({entry, cores}: ThreadOptions): SplitWork {
  let ports: readonly MessagePort[] | undefined
  let requests = 0
  return (task, parts, inline) => {
    ports ??= Array.from({length: cores - 1}, () => startThread(entry))
    const id = ++requests
    const stride = Math.max(1, Math.ceil(parts / (cores * takesEach)))
    const request: PartsRequest = {id, task, parts, stride, control: newControl()}
    // Its own first part before the others hear of the work: on a busy machine they could take it all meanwhile.
    let range = takeParts(request)
    for (const port of ports) port.postMessage(request)
    const rowsFrom = new Map<number, Rows>()
    for (; range !== undefined; range = takeParts(request)) {
      rowsFrom.set(range.first, inline(range.first, range.end))
    }
    const ranges = Math.ceil(parts / stride)
    let known = 0
    while (rowsFrom.size < ranges) {
      const heard = awaitAnswer(request.control, known, patience)
      // Counted before they are collected, so that none that comes in between is slept through.
      known = answersGiven(request.control)
      for (const port of ports) collectAnswers(port, id, rowsFrom)
      if (!heard) break
    }
    return Array.from({length: ranges}, (_, range) => {
      const first = range * stride
      return rowsFrom.get(first) ?? inline(first, Math.min(parts, first + stride))
    }).flat()
  }
}

function startThread(entry: URL): MessagePort {
  const {port1, port2} = new MessageChannel()
  const data: ThreadData = {port: port2}
  const thread = new Worker(entry, {workerData: data, transferList: [port2]})
  // Whatever ails it, its parts are computed here.
  thread.on('error', () => undefined)
  thread.unref()
  port1.unref()
  return port1
}

function collectAnswers(port: MessagePort, id: number, rowsFrom: Map<number, Rows>): void {
  for (let received = receiveMessageOnPort(port); received; received = receiveMessageOnPort(port)) {
    const {id: answered, first, rows} = received.message as PartsAnswer
    if (answered === id) rowsFrom.set(first, rows)
  }
}
