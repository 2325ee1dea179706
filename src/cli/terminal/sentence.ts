/** An instruction or reason as a sentence: with a capital, unless it begins with a name or code, and a full stop. */
export function sentence(text: string): string {
  const begun = /^[a-z]+[ ,;:]/.test(text) ? text.charAt(0).toUpperCase() + text.slice(1) : text
  return /[.?!]$/.test(begun) ? begun : `${begun}.`
}
