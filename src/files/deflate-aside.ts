import * as zlib from 'node:zlib'
import {AsyncDeflate, ZipPassThrough} from 'fflate'

/** Bytes that may wait for the other thread, so that this one can go on to files that are still to be made. */
const mostWaiting = 64 * 1024 * 1024

/** A file of a zip that is deflated on another thread, while this one makes what comes next: the same bytes, sooner. */
export class DeflatedAside extends ZipPassThrough {
  readonly #deflate: AsyncDeflate
  #wake: () => void = () => {}
  #isDone = false
  #failure: Error | undefined

  constructor(name: string, level: 6) {
    super(name)
    this.compression = 8
    this.#deflate = new AsyncDeflate({level}, (error, chunk, final) => {
      if (error) this.#failure = error
      this.ondata(error, chunk, final)
      this.#isDone = final || error !== null
      this.#wake()
    })
    this.#deflate.ondrain = () => this.#wake()
  }

  /** Node's own CRC-32 is ten times as fast as that of the library, and Node has it since 20.15. */
  override push(chunk: Uint8Array<ArrayBuffer>, final = false): void {
    if (zlib.crc32 === undefined) {
      super.push(chunk, final)
      return
    }
    this.crc = zlib.crc32(chunk, this.crc ?? 0)
    this.size += chunk.length
    this.process(chunk, final)
  }

  protected override process(chunk: Uint8Array<ArrayBuffer>, final: boolean): void {
    this.#deflate.push(chunk, final)
  }

  /** Until more may be pushed. */
  async room(): Promise<void> {
    while (this.#deflate.queuedSize > mostWaiting && this.#failure === undefined) await this.#change()
    if (this.#failure !== undefined) throw this.#failure
  }

  /** Until all that was pushed has come out. */
  async finished(): Promise<void> {
    while (!this.#isDone) await this.#change()
    if (this.#failure !== undefined) throw this.#failure
  }

  get isDone(): boolean {
    return this.#isDone && this.#failure === undefined
  }

  stop(): void {
    this.#deflate.terminate()
  }

  #change(): Promise<void> {
    return new Promise((resolve) => {
      this.#wake = resolve
    })
  }
}

/** Bytes of later files that may pile up behind one that is still being deflated. */
const mostAhead = 64 * 1024 * 1024

/** The files that other threads are still deflating: what comes after them in a zip waits in memory, but not without end. */
export class WorkingAside {
  readonly #working = new Set<DeflatedAside>()
  #ahead = 0

  add(file: DeflatedAside): void {
    this.#working.add(file)
  }

  /** Until so many more bytes of a file may be taken on behind those that are not finished. */
  async goAhead(bytes: number, current?: DeflatedAside): Promise<void> {
    for (const file of this.#working) if (file.isDone) this.#working.delete(file)
    const isAlone =
      this.#working.size === 0 ||
      (this.#working.size === 1 && current !== undefined && this.#working.has(current))
    this.#ahead = isAlone ? 0 : this.#ahead + bytes
    if (this.#ahead > mostAhead) await this.settle(current)
  }

  /** Until all are finished, but for one that is still being fed. */
  async settle(except?: DeflatedAside): Promise<void> {
    for (const file of this.#working) {
      if (file === except) continue
      await file.finished()
      this.#working.delete(file)
    }
    this.#ahead = 0
  }

  stop(): void {
    for (const file of this.#working) file.stop()
  }
}
