import {readdirSync, readFileSync} from 'node:fs'
import {describe, expect, test} from 'vitest'

/** Who may import whom; the table of the architecture. Each folder may import itself and those listed. */
const allowed: Readonly<Record<string, readonly string[]>> = {
  model: [],
  statistics: ['model'],
  parse: ['model'],
  rules: ['model', 'statistics'],
  results: ['model', 'statistics'],
  charts: ['model', 'results'],
  svg: ['model'],
  report: ['model', 'results', 'charts'],
  formats: ['model', 'results', 'report', 'svg'],
  archive: ['model', 'results'],
  'check-study.ts': ['model', 'parse', 'rules'],
  'archive-study.ts': ['check-study.ts', 'model', 'parse', 'results', 'archive'],
  'compose-report.ts': ['charts', 'formats', 'model', 'parse', 'report'],
  'write-formats.ts': ['compose-report.ts', 'charts', 'formats', 'model', 'report', 'svg'],
  'pipeline.ts': [
    'check-study.ts',
    'compose-report.ts',
    'write-formats.ts',
    'charts',
    'formats',
    'model',
    'report',
    'results',
    'svg'
  ],
  files: ['model'],
  browser: ['model'],
  workers: ['model'],
  'pictures-thread.ts': ['svg', 'workers'],
  'replicates-thread.ts': ['results', 'workers'],
  cli: ['archive-study.ts', 'check-study.ts', 'pipeline.ts', 'files', 'browser', 'workers', 'rules', 'model']
}

/** Folders that may touch the world. */
const worldly = new Set(['files', 'browser', 'workers', 'cli'])
const impure =
  /from 'node:|import\('node:|\bDate\.now\b|\bnew Date\(\)|\bMath\.random\b|\bperformance\.|\bprocess\.[a-z]|\.toLocale|\.localeCompare|\.get(?:FullYear|Month|Date|Day|Hours|Minutes|Timezone)|\bIntl\.|\bfetch\(/

/** Packages that have one door. */
const doors: Readonly<Record<string, string>> = {
  vega: 'svg',
  'vega-lite': 'svg',
  'js-yaml': 'parse',
  commander: 'cli',
  cephes: 'statistics',
  'ml-matrix': 'statistics',
  'iconv-lite': 'parse',
  docx: 'formats',
  '@resvg': 'svg',
  saxes: 'svg'
}

const source = new URL('../src/', import.meta.url)

function filesIn(folder: string): string[] {
  return readdirSync(new URL(folder, source), {withFileTypes: true})
    .flatMap((entry) =>
      entry.isDirectory() ? filesIn(`${folder}${entry.name}/`) : [`${folder}${entry.name}`]
    )
    .filter((path) => path.endsWith('.ts'))
    .sort()
}

test('the table of the architecture names what is there, and nothing else', () => {
  const layers = new Set(filesIn('').map((path) => path.split('/')[0]))
  expect(Object.keys(allowed).sort()).toEqual([...layers].sort())
})

for (const path of filesIn('')) {
  const [layer = ''] = path.split('/')
  const text = readFileSync(new URL(path, source), 'utf8')
  const specifiers = [...text.matchAll(/(?:from|import) ?\(?'([^']+)'/g)].map(
    ([, specifier = '']) => specifier
  )
  describe(path, () => {
    test('imports only what its layer may', () => {
      for (const specifier of specifiers.filter((name) => name.startsWith('.'))) {
        const target = new URL(specifier, new URL(path, 'file:///src/')).pathname.split('/')[2] ?? ''
        if (target !== layer) expect(allowed[layer], `${path} imports ${specifier}`).toContain(target)
      }
      for (const specifier of specifiers) {
        const door = doors[specifier.split('/')[0] ?? '']
        if (door !== undefined) expect(layer, `${specifier} has its door in src/${door}`).toBe(door)
      }
    })
    test('touches the world only where it may, and has one subject', () => {
      if (!worldly.has(layer)) expect(impure.exec(text)?.[0]).toBeUndefined()
      expect(path).not.toMatch(/(^|\/)(utils?|helpers?|common|misc|shared)[./]/)
    })
  })
}
