import {toString as wordsOf} from 'mdast-util-to-string'
import {expect, test} from 'vitest'
import {formatWork} from '../../src/report/format-work.ts'
import {composed, references, wordsFrom} from './compose.ts'

test('two authors are both named, and three become the first and et al.', () => {
  expect(wordsFrom('As shown :cite[chao-jost-2012 chao-2014].\n\n::references')).toContain(
    'As shown (Chao & Jost 2012; Chao et al. 2014).'
  )
})

test('a work can be the subject of a sentence', () => {
  expect(wordsFrom(':cited[chao-jost-2012] said so.\n\n::references')).toContain(
    'Chao & Jost (2012) said so.'
  )
})

test('works that would read the same get a letter, in the order of the list', () => {
  const words = wordsFrom(':cite[chao-2014] :cite[chao-2014-other]\n\n::references')
  expect(words).toContain('(Chao et al. 2014b) (Chao et al. 2014a)')
  expect(words.indexOf('(2014a). Unifying')).toBeLessThan(words.indexOf('(2014b). Rarefaction'))
})

test('only what is cited is listed, once', () => {
  const {document} = composed(':cite[chao-2014] :cite[chao-2014]\n\n::references')
  expect(document.cited).toEqual(['chao-2014'])
})

test('citations without a list of references are a problem', () => {
  expect(composed(':cite[chao-2014]').problems).toEqual([
    'chapter.md: works are cited, and no ::references lists them'
  ])
})

test('an unknown key is a problem with the nearest one', () => {
  expect(composed('x :cite[chao-jost-2013]').problems).toEqual([
    "chapter.md:1:3: unknown reference 'chao-jost-2013'; did you mean 'chao-jost-2012'?"
  ])
})

test('an article is printed with names, year, title, journal, volume, pages and DOI', () => {
  expect(wordsOf({type: 'paragraph', children: formatWork(references[0]!, '2012')})).toBe(
    'Chao, A. & Jost, L. (2012). Coverage-based rarefaction. Ecology 93(12), 2533–2547. https://doi.org/10.1890/11-1952.1'
  )
})

test('a chapter names its book and editors, and a work without year or names still reads', () => {
  const chapter = formatWork(
    {
      id: 'x',
      type: 'chapter',
      title: 'Traps?',
      author: [{family: 'Berg', given: 'Jean-Paul', 'non-dropping-particle': 'van den'}],
      editor: [{family: 'Low', given: 'Ann B.'}],
      'container-title': 'Methods',
      page: '1-9',
      publisher: 'Press',
      'publisher-place': 'Ghent'
    },
    'n.d.'
  )
  expect(wordsOf({type: 'paragraph', children: chapter})).toBe(
    'van den Berg, J.-P. (n.d.). Traps? In Low, A. B. (ed.), Methods, pp. 1–9. Press, Ghent.'
  )
  expect(
    wordsOf({type: 'paragraph', children: formatWork({id: 'y', type: 'report', title: 'Alone'}, '2001')})
  ).toBe('Alone (2001).')
})
