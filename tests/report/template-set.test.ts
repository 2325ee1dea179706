import {expect, test} from 'vitest'
import {formatProblem} from '../../src/report/template-problem.ts'
import {templateSet} from '../../src/report/template-set.ts'

const usual = new Map([
  ['chapter.md', 'ours'],
  ['en-US/chapter.md', 'ours, American'],
  ['site.md', 'site'],
  ['page.html', '<p>{{title}}</p>{{text}}'],
  ['page.css', 'p {}']
])

test("a study's template takes the place of the package's, and one of the language goes first", () => {
  const chapter = (texts: Record<string, string>, language: string) => {
    const set = templateSet(usual, new Map(Object.entries(texts)), language)
    return [set.texts.get('chapter.md'), set.fileOf('chapter.md')]
  }
  const own = {
    'templates/chapter.md': 'own',
    'templates/en-US/chapter.md': 'own, American',
    'text/chapter.md': 'no'
  }
  expect(chapter({}, 'en-GB')).toEqual(['ours', 'pitfolio:chapter.md'])
  expect(chapter({}, 'en-US')).toEqual(['ours, American', 'pitfolio:en-US/chapter.md'])
  expect(chapter({'templates/chapter.md': 'own'}, 'en-US')).toEqual(['own', 'templates/chapter.md'])
  expect(chapter(own, 'en-US')).toEqual(['own, American', 'templates/en-US/chapter.md'])
  expect(chapter(own, 'en-GB')).toEqual(['own', 'templates/chapter.md'])
})

test('only Markdown that the package does not have is a document of the study’s own', () => {
  const own = new Map(
    [
      'templates/letter.md',
      'templates/chapter.md',
      'templates/extra.css',
      'templates/fr/note.md',
      'text/x.md'
    ].map((path) => [path, ''])
  )
  expect(templateSet(usual, own, 'en-GB').own).toEqual(['letter.md'])
  expect(templateSet(usual, own, 'fr').own).toEqual(['letter.md', 'note.md'])
})

test('a page shell that asks for what there is not, or has no place for the text, is told and not used', () => {
  const set = templateSet(usual, new Map([['templates/page.html', '<p>\n  {{titl}}</p>']]), 'en-GB')
  expect(set.problems.map(formatProblem)).toEqual([
    "templates/page.html:2:3: there is no place {{titl}}; the usual file is used instead; did you mean 'title'?",
    'templates/page.html: there is no place {{text}}, so nothing would be on the page; the usual file is used instead'
  ])
  expect(set.texts.get('page.html')).toBe('<p>{{title}}</p>{{text}}')
  const sound = templateSet(usual, new Map([['templates/page.html', '<b>{{text}}</b>']]), 'en-GB')
  expect(sound.problems).toEqual([])
  expect(sound.texts.get('page.html')).toBe('<b>{{text}}</b>')
})
