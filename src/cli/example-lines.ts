/** Examples of a command, for the end of its help. */
export function exampleLines(lines: readonly string[]): string {
  return `\nExamples:\n${lines.map((line) => `  ${line}`).join('\n')}\n`
}
