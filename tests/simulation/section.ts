/** One table of the results, with what it is about and what it says. */
export interface Section {
  readonly title: string
  readonly about: readonly string[]
  readonly head: readonly string[]
  readonly rows: readonly (readonly string[])[]
  readonly findings: readonly string[]
}

/** The section in Markdown. */
export function sectionText({title, about, head, rows, findings}: Section): string {
  const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`
  return [
    `## ${title}`,
    ...about,
    [line(head), line(head.map(() => '---')), ...rows.map(line)].join('\n'),
    ...findings
  ].join('\n\n')
}
