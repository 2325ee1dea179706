import {readFileSync, writeFileSync} from 'node:fs'
import {join} from 'node:path'
import {expect, test} from 'vitest'
import {build} from '../../src/cli/build.ts'
import {verify} from '../../src/cli/verify.ts'
import {provenanceSchema} from '../../src/model/provenance.ts'
import type {buildReport} from '../../src/pipeline.ts'
import {smallReport} from '../archive/small-report.ts'
import {fakeBrowser, printing} from '../browser/fake-browser.ts'
import {everythingIn, studyOnDisk} from '../files/study-on-disk.ts'
import {capturedTerminal} from './captured-terminal.ts'

/** A small report with one page to print, whose text tells whether it names a print. */
const withPage: typeof buildReport = async (source, assets, options = {}) => {
  const report = await smallReport(source, assets, options)
  if ('unreadable' in report) return report
  const page = options.pdf === true ? 'also as chapter.pdf' : 'no other form'
  const outputs = new Map(
    [...report.outputs, ['chapter.html', page] as const].sort(([a], [b]) => (a < b ? -1 : 1))
  )
  return {...report, outputs, toPrint: ['chapter.html']}
}

async function built(study: string, browser: string) {
  const captured = capturedTerminal()
  const terminal = {...captured.terminal, browsers: {named: browser}}
  const code = await build(study, {pdf: true}, terminal, withPage)
  return {code, err: captured.err(), out: captured.out(), files: everythingIn(join(study, 'report'))}
}

async function verified(study: string) {
  const captured = capturedTerminal()
  const code = await verify(study, {report: join(study, 'report')}, captured.terminal, withPage)
  return {code, out: captured.out()}
}

test('--pdf prints the pages, lists the prints in provenance.json, and verify takes them as they stand', async () => {
  const study = studyOnDisk()
  const {code, err, files} = await built(study, fakeBrowser(printing))
  expect({code, err}).toEqual({code: 0, err: ''})
  expect(files['chapter.pdf']).toBe('%PDF-also as chapter.pdf')
  const provenance = provenanceSchema.parse(JSON.parse(files['provenance.json'] ?? ''))
  expect(provenance.options).toEqual({pdf: true})
  expect(provenance.outputs.map(({path}) => path)).toContain('chapter.pdf')
  expect(await verified(study)).toMatchObject({code: 0})
  // Printed again, it is another file and no edit.
  const again = await built(study, fakeBrowser('{ printf "%%PDF-later"; } > "$pdf"'))
  expect(again.code).toBe(0)
  expect(again.files['chapter.pdf']).toBe('%PDF-later')
  writeFileSync(join(study, 'report/chapter.pdf'), '%PDF-edited')
  const edited = await verified(study)
  expect(edited.code).toBe(1)
  expect(edited.out).toContain('chapter.pdf')
})

test.each([
  [
    'there is no browser',
    () => '/nowhere/chromium',
    'no PDF, because there is no Chromium, Chrome or Edge here'
  ],
  [
    'the browser fails',
    () => fakeBrowser('exit 7'),
    'no PDF, because the browser ended with code 7, at chapter.html'
  ]
])(
  'where %s the rest of the report is made all the same, and the build ends with 0',
  async (_, browser, words) => {
    const study = studyOnDisk()
    const {code, err, out, files} = await built(study, browser())
    expect(code).toBe(0)
    expect(err).toContain(words)
    expect(err).toContain('PITFOLIO_BROWSER')
    expect(out).toContain('The report stands in')
    expect(files['chapter.html']).toBe('no other form')
    expect(Object.keys(files).filter((name) => name.endsWith('.pdf'))).toEqual([])
    expect(
      provenanceSchema.parse(JSON.parse(readFileSync(join(study, 'report/provenance.json'), 'utf8'))).options
    ).toEqual({})
    expect(await verified(study)).toMatchObject({code: 0})
  }
)
