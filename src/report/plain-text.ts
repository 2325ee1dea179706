/** A study's own words on one line: white space folded, characters that no output format may hold taken out. */
export function plainText(text: string): string {
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
  const words = plainText(text)
  if (words === '') return ''
  const [first = ''] = words
  const rest = words.slice(first.length)
  const ended = /[!?…][)\]’”'"]?$/.test(words)
  return first.toUpperCase() + (ended ? rest : `${rest.replace(/[\s.;,]+$/, '')}.`)
}
