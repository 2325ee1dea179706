/** What the cells of one column have in common, so that a table schema says only what is true of them. */
export interface ColumnProfile {
  readonly cells: number
  readonly empty: number
  /** Every filled cell is a whole number, a number with a point, with a comma, an ISO day, an ISO day and time. */
  readonly isInteger: boolean
  readonly isPointNumber: boolean
  readonly isCommaNumber: boolean
  readonly isDay: boolean
  readonly isDayTime: boolean
  readonly least: number
  readonly greatest: number
  /** The different filled cells as written; undefined where they were not wanted or are too many to keep. */
  readonly values: ReadonlySet<string> | undefined
  /** No filled cell stands twice; false as well where that was not followed to the end. */
  readonly isUnique: boolean
}

const mostValues = 200_000
/** Cells remembered where their values are not wanted: enough for words and dates. */
const mostRemembered = 2_000

/** The profile of one column, cell by cell. */
export class ColumnProfiler {
  readonly #wanted: boolean
  readonly #seen = new Set<string>()
  #isComplete = true
  #cells = 0
  #empty = 0
  #integer = true
  #point = true
  #comma = true
  #day = true
  #dayTime = true
  #least = Number.POSITIVE_INFINITY
  #greatest = Number.NEGATIVE_INFINITY

  /** @param wanted whether the different cells are to be kept, as far as there are not too many. */
  constructor(wanted: boolean) {
    this.#wanted = wanted
  }

  add(cell: string): void {
    this.#cells += 1
    if (cell === '') {
      this.#empty += 1
      return
    }
    // Cells repeat: a season has few dates and few names. What was looked at once is not looked at again.
    if (this.#seen.has(cell)) return
    if (this.#seen.size < (this.#wanted ? mostValues : mostRemembered)) this.#seen.add(copied(cell))
    else this.#isComplete = false
    this.#look(cell)
  }

  /** The same cell again as the one before. */
  addSame(isEmpty: boolean): void {
    this.#cells += 1
    if (isEmpty) this.#empty += 1
  }

  profile(): ColumnProfile {
    const filled = this.#cells - this.#empty
    const some = filled > 0
    return {
      cells: this.#cells,
      empty: this.#empty,
      isInteger: some && this.#integer,
      isPointNumber: some && this.#point,
      isCommaNumber: some && this.#comma,
      isDay: some && this.#day,
      isDayTime: some && this.#dayTime,
      least: this.#least,
      greatest: this.#greatest,
      values: this.#wanted && this.#isComplete ? this.#seen : undefined,
      isUnique: this.#isComplete && this.#seen.size === filled
    }
  }

  #look(cell: string): void {
    // 007 is a name, not a number; so is whatever is longer than a number can hold.
    const isNumber = /^-?(0|[1-9]\d{0,14})(?:[.,]\d{1,15})?$/.test(cell)
    this.#integer &&= isNumber && !/[.,]/.test(cell)
    this.#point &&= isNumber && !cell.includes(',')
    this.#comma &&= isNumber && !cell.includes('.')
    if (isNumber) {
      const value = Number(cell.replace(',', '.'))
      this.#least = Math.min(this.#least, value)
      this.#greatest = Math.max(this.#greatest, value)
    }
    this.#day &&= isCalendarDay(cell)
    this.#dayTime &&=
      /^\d{4}-\d\d-\d\dT([01]\d|2[0-3]):[0-5]\d:[0-5]\d(Z|[+-]\d\d:\d\d)?$/.test(cell) &&
      isCalendarDay(cell.slice(0, 10))
  }
}

/** A text of its own: a part of a larger one would keep the whole of that in memory. */
function copied(text: string): string {
  return text.length < 13 ? text : (JSON.parse(JSON.stringify(text)) as string)
}

const daysOfMonth = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]

function isCalendarDay(text: string): boolean {
  const [, year, month, day] = /^(\d{4})-(\d\d)-(\d\d)$/.exec(text)?.map(Number) ?? []
  if (year === undefined || month === undefined || day === undefined) return false
  const isLeap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0
  const days = month === 2 && !isLeap ? 28 : (daysOfMonth[month - 1] ?? 0)
  return day >= 1 && day <= days
}
