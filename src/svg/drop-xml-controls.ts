/**
 * Removes the characters that an XML document may not hold (control characters, halves of surrogate pairs): a
 * single one in a species name would make the whole file unreadable.
 */
export function dropXmlControls(text: string): string {
  return text.replace(/[\0-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\ufffe\uffff]|\p{Surrogate}/gu, '')
}
