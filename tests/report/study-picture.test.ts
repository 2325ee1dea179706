import {expect, test} from 'vitest'
import {picturePaths, picturesNamed} from '../../src/report/pictures-named.ts'
import {dataAddress, type StudyPicture, studyPicture} from '../../src/report/study-picture.ts'
import {composed} from './compose.ts'
import {gif, jpegWithPlace, latin, png, pngWithText, webpWithPlace} from './photos.ts'

const text = (words: string) => new TextEncoder().encode(words)
const typeOf = (bytes: Uint8Array) => {
  const picture = studyPicture('photos/x.jpg', bytes)
  return 'type' in picture ? picture.type : picture.unusable
}

test('a picture is what its first bytes say, whatever its name says', () => {
  expect(typeOf(png)).toBe('image/png')
  expect(typeOf(jpegWithPlace)).toBe('image/jpeg')
  expect(typeOf(gif)).toBe('image/gif')
  expect(typeOf(webpWithPlace)).toBe('image/webp')
  expect(typeOf(text('<?xml version="1.0"?>\n<!-- a plan --><svg width="9" height="9"/>'))).toBe(
    'image/svg+xml'
  )
  for (const other of ['', 'trap_id,site_id\n', '<html><svg/></html>', '%PDF-1.4', 'BM'])
    expect(typeOf(text(other))).toBe('is no PNG, JPEG, GIF, WebP or SVG by its first bytes')
})

test.each([
  '<svg><script>1</script></svg>',
  '<svg onload="x()"/>',
  '<svg><image href="https://example.org/x.png"/></svg>',
  '<svg><a xlink:href="javascript:x()"/></svg>',
  '<svg><foreignObject/></svg>',
  '<svg><style>a {fill: url(https://example.org)}</style></svg>'
])('a drawing that could do or ask for something is not shown: %s', (svg) => {
  expect(typeOf(text(svg))).toBe('is an SVG with a script, or with parts from elsewhere, in it')
})

test('a drawing that only refers to itself is shown', () => {
  expect(typeOf(text('<svg><path id="a" fill="url(#b)"/><use href="#a"/></svg>'))).toBe('image/svg+xml')
})

test('what a camera writes beside a picture is left out, its way up and its colours are kept', () => {
  const kept = (bytes: Uint8Array) => {
    const picture = studyPicture('photos/x', bytes)
    if ('unusable' in picture) throw new Error(picture.unusable)
    return picture.bytes
  }
  const jpeg = latin(kept(jpegWithPlace))
  expect(jpeg).not.toMatch(/GPS|BOO/)
  expect(jpeg).toContain('ICC')
  // Tag 0x0112, type 3, one value: 6.
  expect(jpeg).toContain('\x01\x12\0\x03\0\0\0\x01\0\x06')
  expect(jpeg.endsWith('\x01\x02\x03\xff\xd9')).toBe(true)
  expect(kept(kept(jpegWithPlace))).toEqual(kept(jpegWithPlace))
  // A second picture behind the first, as telephones write it, has a place of its own.
  expect(kept(Uint8Array.from([...jpegWithPlace, ...jpegWithPlace]))).toEqual(kept(jpegWithPlace))
  expect(latin(pngWithText)).toContain('GPS')
  expect(kept(pngWithText)).toEqual(png)
  expect(kept(png)).toEqual(png)
  const webp = kept(webpWithPlace)
  expect(latin(webp)).not.toMatch(/GPS|EXIF/)
  expect(new DataView(webp.buffer).getUint32(4, true)).toBe(webp.length - 8)
  expect(webp[20]).toBe(0)
  // A file that breaks off is left as far as it goes, and nothing fails.
  for (let end = 3; end < jpegWithPlace.length; end++)
    expect(kept(jpegWithPlace.subarray(0, end)).length).toBeGreaterThan(1)
})

test('a picture is looked for beside the text and from the study folder, and never outside of it', () => {
  expect(picturePaths('photos/a%20trap.jpg', 'text/intro.md')).toEqual([
    'text/photos/a trap.jpg',
    'photos/a trap.jpg'
  ])
  expect(picturePaths('../photos/x.jpg', 'text/intro.md')).toEqual(['photos/x.jpg'])
  expect(picturePaths('../../x.jpg', 'text/intro.md')).toEqual([])
  expect(picturePaths('100%.jpg', 'text/i.md')).toEqual(['text/100%.jpg', '100%.jpg'])
  expect(
    picturesNamed(
      new Map([
        ['text/i.md', 'A ![b][c]\n\n[c]: ../photos/c.png'],
        ['templates/p.css', '![](x)']
      ])
    )
  ).toEqual(['photos/c.png'])
})

const pictures = {
  named: new Map<string, StudyPicture>([
    ['photos/trap 1.jpg', studyPicture('photos/trap 1.jpg', jpegWithPlace)],
    ['text/plan.png', studyPicture('text/plan.png', png)],
    ['photos/notes.png', studyPicture('photos/notes.png', text('notes'))]
  ]),
  files: ['photos/trap 1.jpg', 'photos/notes.png', 'text/plan.png']
}
const shown = (markdown: string) => {
  const {document, problems} = composed(markdown, {
    template: {file: 'text/intro.md', text: markdown},
    pictures
  })
  return {json: JSON.stringify(document.tree), problems}
}

test('a picture of the study stands in the document under its address in the report', () => {
  expect(shown('![A trap](<photos/trap 1.jpg>)')).toMatchObject({
    json: expect.stringContaining('"url":"photos/trap-1.jpg"'),
    problems: []
  })
  expect(shown('![The plan](plan.png)').json).toContain('"url":"photos/text/plan.png"')
})

test('a picture that is not there, is none, or has no words is told with its place', () => {
  expect(shown('Before ![A trap](photos/trap_1.jpg)')).toMatchObject({
    json: expect.stringContaining('A trap'),
    problems: ["text/intro.md:1:8: there is no picture 'photos/trap_1.jpg'"]
  })
  expect(shown('![Notes](photos/notes.png)').problems).toEqual([
    "text/intro.md:1:1: the picture 'photos/notes.png' is no PNG, JPEG, GIF, WebP or SVG by its first bytes"
  ])
  expect(shown('![ ](plan.png)').problems).toEqual([
    "text/intro.md:1:1: the picture 'plan.png' has no words for those who cannot see it"
  ])
  expect(shown('![x](https://example.org/x.png)').problems).toEqual([
    'text/intro.md:1:1: pictures must lie in the study folder; only its words are kept'
  ])
})

test('an address holds the whole picture', () => {
  expect(dataAddress('image/png', png)).toMatch(/^data:image\/png;base64,iVBORw0KGgo/)
  const large = new Uint8Array(40_000).map((_, index) => index % 251)
  const [, base64 = ''] = dataAddress('image/gif', large).split(',')
  expect(Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))).toEqual(large)
})
