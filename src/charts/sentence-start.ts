/** A label that begins a sentence: study files write habitats and groups in lower case. */
export function sentenceStart(label: string): string {
  const [first = ''] = label
  return first.toUpperCase() + label.slice(first.length)
}
