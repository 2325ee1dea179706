/**
 * A number rounded to significant figures in plain notation: `12.0`, `0.0457`, `1,230`. Zero is `0`. Never an
 * exponent, so that a sentence can be read aloud; thousands are parted by commas and the minus is U+2212.
 *
 * @throws RangeError when the value is not finite or figures is not a whole number from 1 to 21.
 */
export function significant(value: number, figures: number): string {
  if (!Number.isFinite(value)) throw new RangeError('only a finite number can be rounded')
  if (!Number.isInteger(figures) || figures < 1 || figures > 21) {
    throw new RangeError('figures must be a whole number from 1 to 21')
  }
  if (value === 0) return '0'
  const rounded = Number(value.toPrecision(figures))
  // Taken after rounding: 999.6 to three figures is 1,000 and has no decimals.
  const exponent = Number(rounded.toExponential().split('e')[1])
  return withThousands(rounded.toFixed(Math.min(100, Math.max(0, figures - 1 - exponent))))
}

/** A number with a fixed number of decimals, thousands parted by commas: `1,593`, `20.5`. */
export function fixed(value: number, decimals: number): string {
  if (!Number.isFinite(value)) throw new RangeError('only a finite number can be rounded')
  return withThousands(value.toFixed(decimals))
}

function withThousands(plain: string): string {
  // Most numbers have neither thousands nor a minus.
  if (/^\d{1,3}(?:\.|$)/.test(plain)) return plain
  const [whole = '', fraction] = plain.replace('-', '').split('.')
  const parted = whole.replace(/\B(?=(\d{3})+$)/g, ',')
  const digits = fraction === undefined ? parted : `${parted}.${fraction}`
  return plain.startsWith('-') && /[1-9]/.test(digits) ? `\u2212${digits}` : digits
}
