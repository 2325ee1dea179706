/** What may stand in no line of a Markdown document; tables are padded, and their cells are read in HTML. */
const neverThere: readonly (readonly [what: string, pattern: RegExp])[] = [
  ['a value that is none', /\bNaN\b|\bundefined\b|\bnull\b(?! hypothesis)|\[object|\bInfinity\b/],
  ['a mark that nobody resolved', /\[[a-z][\w.-]*\?\]|\{\{/],
  ['empty brackets', /\(\s*\)|\[\s*\](?!\()|“\s*”/],
  ['a space before a stop', /\S [,.;:](?=\s|$)/],
  ['a doubled space', /\S {2,}\S/],
  ['an escape that a reader would see', /&#x[0-9a-f]+;/i],
  ['a reason in the place of a number', /not defined \(/]
]

export function faultsOfMarkdown(text: string): readonly string[] {
  const [body = ''] = text.split(/^#+ References$/m)
  return body
    .split('\n')
    .filter((line) => !/^\s*\||^```/.test(line))
    .flatMap((line) => {
      const prose = line.replace(/`[^`]*`/g, '…')
      return neverThere.flatMap(([what, pattern]) => (pattern.test(prose) ? [`${what}: ${line}`] : []))
    })
}
