/** Words that people and statistics programs write where there is no number. */
const noNumber =
  /^(na|n\.a\.?|n\/a|nan|null|none|nil|nothing|empty|no catch|missing|unknown|[-\u2013\u2014]+|\?+|\.)$/i

/** Whether a cell holds a word for nothing rather than a value. */
export function saysNothing(text: string): boolean {
  return noNumber.test(text)
}

/** What to do about a cell in which a spreadsheet shows a fault, or nothing at all, instead of a number. */
export function numberRemedy(text: string, column: string, unit?: string): string | undefined {
  if (saysNothing(text))
    return `if it means that nothing is known, leave the cell empty or write \`${column}: {${JSON.stringify(text)}: ""}\` in study.yaml, below \`words:\` and two spaces in`
  return spreadsheetRemedy(text) ?? (unit === undefined ? undefined : `write the number alone, in ${unit}`)
}

/** What to do about a count that is none. */
export function countRemedy(text: string): string | undefined {
  if (saysNothing(text))
    return `write 0 if there was none, or say so for all such cells: \`count: {${JSON.stringify(text)}: 0}\` in study.yaml, below \`words:\` and two spaces in; if the sample was not sorted, take the row out and write \`unsorted\` in visits.csv`
  if (/^(\+|x+|yes|y|present|pres\.?|p)$/i.test(text))
    return 'somebody was there, but how many is not said: write the number; if it is not known, keep the record out of the counts, in `remarks`'
  if (/[\u2640\u2642]|\d\s*[mfjw]\b/i.test(text))
    return 'write one row for each sex or life stage, with its number alone in `count`'
  if (/^\s*[+-]?\d+\s*(-|\u2013|to|\+|\/)\s*\d+/.test(text))
    return 'write one number: the sum, or a row for each part'
  return spreadsheetRemedy(text)
}

function spreadsheetRemedy(text: string): string | undefined {
  if (/^#/.test(text))
    return 'the spreadsheet could not work out or show this cell: mend its formula or widen the column, and save again'
  if (/^=/.test(text))
    return 'this is a formula: save the table as CSV from the spreadsheet program, which writes its value'
  return undefined
}
