/** Rows as comma-separated text with LF line ends, quoted only where that is needed. */
export function csvText<Name extends string>(
  columns: readonly Name[],
  rows: readonly {readonly [column in Name]?: string | number | undefined}[]
): string {
  const lines = rows.map((row) => columns.map((column) => cell(row[column])).join(','))
  return `${[columns.join(','), ...lines].join('\n')}\n`
}

function cell(value: string | number | undefined): string {
  const text = value === undefined ? '' : String(value)
  return /[",\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text
}
