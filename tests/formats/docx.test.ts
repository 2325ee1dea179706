import {strFromU8} from 'fflate'
import {expect, test} from 'vitest'
import {composed} from '../report/compose.ts'
import {
  all,
  attribute,
  bodyOf,
  docxOf,
  everything,
  type Node,
  partsOf,
  png,
  settingOf,
  svg,
  wordsIn
} from './docx-parts.ts'

const photos = new Map([['photos/beetle.png', `data:image/png;base64,${btoa(String.fromCharCode(...png))}`]])
const whole = partsOf(await docxOf(everything, {photos}))
const body = whole.xml.get('word/document.xml')!
const part = (name: string): Node => whole.xml.get(name)!
const paragraphs = all(body, 'w:p')
const withStyle = (style: string) =>
  paragraphs.filter((paragraph) => settingOf(paragraph, 'w:pStyle') === style)

test('the document that these tests look at is made without a problem', () => {
  expect(composed(everything).problems).toEqual([])
})

test('every style that the text uses is defined, under the name that word processors know', () => {
  const styles = all(part('word/styles.xml'), 'w:style')
  const ids = styles.map((style) => attribute(style, 'w:styleId'))
  expect(new Set(ids).size).toBe(ids.length)
  const used = ['word/document.xml', 'word/footnotes.xml', 'word/footer1.xml'].flatMap((name) =>
    ['w:pStyle', 'w:rStyle', 'w:tblStyle'].flatMap((kind) =>
      all(part(name), kind).map((node) => attribute(node, 'w:val'))
    )
  )
  expect(ids).toEqual(expect.arrayContaining([...new Set(used)]))
  const names = styles.map((style) => settingOf(style, 'w:name'))
  expect(names).toEqual(
    expect.arrayContaining([
      ...[
        'Normal',
        'Title',
        'heading 1',
        'heading 2',
        'heading 3',
        'heading 4',
        'Body Text',
        'caption',
        'Table Text'
      ],
      ...['List Bullet', 'List Number', 'Bibliography', 'footnote text', 'footer', 'Hyperlink']
    ])
  )
})

test('the first heading is the title, and the others follow by their depth', () => {
  const titled = ['Title', 'Heading1', 'Heading2', 'Heading3'].map((style) => withStyle(style).map(wordsIn))
  expect(titled.map(([first]) => first)).toEqual([
    wordsIn(paragraphs[0]!),
    'Effort',
    'Effort again',
    'Deeper'
  ])
  expect(titled[0]).toHaveLength(1)
  expect(titled[1]).toEqual(['Effort', 'References'])
})

test('captions count themselves, and say their number before anybody updates the fields', () => {
  const captions = withStyle('Caption')
  expect(captions.map(wordsIn)).toEqual([
    'Figure 1 Effort of two habitats; compare Table 1.',
    'Table 1 Rates of taxa | as caught.',
    'Table 2 Nothing.'
  ])
  const counters = captions.map((caption) => all(caption, 'w:fldSimple')[0]!)
  expect(counters.map((field) => attribute(field, 'w:instr')?.trim())).toEqual([
    'SEQ Figure \\* ARABIC',
    'SEQ Table \\* ARABIC',
    'SEQ Table \\* ARABIC'
  ])
  expect(counters.map(wordsIn)).toEqual(['1', '1', '2'])
})

test('every cross-reference names a bookmark that is there, around the words that it shows', () => {
  const fields = [body, part('word/footnotes.xml')]
    .flatMap((node) => all(node, 'w:fldSimple'))
    .filter((field) => attribute(field, 'w:instr')?.includes('REF'))
  expect(fields).toHaveLength(4)
  for (const field of fields) {
    const [, name = ''] = /REF (\S+) /.exec(attribute(field, 'w:instr') ?? '') ?? []
    const start = all(body, 'w:bookmarkStart').find((node) => attribute(node, 'w:name') === name)
    expect(attribute(start, 'w:id'), name).toBeDefined()
    const caption = paragraphs.find((paragraph) => paragraph.elements?.includes(start!))!
    const from = caption.elements!.indexOf(start!)
    const to = caption.elements!.findIndex(
      (node) => node.name === 'w:bookmarkEnd' && attribute(node, 'w:id') === attribute(start, 'w:id')
    )
    expect(caption.elements!.slice(from, to).map(wordsIn).join('')).toBe(wordsIn(field))
  }
})

test('bookmarks have numbers and names of their own, as short as names may be, and each begins and ends', () => {
  const starts = all(body, 'w:bookmarkStart')
  const ids = starts.map((node) => attribute(node, 'w:id'))
  const names = starts.map((node) => attribute(node, 'w:name')!)
  expect(new Set(ids).size).toBe(ids.length)
  expect(new Set(names).size).toBe(names.length)
  expect(all(body, 'w:bookmarkEnd').map((node) => attribute(node, 'w:id'))).toEqual(ids)
  // 40 signs at most, letters, digits and underscores: common practice, no source.
  for (const name of names) expect(name).toMatch(/^[A-Za-z_]\w{0,39}$/)
})

test('every citation leads to its entry in the list of references', () => {
  const names = all(body, 'w:bookmarkStart').map((node) => attribute(node, 'w:name'))
  const anchors = all(body, 'w:hyperlink').flatMap((node) => attribute(node, 'w:anchor') ?? [])
  expect(anchors).toHaveLength(2)
  expect(names).toEqual(expect.arrayContaining(anchors))
  expect(withStyle('Bibliography').map(wordsIn)[0]).toMatch(/^Chao/)
})

test('every relation and every content leads to a part of the file, and every part has a type', () => {
  const types = part('[Content_Types].xml')
  const extensions = all(types, 'Default').map((node) => attribute(node, 'Extension'))
  const overrides = all(types, 'Override').map((node) => attribute(node, 'PartName')?.slice(1))
  for (const name of Object.keys(whole.files))
    expect(overrides.includes(name) || extensions.includes(name.split('.').at(-1)), name).toBe(true)
  expect(Object.keys(whole.files)).toEqual(expect.arrayContaining(overrides))
  for (const of of ['document', 'footnotes']) {
    const relations = all(part(`word/_rels/${of}.xml.rels`), 'Relationship')
    const ids = relations.map((node) => attribute(node, 'Id'))
    expect(new Set(ids).size).toBe(ids.length)
    for (const relation of relations) {
      if (attribute(relation, 'TargetMode') === 'External') continue
      expect(Object.keys(whole.files)).toContain(`word/${attribute(relation, 'Target')}`)
    }
    const xml = strFromU8(whole.files[`word/${of}.xml`]!)
    const called = [...xml.matchAll(/r:(?:id|embed)="([^"]+)"/g)].map(([, id]) => id)
    expect(ids).toEqual(expect.arrayContaining(called))
  }
})

test('only sound addresses become links; of others the words are left', () => {
  const targets = [...all(part('word/_rels/document.xml.rels'), 'Relationship')]
    .filter((node) => attribute(node, 'TargetMode') === 'External')
    .map((node) => attribute(node, 'Target'))
  expect(targets).toEqual(
    expect.arrayContaining([
      'mailto:jane@example.org',
      'https://example.org/a_b?q=%5B1%5D&r=%222',
      'notes%20of%20may.pdf'
    ])
  )
  expect(targets.filter((target) => target?.includes('exa'))).toHaveLength(2)
  expect(wordsIn(body)).toContain('a bad link, a file')
})

test('every picture is there as SVG and as PNG, and is told in words', () => {
  const pictures = all(body, 'w:drawing')
  expect(pictures).toHaveLength(2)
  const told = pictures.map((picture) => all(picture, 'wp:docPr')[0]!)
  expect(told.map((node) => attribute(node, 'descr'))).toEqual([
    'A photo of Carabus',
    'Bars for two habitats.'
  ])
  expect(told.map((node) => attribute(node, 'title'))).toEqual(['Beetle', 'Effort'])
  const ids = told.map((node) => attribute(node, 'id'))
  expect(new Set(ids).size).toBe(ids.length)
  expect(all(pictures[1]!, 'asvg:svgBlip')).toHaveLength(1)
  const media = Object.entries(whole.files).filter(([name]) => name.startsWith('word/media/'))
  expect(media.map(([name]) => name.split('.').at(-1)).sort()).toEqual(['png', 'svg'])
  expect(media.map(([, bytes]) => strFromU8(bytes))).toContain(svg)
})

test('a photograph that is not at hand leaves its words', async () => {
  expect(wordsIn(await bodyOf('# T\n\n![A beetle](photos/beetle.png)'))).toBe('T[Picture: A beetle]')
})

test('a figure that was not drawn says why; one whose picture is lost is an error', async () => {
  const lost = docxOf(everything, {bitmaps: new Map()})
  await expect(lost).rejects.toThrow('Figure effort')
  const notDrawn = {
    name: 'effort',
    title: 'Effort',
    alternative: '',
    notDrawn: 'nothing was caught',
    data: {columns: [], rows: []}
  }
  const text = '# T\n\n:::figure{name=effort}\nEffort.\n:::'
  const words = wordsIn(await bodyOf(text, {figures: new Map([['effort', notDrawn]])}))
  expect(words).toBe('TNot drawn, because nothing was caught.Figure 1 Effort.')
})

test('taxa are in italics, also in headings and captions, and authorities are not', async () => {
  const italics = all(body, 'w:r').filter((run) => all(run, 'w:i').length > 0)
  expect(italics.map(wordsIn)).toEqual(expect.arrayContaining(['Carabus nemoralis', 'two', 'as caught']))
  expect(italics.map(wordsIn).join(' ')).not.toContain('Müller')
})

test('a footnote stands once, with its number where it is called again', () => {
  const notes = all(part('word/footnotes.xml'), 'w:footnote').map((note) => wordsIn(note).trim())
  expect(notes.filter((note) => note !== '')).toEqual([
    'The note of Figure 1, with https://example.org.',
    'Another.'
  ])
  expect(all(body, 'w:footnoteReference').map((node) => attribute(node, 'w:id'))).toEqual(['1', '2'])
  expect(wordsIn(body)).toContain('A note, and again1, and another.')
})

test('lists keep their marks, numbers and levels', () => {
  const items = paragraphs.filter((paragraph) => all(paragraph, 'w:numPr').length > 0)
  const shown = items.map((item) => [settingOf(item, 'w:pStyle'), settingOf(item, 'w:ilvl'), wordsIn(item)])
  expect(shown).toEqual([
    ['ListBullet', '0', 'one'],
    ['ListBullet', '0', '☑ two'],
    ['ListNumber', '1', 'inner'],
    ['ListNumber', '1', 'more'],
    ['ListBullet', '0', 'three'],
    ['ListNumber', '0', 'four'],
    ['ListNumber', '0', 'five']
  ])
  const numbers = part('word/numbering.xml')
  const starts = items.slice(5).map((item) => {
    const number = all(numbers, 'w:num').find(
      (node) => attribute(node, 'w:numId') === settingOf(item, 'w:numId')
    )!
    return settingOf(number, 'w:startOverride')
  })
  expect(starts).toEqual(['4', '4'])
})

test('the properties name the title, the authors, the day and the language', async () => {
  const core = part('docProps/core.xml')
  const property = (name: string, of = core) => all(of, name)[0]?.elements?.[0]?.text
  expect(property('dc:title')).toBe(wordsIn(paragraphs[0]!))
  expect(property('dc:subject')).toBe('Ash & <Elm>')
  expect(property('dc:creator')).toBe('Jane Ash, Ö. Elm & Co')
  expect(property('dcterms:created')).toBe('2026-03-01T00:00:00Z')
  expect(property('dcterms:modified')).toBe('2026-03-01T00:00:00Z')
  expect(property('dc:language')).toBe('en-GB')
  expect(attribute(all(part('word/styles.xml'), 'w:lang')[0], 'w:val')).toBe('en-GB')
  const undated = await import('../../src/formats/docx.ts').then(({docx}) =>
    docx({
      document: composed('# T').document,
      pictures: new Map(),
      bitmaps: new Map(),
      study: {title: 'S'},
      language: 'en-US'
    })
  )
  const bare = partsOf(undated).xml
  expect(property('dcterms:created', bare.get('docProps/core.xml'))).toBeUndefined()
  expect(attribute(all(bare.get('word/styles.xml')!, 'w:lang')[0], 'w:val')).toBe('en-US')
})

test('pages are A4, and their foot tells the page', () => {
  for (const section of all(body, 'w:sectPr')) {
    const size = all(section, 'w:pgSz')[0]
    expect([attribute(size, 'w:w'), attribute(size, 'w:h')].sort()).toEqual(['11906', '16838'])
  }
  const foot = strFromU8(whole.files['word/footer1.xml']!)
  expect(foot).toContain('>PAGE<')
  expect(foot).toContain('>NUMPAGES<')
})

test('a text that holds nothing is still a document', async () => {
  const empty = await docxOf('')
  expect(all(partsOf(empty).xml.get('word/document.xml')!, 'w:p')).toHaveLength(1)
})

test('nothing is undefined, and no sign that XML may not hold is left', async () => {
  const hostile = '# T\u0001 \ufffe</w:t> & "x"\n\nA <script>b</script> ]]> c\u000bd\n'
  for (const parts of [whole, partsOf(await docxOf(hostile, {authors: ['\u0000 & <x>']}))]) {
    for (const [name, bytes] of Object.entries(parts.files)) {
      if (name.startsWith('word/media/')) continue
      expect(strFromU8(bytes), name).not.toMatch(
        /undefined|NaN|\[object|[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/
      )
    }
  }
  expect(wordsIn(await bodyOf(hostile))).toContain('T </w:t> & "x"')
})
