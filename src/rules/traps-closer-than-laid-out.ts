import {greatCircleDistance} from '../statistics/great-circle-distance.ts'
import type {TrapAtWork} from './fieldwork.ts'
import {numberOf} from './number-of.ts'
import type {Rule} from './rule.ts'

/** Ours, no source: nearer than this part of the spacing is nearer than laid out. */
const nearPart = 0.8
/** What two readings of a hand-held receiver may be off together, in metres (from memory). */
const readingErrorM = 10

export const trapsCloserThanLaidOut = {
  code: 'traps-closer-than-laid-out',
  severity: 'note',
  summary: 'two traps of a site stand closer together than the layout says',
  why: "The methods would state a spacing that the traps do not have; near traps empty each other's ground.",
  remedy: 'correct the position of the trap in traps.csv, or `layout.spacing_m` in study.yaml',
  source:
    'depletion between near traps: Digweed et al. 1995; the limit, 0.8 of the spacing, is a proposal of ours',
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'study.yaml': 'title: T\nlayout: {spacing_m: 10}\n',
        'traps.csv':
          'trap_id,site_id,x_m,y_m\nW1-1,W1,0,0\nW1-2,W1,10,0\nW1-3,W1,20,0\nM1-1,M1,0,0\nM1-2,M1,3,4\n'
      },
      findings: ['traps.csv:6:9: traps M1-1 and M1-2 stand 5 m apart; the layout says 10 m']
    }
  ],
  *check({settings, settingPlace}, index) {
    const spacing = settings.layout?.spacing_m
    if (spacing === undefined) return
    const measured = [...index.fieldwork.trapsOfSite.values()]
      .map(inMetres)
      .filter(({points}) => points.length > 1)
    const near = measured.flatMap(({points, exact}) => {
      const limit = spacing * nearPart - (exact ? 0 : readingErrorM)
      const pair = limit > 0 ? firstPairWithin(points, limit) : undefined
      if (pair === undefined) return []
      const {one, other, metres} = pair
      const how = `${one.trap.trapId} and ${other.trap.trapId} stand ${Number(metres.toFixed(1))} m apart`
      return [{how, place: index.place('traps', other.trap.row, exact ? 'x_m' : 'latitude')}]
    })
    if (near.length > 2 && near.length * 2 > measured.length) {
      const place = settingPlace(['layout', 'spacing_m'])
      const sites = `${near.length} of ${numberOf(measured.length, 'site')}`
      yield {
        place,
        message: `the layout says ${spacing} m, but traps of ${sites} are nearer: ${near[0]?.how}`
      }
      return
    }
    for (const {how, place} of near) yield {place, message: `traps ${how}; the layout says ${spacing} m`}
  }
} as const satisfies Rule

interface Point {
  readonly at: TrapAtWork
  readonly x: number
  readonly y: number
}

/** Metres from the corner of the site where traps have them, else from the first trap by latitude and longitude. */
function inMetres(traps: readonly TrapAtWork[]): {
  readonly points: readonly Point[]
  readonly exact: boolean
} {
  const paced = traps.flatMap((at) => {
    const {xM: x, yM: y} = at.trap
    return x === undefined || y === undefined ? [] : [{at, x, y}]
  })
  if (paced.length > 1) return {points: paced, exact: true}
  const placed = traps.flatMap((at) => {
    const {latitude, longitude} = at.trap
    return latitude === undefined || longitude === undefined ? [] : [{at, latitude, longitude}]
  })
  const [origin] = placed
  const points = placed.map(({at, latitude, longitude}) => ({
    at,
    x:
      signed(longitude - origin!.longitude) *
      greatCircleDistance({latitude, longitude}, {latitude, longitude: origin!.longitude}),
    y:
      signed(latitude - origin!.latitude) *
      greatCircleDistance({latitude, longitude: 0}, {latitude: origin!.latitude, longitude: 0})
  }))
  return {points, exact: false}
}

function signed(difference: number): number {
  return difference < 0 ? -1 : 1
}

/** By squares of the limit's size: a near neighbour stands in the same square or one beside it, so few are compared. */
function firstPairWithin(points: readonly Point[], limit: number) {
  const squares = new Map<string, Point[]>()
  for (const point of points) {
    const column = Math.floor(point.x / limit)
    const line = Math.floor(point.y / limit)
    for (let dx = -1; dx <= 1; dx++) {
      for (let dy = -1; dy <= 1; dy++) {
        for (const other of squares.get(`${column + dx} ${line + dy}`) ?? []) {
          const metres = Math.hypot(point.x - other.x, point.y - other.y)
          if (metres < limit) return {one: other.at, other: point.at, metres}
        }
      }
    }
    const own = squares.get(`${column} ${line}`)
    if (own) own.push(point)
    else squares.set(`${column} ${line}`, [point])
  }
  return undefined
}
