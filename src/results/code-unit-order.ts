/** Order of two strings by their UTF-16 code units: the same on every machine, whatever its language. */
export function codeUnitOrder(first: string, second: string): number {
  return first < second ? -1 : first > second ? 1 : 0
}
