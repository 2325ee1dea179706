import {expect, test} from 'vitest'
import {incidenceCurves} from '../../src/charts/incidence-curves.ts'
import {bareHabitat, resultsOf, threeHabitats} from './fixture.ts'
import {column, specTexts} from './spec-values.ts'

const results = resultsOf([...threeHabitats, bareHabitat])
const [figure] = incidenceCurves.figures(results)

test('the data are the curves of all species, parted at the units sampled', () => {
  const curves = results.scopes[0]!.habitats.flatMap(({incidence}) =>
    incidence.curves.filter(({order}) => order === 0)
  )
  expect(column(figure, 'sampling_units')).toEqual(curves.flatMap(({at}) => at))
  const within = column(figure, 'part').filter((part) => part === 'within the catch')
  expect(within).toHaveLength(curves.reduce((sum, curve) => sum + curve.within, 0))
})

test('the axis says what a sampling unit is', () => {
  expect(JSON.stringify(figure?.spec)).toContain('sampling units: sites, each in a round')
})

test('the description tells species and units, and where the line ends', () => {
  expect(figure?.alternative).toContain(
    'Oak wood: 18 species in 20 sites, each in a round; drawn on to 40 of them, where 19.6 species are expected.'
  )
  expect(figure?.alternative).toContain('Quarry floor: no line.')
  expect(specTexts(figure)).toContain('No line, for want of catch: Quarry floor.')
})
