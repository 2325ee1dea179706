import {readFileSync, symlinkSync, writeFileSync} from 'node:fs'
import {join} from 'node:path'
import {fileURLToPath} from 'node:url'
import {describe, expect, test} from 'vitest'
import {findingsFileSchema} from '../../src/model/findings-file.ts'
import {everythingIn, rowsIn, studyOnDisk, temporaryFolder, writeFiles} from '../files/study-on-disk.ts'
import {run} from './captured-terminal.ts'

const example = fileURLToPath(new URL('../../example-study', import.meta.url))

test('a sound study has no finding, names the next step and ends with 0', async () => {
  const study = studyOnDisk()
  const {code, out, err} = await run(['check', study])
  expect(code).toBe(0)
  expect(err).toBe('')
  const lines = out.trimEnd().split('\n')
  expect(lines.slice(0, 4)).toEqual([
    'Beetles of two places',
    '',
    '---- what became of the rows -----------------------------------------------------------------------',
    '  table       rows  used  set aside'
  ])
  expect(lines[4]).toBe('  sites.csv      2     2          0')
  expect(lines.slice(-2)).toEqual([
    `No findings; all ${rowsIn(study)} rows are used.`,
    `Next: pitfolio build ${study}`
  ])
})

test('a file that was read otherwise than most are is told with its encoding and separator', async () => {
  const study = studyOnDisk()
  const sites = readFileSync(join(study, 'sites.csv'), 'latin1').replaceAll(',', ';')
  writeFileSync(join(study, 'sites.csv'), Buffer.from(`\ufeff${sites}`, 'utf16le'))
  const {out} = await run(['check', study])
  expect(out).toContain('  table       read as               rows  used  set aside\n')
  expect(out).toContain('  sites.csv   UTF-16 LE, semicolon     2     2          0\n')
  expect(out).toMatch(/ {2}catch\.csv {3}UTF-8, comma /)
})

test('errors come before cautions, each with place, cell, remedy and reason, and end with 1', async () => {
  const {code, out} = await run(['check', example])
  expect(code).toBe(1)
  expect(out).toContain('--| 1 |-- error  count-not-whole ---')
  expect(out).toContain('  catch.csv:2024:43  `12*` is not a whole number of individuals\n')
  expect(out).toContain('  mend  Did you mean `OAK2-3`?\n')
  expect(out).toContain('  why   Without its trap a row belongs to no site')
  expect(out).toContain('    first here: catch.csv:1003\n')
  expect(out.indexOf('duplicate-catch-row ---')).toBeLessThan(out.indexOf('caution  taxon-not-in-taxa-table'))
  expect(out).toContain(
    'catch.csv    2,866  2,863          3   count-not-whole 1, duplicate-catch-row 1, unknown-trap 1\n'
  )
  const lines = out.trimEnd().split('\n')
  expect(lines.at(-2)).toMatch(/^3 errors(,| and) .*; 3 of 3,706 rows set aside\.$/)
  expect(lines.at(-1)).toContain(`pitfolio build ${example}`)
})

test('the same slip many times is one block with a count, five places and the number of the rest', async () => {
  const rows = Array.from({length: 217}, (_, index) => `W1-1,2026-05-18,Carabus problematicus,${index}?`)
  const study = studyOnDisk({'catch.csv': `trap_id,collected,taxon,count\n${rows.join('\n')}\n`})
  const {code, out} = await run(['check', study])
  expect(code).toBe(1)
  expect(out).toContain('--| 217 |-- error  count-not-whole')
  expect(out.match(/^ {2}catch\.csv:\d+:\d+ /gm)).toHaveLength(5)
  expect(out).toContain(`... and 212 more; pitfolio check ${study} --json lists them all\n`)
  const [, block = ''] = out.split(/^--\| 217 \|.*$/m)
  const [own = ''] = block.split(/^--/m)
  expect(own.match(/^ +mend /gm)).toHaveLength(1)
  expect(own.match(/^ +why /gm)).toHaveLength(1)
})

test('a remedy that differs from place to place stands below its place', async () => {
  const study = studyOnDisk({
    'catch.csv':
      'trap_id,collected,taxon,count\nW1-1,2026-05-18,Carabus problematicsu,3\nW1-1,2026-06-01,Abax paralelepipedus,2\n'
  })
  const {out} = await run(['check', study])
  expect(out).toMatch(/Carabus problematicsu.*\n {4}mend {2}Did you mean `Carabus problematicus`/)
  expect(out).toMatch(/Abax paralelepipedus.*\n {4}mend {2}Did you mean `Abax parallelepipedus`/)
})

test('of places with different remedies some of each are shown, and a remedy stands once below its places', async () => {
  const counts = ['c. 1', 'c. 2', 'c. 3', 'c. 4', 'c. 5', '-', 'x']
  const rows = counts.map((count, index) => `W1-1,2026-05-18,Taxon ${index},${count}`)
  const study = studyOnDisk({'catch.csv': `trap_id,collected,taxon,count\n${rows.join('\n')}\n`})
  const {out} = await run(['check', study])
  const [, block = ''] = out.split(/^--\| 7 \|.*$/m)
  const [own = ''] = block.split(/^--/m)
  expect(own.match(/`(?:c\. \d|-|x)`(?= is not)/g)).toEqual(['`c. 1`', '`c. 2`', '`c. 3`', '`-`', '`x`'])
  expect(own.match(/^ {4}mend /gm)).toHaveLength(3)
  expect(own).toContain('... and 2 more;')
})

test('what several tables of one file say of one line is shown once, and the balance tells the tables apart', async () => {
  const study = studyOnDisk({
    'study.yaml':
      'title: T\nfiles: {traps: sites.csv, visits: sites.csv}\ntrap_types: {cup: {}}\nfluids: {glycol: {substance: propylene glycol}}\n',
    'sites.csv':
      'site_id,habitat,trap_id,opened,collected,sample\nW1,wood,W1-1,2026-05-04,2026-05-18,sorted\nTotal,,1,,,\n',
    'catch.csv': 'trap_id,collected,taxon,count\nW1-1,2026-05-18,Carabus problematicus,3\n'
  })
  const {out} = await run(['check', study])
  expect(out.match(/sites\.csv:3:1/g)).toHaveLength(1)
  for (const table of ['sites', 'traps', 'visits']) expect(out).toContain(`  sites.csv, ${table} `)
})

test('nothing is wider than the terminal, words that cannot be broken aside', async () => {
  for (const width of [44, 60, 80]) {
    const {out} = await run(['check', example], {isTerminal: true, width})
    const plain = out.replace(/\u001b\[\d+m/g, '')
    for (const line of plain.split('\n').filter((text) => !text.includes(example)))
      expect(line.length).toBeLessThanOrEqual(width)
  }
})

test('a terminal gets colours and lines, a pipe gets neither', async () => {
  const screen = await run(['check', example], {isTerminal: true})
  expect(screen.out).toContain('──┐ \u001b[1m1\u001b[22m ┌──')
  const pipe = await run(['check', example])
  expect(pipe.out).toMatch(/^[\x20-\x7e\n]*$/)
})

test('what stands in a cell cannot steer the terminal', async () => {
  const evil = '\u001b]0;owned\u0007\u001b[2J\u009b31m\u202e'
  const study = studyOnDisk({
    'study.yaml':
      'title: "\\e[31mred"\nhabitats: {wood: Wood, meadow: Meadow}\ntrap_types: {cup: {}}\nfluids: {glycol: {}}\n',
    'catch.csv': `trap_id,collected,taxon,count\nW1-1,2026-05-18,Carabus problematicus,${evil}\n${evil},2026-05-18,Abax parallelepipedus,1\n`
  })
  for (const words of [
    ['check', study],
    ['check', study, '--json'],
    ['build', study, '--strict']
  ]) {
    const {out, err} = await run(words)
    expect(out + err).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202e]/)
  }
  const {out} = await run(['check', study])
  expect(out).toContain('\\x1b[31mred\n')
  expect(out).toContain('\\x1b]0;owned\\x07\\x1b[2J\\x9b31m\\u202e')
})

test('--json prints every finding and the balance as the schema says, and nothing else', async () => {
  const {code, out, err} = await run(['check', example, '--json'])
  expect(code).toBe(1)
  expect(err).toBe('')
  const file = findingsFileSchema.parse(JSON.parse(out))
  expect(file.verdict).toMatchObject({outcome: 'errors', errors: 3, rowsRead: 3706, rowsSetAside: 3})
  const errors = file.findings.filter(({severity}) => severity === 'error')
  expect(errors.map(({code: rule, place}) => [rule, place.line])).toEqual([
    ['duplicate-catch-row', 1004],
    ['unknown-trap', 1580],
    ['count-not-whole', 2024]
  ])
  expect((await run(['check', example, '--json'])).out).toBe(out)
})

describe('a folder that cannot be read ends with 2, says why and what to do, and stays as it is', () => {
  const unreadable: readonly (readonly [
    name: string,
    files: Parameters<typeof studyOnDisk>[0],
    said: RegExp
  ])[] = [
    ['no study.yaml', {'study.yaml': null}, /there is no study\.yaml here[\s\S]*pitfolio init DIR/],
    [
      'an empty catch.csv',
      {'catch.csv': ''},
      /catch\.csv +the file is empty: not even a header[\s\S]*trap_id,collected,taxon,count/
    ],
    [
      'a tab in study.yaml',
      {'study.yaml': 'title: x\nhabitats:\n\twood: Wood\n'},
      /study\.yaml:3:1 +this line is indented with a tab[\s\S]*Indent with spaces/
    ],
    ['no catch.csv', {'catch.csv': null}, /catch\.csv +catch\.csv is not there/],
    [
      'a missing column',
      {'catch.csv': 'trap_id,collected,taxon\nW1-1,2026-05-18,Abax\n'},
      /catch\.csv:1 +column `count` is missing[\s\S]*`columns:`/
    ]
  ]
  for (const [name, files, said] of unreadable) {
    test(name, async () => {
      const study = studyOnDisk(files)
      const before = everythingIn(study)
      for (const command of ['check', 'build']) {
        const {code, out, err} = await run([command, study])
        expect(code).toBe(2)
        expect(out).toBe('')
        expect(err).toMatch(said)
        expect(err).toContain(`No report can be made of ${study} before this is mended.`)
        expect(err).not.toMatch(/^\s+at /m)
      }
      const {code, out} = await run(['check', study, '--json'])
      expect(code).toBe(2)
      expect(findingsFileSchema.parse(JSON.parse(out)).verdict.outcome).toBe('unreadable')
      expect(everythingIn(study)).toEqual(before)
    })
  }

  test('a folder that is not there', async () => {
    const {code, out, err} = await run(['check', join(temporaryFolder(), 'nowhere')])
    expect({code, out}).toEqual({code: 2, out: ''})
    expect(err).toMatch(/there is no folder .*nowhere\n {2}mend {2}Check the spelling/)
  })

  test('a file instead of a folder', async () => {
    const study = studyOnDisk()
    const {code, err} = await run(['check', join(study, 'study.yaml')])
    expect(code).toBe(2)
    expect(err).toContain(`study.yaml is a file, not a folder`)
    expect(err).toContain(`Name the folder that holds the study: ${study}.`)
  })
})

test('a link out of the folder is not followed, and that is said', async () => {
  const study = studyOnDisk({'weather.csv': null})
  const elsewhere = temporaryFolder()
  writeFiles(elsewhere, {'secret.csv': 'date,rain_mm\n2026-05-04,1\n'})
  symlinkSync(join(elsewhere, 'secret.csv'), join(study, 'weather.csv'))
  const {code, out, err} = await run(['check', study])
  expect(code).toBe(0)
  expect(err).toBe('pitfolio: the link weather.csv is not followed: it leads out of the study folder\n')
  expect(out).not.toContain('weather.csv')
})

test('what a folder lacks is asked about in the words of its own headers, beside the slips of study.yaml', async () => {
  const study = studyOnDisk({
    'study.yaml': 'title: T\ncolumns: {catch: {trap_id: [Plot, Trap]}, sites: {habitat: Biotope}}\n',
    'sites.csv': 'Plot,Habitat type\nW1,wood\n',
    'catch.csv': 'Plot,Trap,Date out,Species,N\nW1,1,2026-05-18,Carabus problematicus,3\n'
  })
  const {code, out} = await run(['check', study, '--json'])
  expect(code).toBe(2)
  const {findings} = findingsFileSchema.parse(JSON.parse(out))
  const told = findings.map(({message, remedy}) => `${message} | ${remedy}`)
  expect(told[0]).toMatch(/^`columns.catch.trap_id` is a list; /)
  expect(told.slice(1)).toEqual([
    'columns `site_id` and `habitat` are missing; study.yaml says that `habitat` is `Biotope`, and no header says so | are `Plot` and `Habitat type` meant? If so, add `site_id: Plot` and `habitat: Habitat type` to `sites:` below `columns:` in study.yaml',
    'columns `trap_id`, `collected`, `taxon` and `count` are missing | are `Trap`, `Date out`, `Species` and `N` meant? If so, write `catch: {trap_id: Trap, collected: Date out, taxon: Species, count: "N"}` in study.yaml, below `columns:` and two spaces in; where traps are numbered anew at each site, `trap_id: {join: [Plot, Trap]}`'
  ])
})

test('the catch of a visit that could not be read is sent there, not told that there is none', async () => {
  const study = studyOnDisk({
    'visits.csv': 'trap_id,opened,collected,condition\nW1-1,2026-05-04,2026-05-18,badger\n',
    'catch.csv': 'trap_id,collected,taxon,count\nW1-1,2026-05-18,Carabus problematicus,3\n'
  })
  const {out} = await run(['check', study])
  expect(out).toContain('A visit of trap W1-1 could not be read (visits.csv:2): mend that first.')
})
