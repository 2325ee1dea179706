/** Where something is written: a study-relative POSIX path, with 1-based line and column of the file as its author sees it. */
export interface Place {
  readonly file: string
  readonly line?: number
  readonly column?: number
}

/** `catch.csv:17:4`, the form that editors and terminals turn into links. */
export function formatPlace(place: Place): string {
  return [place.file, place.line, place.column].filter((part) => part !== undefined).join(':')
}
