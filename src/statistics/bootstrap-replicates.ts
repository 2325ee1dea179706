import {drawSample} from './draw-sample.ts'
import {estimatedAssemblage} from './estimated-assemblage.ts'
import type {FrequencyCounts} from './frequency-counts.ts'
import type {ReplicatedStream} from './random-stream.ts'

/**
 * Values of several statistics in each of the replicates first ... end - 1, for bootstrapStandardErrors. Replicate r
 * draws from its own stream, so that ranges computed apart and joined give the same numbers. No replicates at all
 * where coverage, and with it the assemblage, is not defined; an empty row for a replicate without any species.
 */
export function bootstrapReplicates<Row extends ArrayLike<number>>(
  sample: FrequencyCounts,
  stream: ReplicatedStream,
  first: number,
  end: number,
  statistics: (sample: FrequencyCounts) => Row
): (Row | readonly [])[] {
  const assemblage = estimatedAssemblage(sample)
  if (assemblage === undefined) return []
  return [...stream.replicates(first, end)].map((replicate) => {
    const drawn = drawSample(assemblage, replicate)
    return drawn.records === 0 ? [] : statistics(drawn)
  })
}
