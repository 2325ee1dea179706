import {csvText} from './csv-text.ts'
import {nightsPerRound, rounds, seasonDay} from './season.ts'
import {stream} from './stream.ts'

/** Nights after 14 April 2025, and the rain of that day: the storm that flooded the low ground in round R4. */
const storm: ReadonlyMap<number, number> = new Map([
  [46, 12.4],
  [47, 38.6],
  [48, 51.2],
  [49, 22.8],
  [50, 3.4]
])

/** The hot fortnight of round R7, without a drop of rain, that dried out the traps in the sun. */
const isHotSpell = (night: number) => night >= 84 && night < 98

/** Daily weather from the digging in to the last collection. An even season has neither storm nor hot spell. */
export function weatherCsv(kind: 'as it was' | 'even'): string {
  const last = rounds.length * nightsPerRound
  const rows = Array.from({length: last + 8}, (_, index) => {
    const night = index - 7
    const draw = stream(`weather of night ${night}`)
    const wet = draw() < 0.36
    const amount = draw()
    const shower = wet ? amount * amount * 11 + 0.2 : 0
    const awayFromMidsummer = (night - 88) / 95
    const warmest = 12 + 10 * (1 - awayFromMidsummer * awayFromMidsummer) + 6 * draw() - 3
    const hot = kind === 'as it was' && isHotSpell(night)
    const maximum = warmest + (hot ? 5 : 0)
    const minimum = maximum - 7 - 5 * draw()
    const rain = kind === 'as it was' ? (hot ? 0 : (storm.get(night) ?? shower)) : shower
    return {
      date: seasonDay(night),
      rain_mm: rain.toFixed(1),
      temp_min_c: withoutMinusZero(minimum),
      temp_max_c: withoutMinusZero(maximum)
    }
  })
  return csvText(['date', 'rain_mm', 'temp_min_c', 'temp_max_c'], rows)
}

function withoutMinusZero(value: number): string {
  const text = value.toFixed(1)
  return text === '-0.0' ? '0.0' : text
}
