import type {Rule} from './rule.ts'

export const invalidOrcid = {
  code: 'invalid-orcid',
  severity: 'caution',
  summary: 'an ORCID iD cannot be right',
  why: 'The link in every document would lead to nobody, or to somebody else.',
  remedy: 'copy the iD from your page at orcid.org: sixteen digits in fours, the last of which may be X',
  source: 'ORCID, structure of the identifier: check character by ISO/IEC 7064, MOD 11-2',
  examples: [
    {
      files: {'study.yaml': 'title: T\npeople: [{name: Ada Ash, orcid: 0000-0002-1825-0097}]\n'},
      findings: []
    },
    {
      files: {'study.yaml': 'title: T\npeople: [{name: Ada Ash, orcid: 0000-0002-1825-0079}]\n'},
      findings: [
        'study.yaml:2:33: the last digit of `0000-0002-1825-0079` does not fit the others, so a digit is wrong'
      ]
    },
    {
      files: {'study.yaml': 'title: T\npeople: [{name: Ada Ash, orcid: 0000-0002-1825}]\n'},
      findings: ['study.yaml:2:33: `0000-0002-1825` is no ORCID iD: sixteen digits are expected']
    }
  ],
  *check({settings: {people = []}, settingPlace}) {
    for (const [at, {orcid}] of people.entries()) {
      if (orcid === undefined) continue
      const bare = orcid.replace(/^https?:\/\/orcid\.org\//, '').replaceAll('-', '')
      const place = settingPlace(['people', at, 'orcid'])
      if (!/^\d{15}[\dX]$/.test(bare)) {
        yield {place, message: `\`${orcid}\` is no ORCID iD: sixteen digits are expected`, cell: orcid}
      } else if (checkCharacter(bare.slice(0, 15)) !== bare[15]) {
        yield {
          place,
          message: `the last digit of \`${orcid}\` does not fit the others, so a digit is wrong`,
          cell: orcid
        }
      }
    }
  }
} as const satisfies Rule

function checkCharacter(digits: string): string {
  let total = 0
  for (const digit of digits) total = (total + Number(digit)) * 2
  const result = (12 - (total % 11)) % 11
  return result === 10 ? 'X' : `${result}`
}
