import {givenNames, type Work, type WorkName} from '../report/work.ts'

const entryTypes: Readonly<Record<string, string>> = {
  'article-journal': 'article',
  book: 'book',
  chapter: 'incollection',
  'paper-conference': 'inproceedings',
  report: 'techreport',
  thesis: 'phdthesis'
}

/** How the signs that mean something to TeX are written. */
const escapes: Readonly<Record<string, string>> = {
  '\\': '\\textbackslash{}',
  '{': '\\{',
  '}': '\\}',
  '%': '\\%',
  '&': '\\&',
  '#': '\\#',
  _: '\\_',
  $: '\\$',
  '~': '\\textasciitilde{}',
  '^': '\\textasciicircum{}'
}

/** The works cited, in the order of their keys, as references.bib (UTF-8, read by BibTeX and biber). */
export function bibtex(works: readonly Work[]): string {
  const sorted = [...works].sort((one, other) => (one.id < other.id ? -1 : one.id > other.id ? 1 : 0))
  return sorted.map(entry).join('\n')
}

function entry(work: Work): string {
  const type = entryTypes[work.type] ?? 'misc'
  const publisher = type === 'techreport' ? 'institution' : type === 'phdthesis' ? 'school' : 'publisher'
  const container = type === 'article' ? 'journal' : 'booktitle'
  const fields: readonly (readonly [string, string | undefined])[] = [
    ['author', people(work.author)],
    ['editor', people(work.editor)],
    ['year', escaped(work.issued?.['date-parts']?.[0]?.[0] ?? work.issued?.literal)],
    ['title', title(work.title)],
    [container, escaped(work['container-title'])],
    ['volume', escaped(work.volume)],
    ['number', escaped(work.issue ?? work.number)],
    ['pages', escaped(work.page)?.replace(/\s*[-–—]+\s*/g, '--')],
    ['edition', escaped(work.edition)],
    ['version', escaped(work.version)],
    ['type', escaped(work.genre)],
    [publisher, escaped(work.publisher)],
    ['address', escaped(work['publisher-place'])],
    // Read as they stand, so only braces could do harm.
    ['doi', work.DOI?.replace(/[{}\\]/g, '')],
    ['url', work.URL?.replace(/[{}\\]/g, '')]
  ]
  const lines = fields.flatMap(([name, value]) =>
    value === undefined || value === '' ? [] : [`  ${name} = {${value}}`]
  )
  return `@${type}{${work.id.replace(/[^\w:.-]/g, '-')},\n${lines.join(',\n')}\n}\n`
}

function people(names: readonly WorkName[] | undefined): string | undefined {
  return names
    ?.map((name) => {
      if (name.literal !== undefined) return `{${escaped(name.literal)}}`
      const family = [name['non-dropping-particle'], name.family].filter(Boolean).join(' ')
      return escaped([family, name.suffix, givenNames(name)].filter(Boolean).join(', '))
    })
    .join(' and ')
}

/** Words that begin with a capital keep it: they are names more often than not. */
function title(text: string | undefined): string | undefined {
  return text
    ?.split(/(<i>.*?<\/i>)/)
    .map((part) => {
      const plain = part.replace(/<[^>]*>/g, '')
      const words = (escaped(plain) ?? '').replace(/(?<=\s)\p{Lu}[\p{L}\p{N}-]*/gu, '{$&}')
      return part.startsWith('<i>') ? `\\textit{${words}}` : words
    })
    .join('')
}

function escaped(text: string | number | undefined): string | undefined {
  return text === undefined
    ? undefined
    : String(text)
        .replace(/\s+/g, ' ')
        .replace(/[\\{}%&#_$~^]/g, (sign) => escapes[sign] ?? sign)
}
