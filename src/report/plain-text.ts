/** Most words: plain letters with a space between them. */
const plainAlready = /^[!-~]+(?: [!-~]+)*$/

/** A study's own words on one line: white space folded, characters that no output format may hold taken out. */
export function plainText(text: string): string {
  if (plainAlready.test(text)) return text
  return text
    .replace(
      /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g,
      ''
    )
    .replace(/\s+/g, ' ')
    .trim()
}

/** Words set as a sentence: the first letter upper case, one full stop at the end. */
export function asSentence(text: string): string {
  const words = withStop(plainText(text))
  const [first = ''] = words
  return first.toUpperCase() + words.slice(first.length)
}

/** Words with one full stop at their end, or the mark that ends them already. */
export function withStop(words: string): string {
  return words === '' || /[!?…][)\]’”'"]?$/.test(words) ? words : `${withoutStop(words)}.`
}

/** Words without the stops at their end, to stand within a sentence. */
export function withoutStop(words: string): string {
  return words.replace(/[\s.;,]+$/, '')
}
