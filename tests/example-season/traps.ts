import {csvText} from './csv-text.ts'
import {sites} from './places.ts'
import {installed, removed} from './season.ts'

export interface Trap {
  readonly trap_id: string
  readonly site_id: string
  readonly trap_type: string
  readonly fluid: string
  readonly x_m: number
  readonly y_m: number
  readonly installed: string
  readonly removed: string
  readonly remarks?: string
}

/** Steps from trap to trap, each exactly 30 m long, so that a map shows lines that bend a little with the ground. */
const steps: Readonly<Record<string, readonly [number, number]>> = {
  OAK1: [24, 18],
  OAK2: [30, 0],
  OAK3: [18, 24],
  OAK4: [24, 18],
  HAY1: [30, 0],
  HAY2: [0, 30],
  HAY3: [24, 18],
  HAY4: [30, 0],
  BAR1: [0, 30],
  BAR2: [18, 24],
  BAR3: [30, 0],
  BAR4: [0, 30]
}

export const traps: readonly Trap[] = sites.flatMap((site) => {
  const [east, north] = steps[site.site_id] ?? [30, 0]
  return Array.from({length: 6}, (_, index) => ({
    trap_id: `${site.site_id}-${index + 1}`,
    site_id: site.site_id,
    trap_type: 'cup',
    fluid: 'pg',
    x_m: east * index,
    y_m: north * index,
    installed,
    removed
  }))
})

export function trapsCsv(): string {
  return csvText(
    ['trap_id', 'site_id', 'trap_type', 'fluid', 'x_m', 'y_m', 'installed', 'removed', 'remarks'],
    traps
  )
}
