import type {Taxon} from '../model/study.ts'
import {fewOf} from './few-of.ts'
import {numberOf} from './number-of.ts'
import type {Rule} from './rule.ts'

/** Ours, no source: the smallest mites and the largest centipedes lie between. */
const shortestMm = 0.1
const longestMm = 150

const wideRanks = /^(infra|sub|super)?(family|order|class|phylum|tribe)$/i

export const implausibleBodyLength = {
  code: 'implausible-body-length',
  severity: 'caution',
  summary: 'a body length is not that of any animal of a pitfall trap, or is given for a whole family',
  why: 'Large beetles are over-represented in pitfall traps, so lengths are used to judge a catch; one in the wrong unit misleads.',
  remedy: 'give the typical length of one kind in millimetres; leave the cell empty for families and above',
  source: 'body size and bias: Hancock & Legg 2012; the limits, 0.1 and 150 mm, are proposals of ours',
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'taxa.csv':
          'taxon,rank,body_length_mm\nCarabus problematicus,species,240\nAbax parallelepipedus,species,19\n'
      },
      findings: ['taxa.csv:2:31: a body length of 240 mm is outside 0.1 to 150 mm: Carabus problematicus']
    },
    {
      files: {'taxa.csv': 'taxon,rank,body_length_mm\nCarabidae,family,8\n'},
      findings: [
        'taxa.csv:2:18: 1 name above the genus has a body length, which no single length can describe: Carabidae'
      ]
    }
  ],
  *check({taxa}, index) {
    for (const {row, taxon, bodyLengthMm} of taxa) {
      if (bodyLengthMm === undefined || (bodyLengthMm >= shortestMm && bodyLengthMm <= longestMm)) continue
      yield {
        place: index.place('taxa', row, 'body_length_mm'),
        message: `a body length of ${bodyLengthMm} mm is outside ${shortestMm} to ${longestMm} mm: ${taxon}`
      }
    }
    const wide = taxa.filter(
      ({rank, bodyLengthMm}: Taxon) => bodyLengthMm !== undefined && wideRanks.test(rank?.trim() ?? '')
    )
    const [first] = wide
    if (first === undefined) return
    yield {
      place: index.place('taxa', first.row, 'body_length_mm'),
      message: `${numberOf(wide.length, 'name')} above the genus ${wide.length === 1 ? 'has' : 'have'} a body length, which no single length can describe: ${fewOf(wide.map(({taxon}) => taxon))}`,
      severity: 'note'
    }
  }
} as const satisfies Rule
