/**
 * Spiders of two treatments of a hemlock forest, caught in pitfall traps: the demonstration set of Chao et al. 2014,
 * Ecol. Monogr. 84:45-67, table 3 [from memory]. Original data: Sackett et al. 2011, Can. J. For. Res. 41:1839-1851
 * [from memory].
 */
const times = (species: number, count: number) => new Array<number>(species).fill(count)

export const girdled = [46, 22, 17, 15, 15, 9, 8, 6, 6, 4, ...times(4, 2), ...times(12, 1)]

export const logged = [
  88,
  22,
  16,
  15,
  13,
  10,
  8,
  8,
  7,
  7,
  7,
  5,
  ...times(3, 4),
  ...times(4, 3),
  ...times(4, 2),
  ...times(14, 1)
]
