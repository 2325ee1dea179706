import {familyName, makersOf, type Work, yearOf} from './work.ts'

/** How a work is called in the text. */
export interface CitationWords {
  /** `Nelson & Clark`, `Chao et al.` */
  readonly names: string
  /** `2014`, or `2014a` where the same names published more that year. */
  readonly year: string
}

/** The works of a list of references in its order: by names, year, title. Code units decide, accents aside. */
export function sortWorks(works: readonly Work[]): Work[] {
  return [...works].sort((one, other) => {
    const [left, right] = [sortKey(one), sortKey(other)]
    return left < right ? -1 : left > right ? 1 : 0
  })
}

/** The words in the text for every work of a document, told apart by letters where they would read the same. */
export function citationWords(works: readonly Work[]): ReadonlyMap<string, CitationWords> {
  const sorted = sortWorks(works)
  return new Map(
    sorted.map((work) => {
      const same = sorted.filter((other) => names(other) === names(work) && yearOf(other) === yearOf(work))
      const letter = same.length > 1 ? letterOf(same.indexOf(work)) : ''
      const year = letter !== '' && yearOf(work) === 'n.d.' ? `n.d.-${letter}` : yearOf(work) + letter
      return [work.id, {names: names(work), year}]
    })
  )
}

/** One name, two joined by `&`, or the first and `et al.` */
function names(work: Work): string {
  const [first, second, ...more] = makersOf(work).map(familyName)
  if (first === undefined) return work.title ?? work.id
  if (second === undefined) return first
  return more.length > 0 ? `${first} et al.` : `${first} & ${second}`
}

function sortKey(work: Work): string {
  const makers = makersOf(work).map((name) => `${familyName(name)} ${name.given ?? ''}`)
  return [...(makers.length > 0 ? makers : ['']), yearOf(work), work.title ?? '', work.id]
    .map((part) => part.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase())
    .join('\u0001')
}

function letterOf(index: number): string {
  return String.fromCharCode('a'.charCodeAt(0) + (index % 26))
}
