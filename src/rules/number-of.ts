/** `1 row`, `3 rows`; the second word where the plural is no plain s. */
export function numberOf(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`
}
