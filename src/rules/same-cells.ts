/** Whether two rows of a table say the same in every cell; their numbers do not count. */
export function sameCells(one: {readonly row: number}, other: {readonly row: number}): boolean {
  return JSON.stringify({...one, row: 0}) === JSON.stringify({...other, row: 0})
}
