import type {FrequencyCounts} from './frequency-counts.ts'

/**
 * Shannon entropy, in nats, of the expected frequency counts of a subsample of m (individuals or sampling units),
 * for whole 1 <= m <= the reference size and a sample that is not empty.
 *
 * Formula: -sum over k of (k/M) ln(k/M) f_k(m), M = m records / size the expected records,
 * f_k(m) = sum over species of choose(X, k) choose(n-X, m-k) / choose(n, m).
 *
 * Source: Chao et al. 2014, Ecol. Monogr. 84:45-67, table 1 (individuals) and table 2 (incidences).
 *
 * Of few sampling units with fewer than one expected record it is negative, as the formula says.
 *
 * Each distinct count is walked outwards from its likeliest k by the ratio of neighbouring terms, as far as they
 * matter, and the terms are divided by their own sum; so no factorial is ever formed and the cost grows with the
 * square root of m.
 */
export function expectedEntropy({classes, records, size}: FrequencyCounts, m: number): number {
  const expectedRecords = (m * records) / size
  let sum = 0
  for (const {count, species} of classes) sum += species * expectedCountLogCount(count, size, m)
  return Math.log(expectedRecords) - sum / expectedRecords
}

const NEGLIGIBLE = 1e-20

/** E[K ln K] for the number K of m draws without replacement out of n that fall on the x marked ones. */
export function expectedCountLogCount(x: number, n: number, m: number): number {
  const others = n - x
  const mode = Math.min(Math.floor(((x + 1) * (m + 1)) / (n + 2)), x, m)
  const table = countLogCount(x)
  let total = 1
  let sum = table[mode]!
  let term = 1
  for (let k = mode; k < x && k < m; k++) {
    term *= ((x - k) * (m - k)) / ((k + 1) * (others - m + k + 1))
    if (term < NEGLIGIBLE) break
    total += term
    sum += term * table[k + 1]!
  }
  term = 1
  for (let k = mode; k > 0 && others - m + k > 0; k--) {
    term *= (k * (others - m + k)) / ((x - k + 1) * (m - k + 1))
    if (term < NEGLIGIBLE) break
    total += term
    sum += term * table[k - 1]!
  }
  return sum / total
}

// A table of constants: k ln k is the same whoever asks, and a curve asks for it millions of times.
const logTable: number[] = [0]

function countLogCount(largest: number): readonly number[] {
  for (let k = logTable.length; k <= largest; k++) logTable.push(k * Math.log(k))
  return logTable
}
