import {nearestName} from '../model/nearest-name.ts'
import type {Rule} from './rule.ts'

export const judgementWithoutEffect = {
  code: 'judgement-without-effect',
  severity: 'caution',
  settled: true,
  summary: 'study.yaml judges a rule otherwise that does not exist, or that cannot be judged otherwise',
  why: 'The finding keeps its weight, so the report is not what the study meant it to be.',
  remedy: 'take the entry out of `rules:`, or correct its name; `pitfolio explain` lists all rules',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'study.yaml':
          'title: T\nrules:\n  visit-outside-saeson: {severity: note, reason: by plan}\n  unknown-trap: {severity: note, reason: by plan}\n'
      },
      findings: [
        'study.yaml:3:3: there is no rule `visit-outside-saeson`',
        'study.yaml:4:3: `unknown-trap` cannot be judged otherwise: without it rows would belong nowhere'
      ]
    }
  ],
  *check({settings, settingPlace}, index) {
    for (const code of Object.keys(settings.rules ?? {})) {
      const rule = index.rules.get(code)
      if (rule !== undefined && !rule.settled) continue
      const meant = rule === undefined ? nearestName(code, index.rules.keys()) : undefined
      yield {
        place: settingPlace(['rules', code], 'key'),
        message:
          rule === undefined
            ? `there is no rule \`${code}\``
            : `\`${code}\` cannot be judged otherwise: without it rows would belong nowhere`,
        ...(meant !== undefined && {remedy: `did you mean \`${meant}\`?`})
      }
    }
  }
} as const satisfies Rule
