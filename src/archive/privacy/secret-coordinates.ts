/** Fewer decimals could be any number of a report. */
const tellingDecimals = 3

/** A coordinate that must not be told. */
export interface SecretCoordinate {
  /** `51.2034`, without zeros at its end; undefined where it has too few decimals to tell anything. */
  readonly full: string | undefined
  /** Forms that are finer than may be shown all the same, cut off or rounded: `51.203`. */
  readonly shortened: readonly string[]
}

export function secretCoordinate(written: string, shownDecimals: number): SecretCoordinate {
  const full = plainDegrees(written)
  const isTelling = (form: string): boolean => (form.split('.')[1] ?? '').length >= tellingDecimals
  return {
    full: isTelling(full) ? full : undefined,
    shortened: shortenedForms(full, shownDecimals).filter(isTelling)
  }
}

function shortenedForms(full: string, shownDecimals: number): readonly string[] {
  const decimals = (full.split('.')[1] ?? '').length
  const forms = new Set<string>()
  for (let length = Math.max(tellingDecimals, shownDecimals + 1); length < decimals; length++) {
    forms.add(full.slice(0, full.length - decimals + length))
    forms.add(Number(full).toFixed(length))
  }
  return [...forms]
}

/** `55.4034` for `-55,40340`: as any text would hold it. */
function plainDegrees(written: string): string {
  const digits = /\d+[.,]\d+/.exec(written)?.[0].replace(',', '.') ?? ''
  return withoutZeros(digits)
}

function withoutZeros(digits: string): string {
  return digits.includes('.') ? digits.replace(/\.?0+$/, '') : digits
}

const withPoint = /(?<!\d)\d{1,3}\.\d{3,}/g
const withComma = /(?<!\d)\d{1,3},\d{3,}/g

/** A number of a text with three decimals or more, with a point. */
export interface TellingNumber {
  readonly written: string
  /** Without zeros at its end. */
  readonly whole: string
  /** The same with its digits cut off one by one: a trap stands at 51.20341 where its site is at 51.2034. */
  readonly cut: readonly string[]
}

/** Those that begin before `end`. */
export function* tellingNumbers(text: string, end: number): Iterable<TellingNumber> {
  for (const pattern of [withPoint, withComma]) {
    for (const {0: number, index} of text.matchAll(pattern)) {
      if (index >= end) continue
      const written = number.replace(',', '.')
      const plain = withoutZeros(written)
      const least = plain.indexOf('.') + 1 + tellingDecimals
      const cut: string[] = []
      for (let length = plain.length - 1; length >= least; length--)
        cut.push(withoutZeros(plain.slice(0, length)))
      yield {written, whole: plain, cut}
    }
  }
}
