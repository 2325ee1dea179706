const months = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December'
]

/** Two calendar days as a person writes them: `14 to 28 June 2026`, `28 May to 11 June 2026`; one where they are the same. */
export function dateWords(fromIsoDay: string, toIsoDay: string): string {
  const [fromYear, fromMonth, fromDay] = parts(fromIsoDay)
  const [toYear, toMonth, toDay] = parts(toIsoDay)
  const end = `${toDay} ${toMonth} ${toYear}`
  if (fromYear !== toYear) return `${fromDay} ${fromMonth} ${fromYear} to ${end}`
  if (fromMonth !== toMonth) return `${fromDay} ${fromMonth} to ${end}`
  return fromDay === toDay ? end : `${fromDay} to ${end}`
}

function parts(isoDay: string): [year: string, month: string, dayOfMonth: number] {
  const [year = '', month = '', dayOfMonth = ''] = isoDay.split('-')
  return [year, months[Number(month) - 1] ?? '', Number(dayOfMonth)]
}
