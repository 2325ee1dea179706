/** Which of some words a text holds, in capitals or not. */
export function wordSearch(words: readonly string[]) {
  const pattern = words.length === 0 ? undefined : new RegExp(words.map(escaped).join('|'), 'gi')
  const found = new Set<string>()
  return {
    add(text: string, end: number): void {
      if (pattern === undefined) return
      for (const {0: word, index} of text.matchAll(pattern)) if (index < end) found.add(word.toLowerCase())
    },
    has: (word: string): boolean => found.has(word.toLowerCase())
  }
}

/** `Carabus intricatus` and `C. intricatus`. */
export function waysToWrite(name: string): readonly string[] {
  const [genus = '', ...epithets] = name.split(' ')
  return epithets.length === 0 ? [name] : [name, `${genus.slice(0, 1)}. ${epithets.join(' ')}`]
}

function escaped(word: string): string {
  return word.replace(/[\\^$.*+?()[\]{}|]/g, '\\$&')
}
