/** `2,866`: thousands apart, written out by hand so that no locale can change it. */
export function grouped(count: number): string {
  return String(count).replace(/\B(?=(\d{3})+$)/g, ',')
}

/** `1 error`, `2,866 errors`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${grouped(count)} ${count === 1 ? one : many}`
}
