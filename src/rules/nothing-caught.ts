import type {Rule} from './rule.ts'

export const nothingCaught = {
  code: 'nothing-caught',
  severity: 'caution',
  summary: 'catch.csv has a header and no rows',
  why: 'The report says that nothing was caught.',
  remedy: 'enter the catch, or leave it so if the traps really were empty',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {'catch.csv': 'trap_id,collected,taxon,count\n'},
      findings: ['catch.csv: there is a header and no catch below it']
    }
  ],
  *check({tables}) {
    if (tables.catch !== undefined && tables.catch.rowsRead === 0) {
      yield {place: {file: tables.catch.file}, message: 'there is a header and no catch below it'}
    }
  }
} as const satisfies Rule
