import type {PlanningResult, Results} from '../../model/results.ts'
import {formatMeasure} from '../format-measure.ts'
import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'

export const planning: TableDefinition = {
  name: 'planning',
  summary: 'What another season would take: further trap-nights for completeness and for a narrower rate.',
  tables: ({results}) => {
    const {coverageTarget, halfWidthTarget} = results.planning
    const units = results.design.unit === 'trap' ? 'traps' : 'sites'
    return [
      {
        name: 'planning',
        columns: [
          wordColumn('Group'),
          wordColumn('Habitat'),
          numberColumn('Effort', 'trap-nights'),
          numberColumn(units === 'traps' ? 'Traps' : 'Sites'),
          numberColumn('Coverage'),
          numberColumn(`Further for coverage ${formatMeasure(coverageTarget)}`, 'trap-nights'),
          numberColumn('Half-width', '% of the activity-density'),
          numberColumn(`Further for ${formatMeasure(halfWidthTarget)}, same ${units}`, 'trap-nights'),
          numberColumn(`Or further ${units} for ${formatMeasure(halfWidthTarget)}`)
        ],
        rows: plannings(results).flatMap(({of, habitats}) =>
          habitats.map(({label, net, units, coverage, nightsForCoverage, ...rate}) => [
            cell.text(of),
            cell.text(label),
            cell.measure(net),
            cell.measure(units),
            cell.measure(coverage),
            cell.measure(nightsForCoverage),
            cell.measure(rate.halfWidth),
            cell.measure(rate.nightsForRate),
            cell.measure(rate.unitsForRate)
          ])
        ),
        empty: 'There is no habitat to plan for.'
      }
    ]
  }
}

/** Of all names, then of each group. */
function plannings({planning: all, scopes}: Results): readonly PlanningResult[] {
  return [all, ...scopes.map((scope) => scope.planning)]
}
