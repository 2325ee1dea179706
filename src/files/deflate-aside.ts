import {AsyncDeflate, ZipPassThrough} from 'fflate'

/** Bytes that may wait for the other thread. */
const mostWaiting = 4 * 1024 * 1024

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

  stop(): void {
    this.#deflate.terminate()
  }

  #change(): Promise<void> {
    return new Promise((resolve) => {
      this.#wake = resolve
    })
  }
}
