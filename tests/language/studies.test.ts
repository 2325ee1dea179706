import {beforeAll, describe, expect, test} from 'vitest'
import {readAssets} from '../../src/files/read-assets.ts'
import type {Results} from '../../src/model/results.ts'
import {type Assets, buildReport} from '../../src/pipeline.ts'
import {memorySource} from '../memory-source.ts'
import {faultsOf, knownWords} from './faults-of.ts'
import {faultsOfMarkdown} from './faults-of-markdown.ts'
import {faultsOfWords, uncalled} from './faults-of-words.ts'
import {twentyStudies} from './twenty-studies.ts'
import type {WrittenFiles} from './written-study.ts'

let assets: Assets
let titles: readonly string[]

beforeAll(async () => {
  assets = await readAssets()
  const works = JSON.parse(assets.templates.get('references.json') ?? '[]') as {title: string}[]
  titles = works.map(({title}) => title)
})

/** Site reports are all from one template: the first and the last site, and those that differ, stand for all. */
function documentsOf(files: WrittenFiles): readonly string[] {
  const sites = (files.get('sites.csv') ?? '').trim().split('\n').slice(1)
  const ids = sites.map((row) => row.split(',')[0] ?? '')
  return ['chapter', 'season', ...[ids[0], ids[1], ids.at(-1)].map((id) => `site-${id}`)]
}

describe.each(Object.entries(twentyStudies))('of %s', (_, write) => {
  test('every document reads well', async () => {
    const files = write()
    const report = await buildReport(memorySource(files), assets, {only: documentsOf(files)})
    if ('unreadable' in report) throw new Error(JSON.stringify(report.unreadable))
    expect(report.textFindings).toEqual([])
    const results = JSON.parse(String(report.outputs.get('results.json'))) as Results
    const texts = new Map([...files].filter(([path]) => path.startsWith('text/')))
    const known = knownWords(results, assets, texts)
    const faults = [...report.outputs].flatMap(([name, content]) => {
      const text = String(content)
      if (name.endsWith('.html')) {
        const all = [
          ...faultsOf(text, known),
          ...faultsOfWords(name, text, titles),
          ...(name === 'chapter.html' ? uncalled(text) : [])
        ]
        return all.map((fault) => `${name}: ${fault}`)
      }
      return name.endsWith('.md') ? faultsOfMarkdown(text).map((fault) => `${name}: ${fault}`) : []
    })
    expect([...report.outputs.keys()]).toEqual(expect.arrayContaining(['index.html', 'chapter.html']))
    expect([...new Set(faults)]).toEqual([])
  })
})

test('effort known only by site is said once in every document, and nothing is told that hangs on visits', async () => {
  const write = twentyStudies['old data with effort by site']
  const report = await buildReport(memorySource(write!()), assets)
  if ('unreadable' in report) throw new Error(JSON.stringify(report.unreadable))
  for (const name of ['chapter.md', 'season.md', 'site-A1.md', 'index.html']) {
    const prose = String(report.outputs.get(name))
      .split('\n')
      .filter((line) => !/^\||^!\[|not defined, because|^\(/i.test(line))
      .join('\n')
    const said = prose.match(/only as one figure for each site|only one figure for each site is known/g) ?? []
    expect([name, said.length]).toEqual([name, 1])
  }
  const chapter = String(report.outputs.get('chapter.md'))
  for (const word of [
    'median exposure',
    'Nothing was lost',
    'as the day of collection less',
    'Samples not sorted yet'
  ])
    expect(chapter).not.toContain(word)
})
