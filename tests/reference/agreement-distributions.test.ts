import {expect, test} from 'vitest'
import {countLogLikelihood} from '../../src/statistics/count-log-likelihood.ts'
import {garwoodInterval} from '../../src/statistics/garwood-interval.ts'
import {
  betaCdf,
  chiSquareUpperTail,
  digamma,
  logGamma,
  normalQuantile,
  studentCdf,
  studentQuantile,
  trigamma
} from '../../src/statistics/special-functions.ts'
import {disagreement, disagreements} from './disagreement.ts'
import {reference} from './reference-file.ts'

/**
 * Each distribution of the second implementation by ours, as arguments and value; those that we have only the other
 * way round (a quantile whose tail, a tail whose quantile) are put through that and compared there.
 */
const ours: Readonly<
  Record<string, (args: readonly number[], value: number) => readonly [ours: number, theirs: number]>
> = {
  normalCdf: ([x], value) => [normalQuantile(value), x!],
  normalQuantile: ([p], value) => [normalQuantile(p!), value],
  tUpper: ([t, df], value) => [studentCdf(-t!, df!), value],
  tQuantile: ([p, df], value) => [studentQuantile(p!, df!), value],
  chiSquareUpper: ([x, df], value) => [chiSquareUpperTail(x!, df!), value],
  chiSquareQuantile: ([p, df], value) => [chiSquareUpperTail(value, df!), 1 - p!],
  fUpper: ([f, df1, df2], value) => [betaCdf(df2! / (df2! + df1! * f!), df2! / 2, df1! / 2), value],
  betaRegularized: ([a, b, x], value) => [betaCdf(x!, a!, b!), value],
  gammaRegularizedUpper: ([a, x], value) => [chiSquareUpperTail(2 * x!, 2 * a!), value],
  logGamma: ([x], value) => [logGamma(x!), value],
  digamma: ([x], value) => [digamma(x!), value],
  trigamma: ([x], value) => [trigamma(x!), value],
  negativeBinomialLogPmf: ([y, mu, theta], value) => [countLogLikelihood([y!], [mu!], theta!), value],
  poissonLogPmf: ([y, mu], value) => [countLogLikelihood([y!], [mu!], Number.POSITIVE_INFINITY), value]
}

const names = [...new Set(reference.spots.map(([name]) => name))]

test.each(names)('%s has the values that the second implementation computed in 40 digits', (name) => {
  const found = reference.spots
    .filter(([other]) => other === name)
    .flatMap(([, args, value]) => {
      const [own, theirs] = ours[name]!(args, value)
      return disagreement(`${name}(${args.join(', ')})`, own, theirs)
    })
  expect(found).toEqual([])
})

test('exact Poisson intervals, of up to a million events, are those of the second implementation', () => {
  const found = reference.garwood.flatMap(([count, lower, upper]) => {
    const {low, high} = garwoodInterval(count)
    return disagreements(`${count} events`, [low, high], [lower, upper])
  })
  expect(found).toEqual([])
})
