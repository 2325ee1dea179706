import type {PhrasingContent} from 'mdast'
import {familyName, givenNames, makersOf, type Work, type WorkName} from './work.ts'

/** More names than this are cut short in the list of references. */
const mostNames = 10

/** Kinds of work that stand on their own, so that their title is in italics. */
const whole = new Set(['book', 'report', 'thesis', 'software', 'dataset', 'webpage', 'standard', 'map'])

/**
 * A work as the list of references prints it: names, year, title, where it appeared, volume and pages, DOI.
 * `Nelson, G. G. & Clark, R. N. (1973). Title. *Journal* 12(3), 45–67. https://doi.org/...`
 */
export function formatWork(work: Work, year: string): PhrasingContent[] {
  const title = titleOf(work)
  const makers = makersOf(work)
  const editors = makers === work.editor ? (makers.length === 1 ? ' (ed.)' : ' (eds)') : ''
  const lead =
    makers.length > 0
      ? [text(`${nameList(makers)}${editors} (${year}). `), ...title]
      : [...title, text(` (${year})`)]
  const rest = [...appearance(work), ...address(work)]
  const stop = makers.length > 0 && endsSentence(work.title) ? '' : '.'
  return withoutLastSpace([...lead, text(rest.length > 0 ? `${stop} ` : stop), ...rest])
}

function withoutLastSpace(nodes: PhrasingContent[]): PhrasingContent[] {
  const last = nodes.at(-1)
  return last?.type === 'text' ? [...nodes.slice(0, -1), text(last.value.trimEnd())] : nodes
}

/** `Chao, A., Gotelli, N. J. & Colwell, R. K.` */
function nameList(names: readonly WorkName[]): string {
  const written = names.map((name) => {
    const given = initials(givenNames(name))
    const particle = name['dropping-particle'] === undefined ? '' : ` ${name['dropping-particle']}`
    const suffix = name.suffix === undefined ? '' : `, ${name.suffix}`
    return name.literal ?? [familyName(name), `${given}${particle}${suffix}`].filter(Boolean).join(', ')
  })
  if (written.length > mostNames) return `${written.slice(0, mostNames - 1).join(', ')} et al.`
  const last = written.pop() ?? ''
  return written.length > 0 ? `${written.join(', ')} & ${last}` : last
}

/** `Nicholas J.` as `N. J.`, `Jean-Paul` as `J.-P.` */
function initials(given: string): string {
  return given
    .split(/[\s.]+/)
    .filter((part) => part !== '')
    .map((part) =>
      part
        .split('-')
        .map((piece) => `${[...piece][0] ?? ''}.`)
        .join('-')
    )
    .join(' ')
}

function titleOf(work: Work): PhrasingContent[] {
  const title = marked(work.title ?? 'Untitled')
  const edition =
    work.edition === undefined
      ? ''
      : ` (${/^\d+$/.test(String(work.edition)) ? `edition ${work.edition}` : work.edition})`
  const version = work.version === undefined ? '' : ` (version ${work.version})`
  const after = edition + version
  const set: PhrasingContent[] = whole.has(work.type) ? [{type: 'emphasis', children: title}] : title
  return after === '' ? set : [...set, text(after)]
}

/** Where it appeared: journal with volume and pages, book with editors, or publisher. */
function appearance(work: Work): PhrasingContent[] {
  const container = work['container-title']
  const pages = (work.page ?? '').replace(/\s*[-–—]+\s*/g, '–')
  const publisher = [work.publisher, work['publisher-place']].filter(Boolean).join(', ')
  if (work.type === 'chapter' || work.type === 'paper-conference') {
    const editors = work.editor?.length
      ? `In ${nameList(work.editor)} (${work.editor.length === 1 ? 'ed.' : 'eds'}), `
      : 'In '
    const where = pages === '' ? '' : `, pp. ${pages}`
    return [
      ...(container === undefined ? [] : [text(editors), italic(container), text(`${where}. `)]),
      ...(publisher === '' ? [] : [text(`${publisher}. `)])
    ]
  }
  const volume = work.volume === undefined ? '' : ` ${work.volume}`
  const issue = work.issue === undefined ? '' : `(${work.issue})`
  const number = pages === '' && work.number !== undefined ? String(work.number) : pages
  const journal =
    container === undefined
      ? []
      : [italic(container), text(`${volume}${issue}${number === '' ? '' : `, ${number}`}. `)]
  const house = [work.genre, publisher].filter(Boolean).join(', ')
  return [...journal, ...(house === '' || journal.length > 0 ? [] : [text(`${house}. `)])]
}

function address({DOI, URL}: Work): PhrasingContent[] {
  const url =
    DOI === undefined ? URL : `https://doi.org/${DOI.replace(/^https?:\/\/(?:dx\.)?doi\.org\//, '')}`
  return url === undefined ? [] : [{type: 'link', url, title: null, children: [text(url)]}]
}

/** A title of CSL-JSON may hold <i>...</i>, as for names of species; other marks are dropped. */
function marked(title: string): PhrasingContent[] {
  return title
    .split(/(<i>.*?<\/i>)/)
    .filter((part) => part !== '')
    .map((part) => {
      const words = part.replace(/<\/?(?:i|b|sup|sub|sc|span)(?:\s[^>]*)?>/g, '')
      return part.startsWith('<i>') ? italic(words) : text(words)
    })
}

function endsSentence(title = ''): boolean {
  return /[.?!]$/.test(title)
}

function italic(value: string): PhrasingContent {
  return {type: 'emphasis', children: [text(value)]}
}

function text(value: string): PhrasingContent {
  return {type: 'text', value}
}
