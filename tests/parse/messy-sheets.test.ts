import {describe, expect, test} from 'vitest'
import {checkStudy} from '../../src/check-study.ts'
import {formatPlace} from '../../src/model/place.ts'
import type {UsableStudy} from '../../src/model/study.ts'
import {baseStudy} from '../../src/rules/base-study.ts'
import {memorySource} from '../memory-source.ts'

type Files = Readonly<Record<string, string | Uint8Array | null>>

function studyOf(files: Files) {
  const entries = Object.entries({...baseStudy, ...files}).flatMap(([name, text]) =>
    text === null ? [] : [[name, text] as const]
  )
  return memorySource(new Map(entries))
}

async function unreadable(files: Files): Promise<readonly (readonly [string, string])[]> {
  const outcome = await checkStudy(studyOf(files))
  if (!('unreadable' in outcome)) throw new Error('the study was read')
  return outcome.unreadable.map(({place, message, remedy = ''}) => [
    `${formatPlace(place)}: ${message}`,
    remedy
  ])
}

async function read(files: Files): Promise<UsableStudy> {
  const outcome = await checkStudy(studyOf(files))
  if ('unreadable' in outcome) throw new Error(JSON.stringify(outcome.unreadable))
  return outcome
}

const told = ({findings}: UsableStudy, ...codes: readonly string[]): readonly string[] =>
  findings
    .filter(({code}) => codes.includes(code))
    .map(({place, message}) => `${formatPlace(place)}: ${message}`)

const caught = ({study}: UsableStudy) =>
  study.catch.map(({trapId, taxon, count}) => `${trapId} ${taxon} ${count}`)

const latin1 = (text: string) => Uint8Array.from(text, (letter) => letter.charCodeAt(0))

describe('a file that is no text says what it is', () => {
  test.each([
    ['an Excel workbook (.xlsx)', 'PK\u0003\u0004...[Content_Types].xml...xl/workbook.xml'],
    ['a LibreOffice workbook (.ods)', 'PK\u0003\u0004mimetypeapplication/vnd.oasis.opendocument.spreadsheet'],
    ['a workbook of Numbers', 'PK\u0003\u0004Index/Document.iwa'],
    ['a document of a word processor', 'PK\u0003\u0004word/document.xml'],
    ['a zip archive', 'PK\u0003\u0004data.csv'],
    [
      'a workbook of an old Excel (or another old office file)',
      '\u00d0\u00cf\u0011\u00e0\u00a1\u00b1\u001a\u00e1'
    ],
    ['a PDF', '%PDF-1.7'],
    ['a text document with formatting (RTF)', '{\\rtf1\\ansi'],
    ['a web page or XML', '\n<html><table><tr><td>trap_id</td></tr></table>'],
    ['no text', `trap_id${'\u0000'.repeat(40)}${'\u0001'.repeat(9)}${'\u0000'.repeat(41)}`]
  ])('%s', async (what, start) => {
    for (const file of ['catch.csv', 'study.yaml']) {
      const [[message, remedy] = [], ...more] = await unreadable({[file]: latin1(start)})
      expect(message).toBe(`${file}: this is ${what}, whatever its name says; only text files can be read`)
      expect(remedy).toMatch(/save|unpack|Export/)
      expect(more).toEqual([])
    }
  })
})

describe('a file under another name is asked about', () => {
  test.each([
    ['Catch.CSV', /is it `Catch\.CSV`\? Then rename that file to catch\.csv, or write `catch: Catch\.CSV`/],
    ['catch.csv.txt', /is it `catch\.csv\.txt`\?/],
    ['data/catch.csv', /is it `data\/catch\.csv`\? Then write `catch: data\/catch\.csv`/],
    ['cach.csv', /is it `cach\.csv`\?/],
    ['catch.xlsx', /`catch\.xlsx` is a workbook, which is not read: open it and save the sheet/],
    ['Season 2026.ods', /`Season 2026\.ods` is a workbook/],
    ['~$catch.xlsx', /^add the file, or name yours under `files:`/],
    ['notes.csv', /^add the file, or name yours under `files:`/]
  ])('%s', async (name, remedy) => {
    const [[message, said] = []] = await unreadable({'catch.csv': null, [name]: 'x'})
    expect(message).toContain('catch.csv is not there')
    expect(said).toMatch(remedy)
  })

  test('paths may be written as Windows writes them', async () => {
    const {study} = await read({
      'study.yaml': 'title: T\nfiles: {catch: .\\data\\catch.csv}\n',
      'catch.csv': null,
      'data/catch.csv': baseStudy['catch.csv'] ?? ''
    })
    expect(study.catch).toHaveLength(2)
    const [[, remedy] = []] = await unreadable({
      'study.yaml': 'files: {catch: "data\\vials.csv"}\n',
      'catch.csv': null
    })
    expect(remedy).toContain('a backslash in double quotes means something else')
  })
})

describe('headers of other people', () => {
  const foreign: readonly (readonly [string, string, string])[] = [
    [
      'German',
      'Falle;geleert;Art;Anzahl',
      'catch: {trap_id: Falle, collected: geleert, taxon: Art, count: Anzahl}'
    ],
    [
      'French',
      'Pi\u00e8ge;Relev\u00e9;Esp\u00e8ce;Nombre',
      'catch: {trap_id: Pi\u00e8ge, collected: Relev\u00e9, taxon: Esp\u00e8ce, count: Nombre}'
    ],
    [
      'English',
      'Trap No.;Date out;Species;#',
      'catch: {trap_id: Trap No., collected: Date out, taxon: Species, count: "#"}'
    ],
    [
      'with remarks',
      'Trap (no.);Collected [date];Species;N',
      'catch: {trap_id: "Trap (no.)", collected: "Collected [date]", taxon: Species, count: "N"}'
    ]
  ]
  test.each(foreign)(
    'one line of study.yaml names all of them, and works: %s',
    async (_name, header, line) => {
      const table = `sep=;\n${header}\nW1-1;2026-05-18;Carabus problematicus;3\n`
      const [[message, remedy] = [], ...more] = await unreadable({'catch.csv': table})
      expect(message).toBe('catch.csv:2: columns `trap_id`, `collected`, `taxon` and `count` are missing')
      expect(remedy).toContain(`write \`${line}\` in study.yaml, below \`columns:\` and two spaces in`)
      expect(more).toEqual([])
      const usable = await read({
        'catch.csv': table,
        'study.yaml': `${baseStudy['study.yaml']}columns:\n  ${line}\n`
      })
      expect(caught(usable)).toEqual(['W1-1 Carabus problematicus 3'])
    }
  )

  test('columns that study.yaml has already are added to, not written twice', async () => {
    const [[, remedy] = []] = await unreadable({
      'study.yaml': 'columns:\n  catch: {trap_id: Trap}\n',
      'catch.csv': 'Trap,Date out,taxon,count\n'
    })
    expect(remedy).toBe(
      'is `Date out` that column? If so, add `collected: Date out` to `catch:` below `columns:` in study.yaml'
    )
  })

  test('traps that are numbered anew at each site are thought of', async () => {
    const [[, remedy] = []] = await unreadable({'visits.csv': 'Site,Trap,Set,Emptied\n'})
    expect(remedy).toContain('where traps are numbered anew at each site, `trap_id: {join: [Site, Trap]}`')
  })

  test.each([
    [
      'two lines',
      'trap_id,Deployment,,State\n,opened,collected,condition\n',
      'visits.csv:1: the header stands in two lines, 1 and 2; it must be one',
      /`trap_id,opened,collected,condition`/
    ],
    [
      'no separator',
      'trap_id opened collected\n',
      'visits.csv:1: columns `trap_id`, `opened` and `collected` are missing',
      /one cell only/
    ],
    [
      'one header twice',
      'trap_id,Date,Date\n',
      'visits.csv:1: columns `opened` and `collected` are missing',
      /`Date` stands twice: rename one of them/
    ]
  ])('%s', async (_name, table, message, remedy) => {
    const [[said, mend] = []] = await unreadable({'visits.csv': table})
    expect(said).toBe(message)
    expect(mend).toMatch(remedy)
  })

  test.each([
    ['Taxon,W1-1,W1-2,M1-1,Sum\nCarabus problematicus,3,1,2,6\n'],
    ['Species;Family;W1;M1\nCarabus problematicus;Carabidae;13;0\n']
  ])('a table with its taxa in rows is told to be turned round: %s', async (table) => {
    const [[, remedy] = []] = await unreadable({'catch.csv': table})
    expect(remedy).toMatch(/turn it round .*transposed/)
  })

  test('a wide table whose kinds stand below their families is no table of families', async () => {
    const [[message, remedy] = []] = await unreadable({
      'catch.csv':
        'trap_id,collected,Carabidae,,Lycosidae\n,,Carabus problematicus,Abax ater,Pardosa lugubris\nW1-1,2026-05-18,3,1,2\n'
    })
    expect(message).toContain('the header stands in two lines, 1 and 2')
    expect(remedy).toContain('`trap_id,collected,Carabus problematicus,Abax ater,Pardosa lugubris`')
  })
})

describe('sums are no records', () => {
  test('rows of sums are left out with a note, in long tables and in wide ones', async () => {
    const long = await read({
      'catch.csv':
        'trap_id,collected,taxon,count\nW1-1,2026-05-18,Carabus problematicus,3\nW1-1 Total,,,3\nW1-1,2026-05-18,Total,3\n,,Summe:,3\nSomme,,,3\nW1-1,2026-06-01,Carabus problematicus,1\n'
    })
    expect(caught(long)).toEqual(['W1-1 Carabus problematicus 3', 'W1-1 Carabus problematicus 1'])
    expect(told(long, 'totals-row')).toHaveLength(4)
    expect(long.findings.filter(({severity}) => severity === 'error')).toEqual([])
    const wide = await read({
      'catch.csv':
        'trap_id,collected,Carabus problematicus,Abax parallelepipedus,Total,Observer\nW1-1,2026-05-18,3,0,3,A.\nW1-1,2026-06-01,1,2,3,B.\nTotal,,4,2,6,\n'
    })
    expect(caught(wide)).toEqual([
      'W1-1 Carabus problematicus 3',
      'W1-1 Abax parallelepipedus 0',
      'W1-1 Carabus problematicus 1',
      'W1-1 Abax parallelepipedus 2'
    ])
    expect(told(wide, 'totals-row', 'unknown-column', 'unknown-trap', 'catch-without-trap')).toEqual([
      'catch.csv:1:63: `Total` is a column of sums; it is used for nothing',
      'catch.csv:1:69: column of your own used for nothing: `Observer`',
      'catch.csv:4:1: this row holds sums (`Total`), not records; it is not used'
    ])
  })

  test('a site may be called as a sum is called elsewhere', async () => {
    const {study} = await read({
      'sites.csv': 'site_id,habitat\nSomme,wood\nM1,meadow\n',
      'traps.csv': 'trap_id,site_id\nW1-1,Somme\nM1-1,M1\n'
    })
    expect(study.sites.map(({siteId}) => siteId)).toEqual(['Somme', 'M1'])
  })
})

test('a count below no header sets its collection aside; what stands before the counts does not', async () => {
  const usable = await read({
    'catch.csv':
      ',trap_id,collected,Carabus problematicus,,Abax parallelepipedus\n1,W1-1,2026-05-18,3,8,1\n2,W1-1,2026-06-01,1,,2\n'
  })
  expect(caught(usable)).toEqual(['W1-1 Carabus problematicus 1', 'W1-1 Abax parallelepipedus 2'])
  expect(told(usable, 'nameless-column')).toEqual([
    'catch.csv:2:1: column 1 has no header; its 2 cells are used for nothing',
    'catch.csv:2:21: column 5 has no header, so nobody can tell what was counted here'
  ])
})

describe('cells that are filled with words', () => {
  test('a table that study.yaml maps to `taxon` and `count` is not taken for a wide one', async () => {
    const [[message] = []] = await unreadable({
      'study.yaml': `${baseStudy['study.yaml']}columns: {catch: {taxon: Species, count: n_ind}}\n`,
      'catch.csv': 'trap_id,collected,Species,ni,Weight,Colour\nW1-1,2026-05-18,Carabus problematicus,3,1,2\n'
    })
    expect(message).toContain('column `count` is missing; study.yaml says that `count` is `n_ind`')
  })

  test('codes of the study are read in wide tables too', async () => {
    const usable = await read({
      'study.yaml': `${baseStudy['study.yaml']}words:\n  count: {"-": 0, "n/a": ""}\n`,
      'catch.csv':
        'trap_id,collected,Carabus problematicus,Abax parallelepipedus\nW1-1,2026-05-18,3,-\nW1-1,2026-06-01,n/a,2\n'
    })
    expect(caught(usable)).toEqual([
      'W1-1 Carabus problematicus 3',
      'W1-1 Abax parallelepipedus 0',
      'W1-1 Abax parallelepipedus 2'
    ])
  })

  test('a column of notes in a wide table is told how to be one', async () => {
    const table =
      'trap_id,collected,Carabus problematicus,Abax parallelepipedus,Weather that day\nW1-1,2026-05-18,3,1,fine\n'
    const {findings} = await read({'catch.csv': table})
    const finding = findings.find(({code}) => code === 'count-not-whole')
    expect(finding?.remedy).toContain(
      'write `catch: {remarks: Weather that day}` in study.yaml, below `columns:` and two spaces in'
    )
    const usable = await read({
      'catch.csv': table,
      'study.yaml': `${baseStudy['study.yaml']}columns:\n  catch: {remarks: Weather that day}\n`
    })
    expect(caught(usable)).toHaveLength(2)
  })

  test('a row that lacks several cells is one finding, and a line with one cell may be a note', async () => {
    const usable = await read({
      'catch.csv':
        'trap_id,collected,taxon,count\nW1-1,2026-05-18,Carabus problematicus,3\nW1-1,2026-06-01,,\nSorted in winter by A. Nyman,,,\n# a comment\n'
    })
    expect(told(usable, 'empty-required-cell')).toEqual([
      'catch.csv:3:17: `taxon` and `count` are empty',
      'catch.csv:4:31: only `Sorted in winter by A. Nyman` stands in this line; `taxon` and `count` are empty'
    ])
  })

  test('a visit whose catch rows could not be read is sent to them', async () => {
    const {findings} = await read({
      'catch.csv': 'trap_id,collected,taxon,count\nW1-1,2026-05-18,Carabus problematicus,c. 30\n'
    })
    const finding = findings.find(({code}) => code === 'visit-without-catch-record')
    expect(finding?.remedy).toBe(
      'a catch row that may belong to it could not be read (catch.csv:2): mend that first'
    )
  })

  test('places stay right behind a stray quotation mark', async () => {
    const usable = await read({
      'sites.csv':
        'site_id,habitat,site_name,locality,elevation_m\nW1,wood,"The ""big"" wood",a 5" pipe,high\nM1,meadow,"Two\nlines",x,low\n'
    })
    expect(told(usable, 'unreadable-number')).toEqual([
      'sites.csv:2:38: `high` is not a number',
      'sites.csv:4:10: `low` is not a number'
    ])
  })
})
