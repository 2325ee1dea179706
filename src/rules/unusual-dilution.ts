import {fluidKind, isGlycol} from './fluid-kind.ts'
import type {Rule} from './rule.ts'

/** Parts of one to the other, either way. */
const mostParts = 3

export const unusualDilution = {
  code: 'unusual-dilution',
  severity: 'note',
  summary: 'glycol is diluted more or less than usual',
  why: 'Weak glycol is thinned further by rain until it no longer keeps animals; strong glycol is dense, so that animals float and escape, and costs more.',
  remedy: 'check `dilution`: parts of fluid to parts of water, such as "1:2", or a share such as "33 %"',
  source:
    '1:1 to 1:2: UK practitioner protocol (Telfer, revised 2009); 30:70: New Zealand protocol; 33, 50 and 75 % tested: Aristophanous 2010; animals float in dense fluids: Schmidt et al. 2006; the limits are proposals of ours',
  examples: [
    {files: {}, findings: []},
    {
      files: {'study.yaml': 'title: T\nfluids: {pg: {substance: propylene glycol, dilution: "1:9"}}\n'},
      findings: ['study.yaml:2:54: `1:9` makes 10 % glycol; usual is 25 to 75 %']
    },
    {
      files: {'study.yaml': 'title: T\nfluids: {pg: {substance: propylene glycol, dilution: undiluted}}\n'},
      findings: ['study.yaml:2:54: `undiluted` makes 100 % glycol; usual is 25 to 75 %']
    }
  ],
  *check({settingPlace}, index) {
    for (const [id, stated] of index.fieldwork.fluids) {
      const share = stated.dilution === undefined ? undefined : shareOf(stated.dilution)
      if (share === undefined || !isGlycol(fluidKind(stated))) continue
      const least = 1 / (mostParts + 1)
      // A share of a third rounded to 33 % must not fall out by its rounding.
      if (share >= least - 0.005 && share <= 1 - least + 0.005) continue
      yield {
        place: settingPlace(['fluids', id, 'dilution']),
        message: `\`${stated.dilution}\` makes ${Math.round(share * 100)} % glycol; usual is 25 to 75 %`
      }
    }
  }
} as const satisfies Rule

/** Share of fluid in the mixture, 0 to 1; undefined where the words cannot be read with certainty. */
function shareOf(dilution: string): number | undefined {
  const parts = /^(\d+(?:[.,]\d+)?)\s*(?::|to|\+)\s*(\d+(?:[.,]\d+)?)\b/i.exec(dilution.trim())
  if (parts !== null) {
    const [fluid, water] = [decimal(parts[1]), decimal(parts[2])]
    return fluid + water > 0 ? fluid / (fluid + water) : undefined
  }
  const percent = /^(\d+(?:[.,]\d+)?)\s*(?:%|per ?cent)/i.exec(dilution.trim())
  if (percent !== null) return decimal(percent[1]) / 100
  return /^(undiluted|pure|neat|none)$/i.test(dilution.trim()) ? 1 : undefined
}

function decimal(text = ''): number {
  return Number(text.replace(',', '.'))
}
