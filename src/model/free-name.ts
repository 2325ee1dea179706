/** The name wanted, or where that is taken the same with the first number after it, from 2, that is not. */
export function freeName(
  wanted: string,
  isTaken: (name: string) => boolean,
  numbered: (number: number) => string = (number) => `${wanted}-${number}`
): string {
  let name = wanted
  for (let number = 2; isTaken(name); number++) name = numbered(number)
  return name
}
