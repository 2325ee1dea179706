/** A study folder as the reader sees it: names, and bytes on demand, so that ten million rows need not fit in memory. */
export interface StudySource {
  /** Study-relative POSIX paths of the regular files, in code-unit order, with sizes in bytes. */
  readonly files: ReadonlyMap<string, {readonly size: number}>
  /** The bytes of one file, in chunks, from the start each time it is called. */
  read(path: string): AsyncIterable<Uint8Array>
}

/** What a build makes: output-relative POSIX path to content, in code-unit order. */
export type Outputs = ReadonlyMap<string, string | Uint8Array>
