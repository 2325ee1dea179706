import type {MessagePort} from 'node:worker_threads'
import type {Rows} from '../model/split-work.ts'

/** What a thread is started with. */
export interface ThreadData {
  /** Where requests come from and answers go to. */
  readonly port: MessagePort
}

/** What a thread is told of a piece of work. */
export interface PartsRequest {
  /** Tells its answers from those to the request before. */
  readonly id: number
  readonly task: unknown
  readonly parts: number
  /** Parts that are taken at a time. */
  readonly stride: number
  readonly control: Int32Array
}

/** What a thread answers: the rows from part `first` on. */
export interface PartsAnswer {
  readonly id: number
  readonly first: number
  readonly rows: Rows
}

/** Places in the control block, which all threads share. */
const taken = 0
const answered = 1

export function newControl(): Int32Array {
  return new Int32Array(new SharedArrayBuffer(8))
}

/** The next parts that nobody has taken, now taken; undefined where there are none. */
export function takeParts({
  control,
  parts,
  stride
}: Pick<PartsRequest, 'control' | 'parts' | 'stride'>): {first: number; end: number} | undefined {
  const first = Atomics.add(control, taken, 1) * stride
  return first < parts ? {first, end: Math.min(parts, first + stride)} : undefined
}

export function tellAnswered(control: Int32Array): void {
  Atomics.add(control, answered, 1)
  Atomics.notify(control, answered)
}

/** Answers given so far. */
export function answersGiven(control: Int32Array): number {
  return Atomics.load(control, answered)
}

/** Sleep until there are more answers than `known`; false where that takes longer than the patience. */
export function awaitAnswer(control: Int32Array, known: number, milliseconds: number): boolean {
  return Atomics.wait(control, answered, known, milliseconds) !== 'timed-out'
}
