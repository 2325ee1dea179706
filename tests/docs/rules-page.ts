import {baseStudy} from '../../src/rules/base-study.ts'
import {rules} from '../../src/rules/index.ts'
import type {Example, Rule} from '../../src/rules/rule.ts'

const introduction = `# The rules of the check

\`pitfolio check\` holds a study against these rules. Each finding names its place as \`file:line:column\`, what was
found, why it matters and how to mend it; \`pitfolio explain CODE\` prints the section below.

- **error**: the rows concerned cannot be used and are set aside, from everything.
- **caution**: the rows are used, but a reader of the report should know.
- **note**: worth a look.

Some rules weigh cases differently; the severity given here is the usual one. A study that judges a rule otherwise says
so in study.yaml, and the report prints the reason:

\`\`\`yaml
rules:
  short-season: {severity: note, reason: the question is about one fortnight}
\`\`\`

The examples lay files over a small study without findings, which stands at the end of this page; what other rules
find in them is not printed. This page is written from the rules themselves by \`tests/docs/write-rules-page.ts\`.
`

/** The page about all rules, in alphabetical order: what is said of each is said in its own file. */
export function rulesPage(): string {
  const sorted = [...(rules as readonly Rule[])].sort((a, b) => (a.code < b.code ? -1 : 1))
  const list = sorted.map(({code, severity, summary}) => `| [${code}](#${code}) | ${severity} | ${summary} |`)
  const table = ['| Rule | Severity | What it finds |', '|---|---|---|', ...list].join('\n')
  const base = `## The small study of the examples\n\n${filesOf(baseStudy)}`
  return `${[introduction.trimEnd(), table, ...sorted.map(section), base].join('\n\n')}\n`
}

function section({code, severity, summary, why, remedy, source, examples}: Rule): string {
  const speaking = examples.filter(({findings}) => findings.length > 0)
  return [
    `## ${code}`,
    `**${severity}**: ${summary}.`,
    `Why it matters: ${sentence(why)}`,
    `How to mend it: ${sentence(remedy)}`,
    `Source: ${sentence(source)}`,
    ...speaking.map(exampleText)
  ].join('\n\n')
}

function exampleText({files, findings}: Example): string {
  return `With\n\n${filesOf(files)}\n\nthe check says\n\n${fenced('', findings.join('\n'))}`
}

function filesOf(files: Readonly<Record<string, string>>): string {
  return Object.entries(files)
    .map(([file, text]) => `\`${file}\`\n\n${fenced(file.endsWith('.yaml') ? 'yaml' : 'csv', text)}`)
    .join('\n\n')
}

function fenced(language: string, text: string): string {
  return `\`\`\`${language}\n${text.trimEnd()}\n\`\`\``
}

function sentence(words: string): string {
  return /[.!?]$/.test(words) ? words : `${words}.`
}
