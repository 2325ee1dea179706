import {createHash} from 'node:crypto'
import {renderSvg} from '../../src/svg/render-svg.ts'
import {exampleSpecs} from './example-specs.ts'

/** Draws the example charts one after the other, in the given order, and returns their SHA-256 sums by name. */
export async function drawDigests(names: readonly string[]): Promise<Readonly<Record<string, string>>> {
  const digests: [string, string][] = []
  for (const name of names) {
    const svg = await renderSvg({
      id: `fig-${name}`,
      spec: exampleSpecs[name]!,
      title: name,
      description: name
    })
    digests.push([name, createHash('sha256').update(svg).digest('hex')])
  }
  return Object.fromEntries(digests)
}
