import {expect, test} from 'vitest'
import {inkTones} from '../../src/model/ink.ts'
import {inkRules} from '../../src/svg/ink-classes.ts'
import {polishSvg} from '../../src/svg/polish-svg.ts'

const label = {id: 'fig-effort', title: 'Effort', description: 'Trap-nights of each site.'}

/** Polishes the given content of an svg element and gives back what became of it. */
function polished(content: string): string {
  const svg = polishSvg(
    `<svg xmlns="http://www.w3.org/2000/svg" width="10" height="10">${content}</svg>`,
    label
  )
  return svg.slice(svg.indexOf('</desc>') + '</desc>'.length, -'</svg>'.length)
}

test('a picture is one image with a name and a description', () => {
  expect(polishSvg('<svg width="8" height="9" viewBox="0 0 8 9" class="marks"></svg>', label)).toBe(
    '<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-labelledby="title_fig-effort" ' +
      'aria-describedby="desc_fig-effort" width="8" height="9" viewBox="0 0 8 9" overflow="visible" ' +
      'font-family="Arial, Helvetica, Liberation Sans, sans-serif">' +
      '<title id="title_fig-effort">Effort</title><desc id="desc_fig-effort">Trap-nights of each site.</desc></svg>'
  )
})

test('roles, labels, classes and links of the library are left out', () => {
  expect(
    polished(
      '<g class="mark" role="list" aria-label="x" pointer-events="none" tabindex="0"><a xlink:href="#"><path aria-hidden="true" d="M0,0h1" stroke="#123456"/></a></g>'
    )
  ).toBe('<path d="M0,0h1" stroke="#123456"/>')
})

test('text that looks like markup or an attribute stays as it is', () => {
  expect(
    polished('<text fill="#123456">a role="x" aria-label="y" id="clip1" 1.23456 &lt;b&gt; url(#clip1)</text>')
  ).toBe('<text fill="#123456">a role="x" aria-label="y" id="clip1" 1.23456 &#x3C;b> url(#clip1)</text>')
})

test('coordinates are rounded to two decimals', () => {
  expect(
    polished(
      '<path transform="translate(93.00000000000001,-0.001)" d="M1e-7,2.345678L-3.14159,4" fill="#123456"/>'
    )
  ).toBe('<path transform="translate(93,0)" d="M0,2.35L-3.14,4" fill="#123456"/>')
})

test.each(['NaN', 'Infinity', '-Infinity', 'undefined'])('a coordinate of %s is refused', (number) => {
  expect(() => polished(`<path d="M0,${number}" fill="#123456"/>`)).toThrow(/'d' of a path is not a number/)
})

test('the word NaN in a label is a word', () => {
  expect(polished('<text fill="#123456">NaN</text>')).toBe('<text fill="#123456">NaN</text>')
})

test('ids carry the id of the figure, and references follow them', () => {
  expect(
    polished(
      '<g clip-path="url(#clip7)"><path d="M0,0h1" fill="url(#gradient_3)"/></g><defs><clipPath id="clip7">' +
        '<rect width="5" height="5"/></clipPath><linearGradient id="gradient_3"><stop offset="0" stop-color="#eee"/></linearGradient></defs>'
    )
  ).toBe(
    '<g clip-path="url(#d1_fig-effort)"><path d="M0,0h1" fill="url(#d2_fig-effort)"/></g><defs><clipPath id="d1_fig-effort">' +
      '<rect width="5" height="5"/></clipPath><linearGradient id="d2_fig-effort"><stop offset="0" stop-color="#eee"/></linearGradient></defs>'
  )
})

test('what cannot be seen is left out', () => {
  const unseen =
    '<path d="M0,0h1"/><path d="M0,0" display="none" fill="#eee"/><g><g></g></g><text fill="#eee"></text>' +
    '<text opacity="0" fill="#eee">had to give way</text><rect width="3" height="3" fill="none"/>'
  expect(polished(unseen)).toBe('')
})

test('elements that are not drawn shapes or text are left out', () => {
  expect(
    polished(
      '<script>alert(1)</script><image href="x.png"/><style>*{}</style><foreignObject><p>x</p></foreignObject>'
    )
  ).toBe('')
})

test('attributes that run scripts or load anything are left out', () => {
  expect(
    polished('<rect onload="alert(1)" style="fill:url(http://localhost)" width="3" height="3" fill="#eee"/>')
  ).toBe('<rect width="3" height="3" fill="#eee"/>')
})

test('ink tones keep their colour and gain a class that a page can restyle', () => {
  const {ink, paper} = inkTones
  expect(polished(`<rect width="3" height="3" fill="${paper.light}" stroke="${ink.light}"/>`)).toBe(
    `<rect width="3" height="3" fill="${paper.light}" stroke="${ink.light}" class="paper-fill ink-stroke"/>`
  )
  expect(inkRules).toContain(`.paper-fill { fill: var(--paper, ${paper.light}) }`)
  expect(inkRules).toContain(`.ink-stroke { stroke: var(--ink, ${ink.light}) }`)
})

test('characters that XML forbids are dropped from labels, title and description', () => {
  const svg = polishSvg('<svg><text fill="#eee">a\0b\x07c\ud800d\uffff</text></svg>', {
    ...label,
    title: 'T\x00\x1b',
    description: 'D\udc00'
  })
  expect(svg).toContain('>abcd</text>')
  expect(svg).toContain('>T</title>')
  expect(svg).toContain('>D</desc>')
})

test('what XML forbids and HTML allows is escaped, and marked text is text', () => {
  expect(polished('<text fill="#123456">a ]]&gt; b<![CDATA[<c>]]></text>')).toBe(
    '<text fill="#123456">a ]]&#x3E; b&#x3C;c></text>'
  )
  expect(polishSvg('<svg font-family="Foo"></svg>', label).match(/font-family/g)).toHaveLength(1)
  expect(() => polished('<clipPath id="c"><g><path d="M0,0"/></g></clipPath>')).toThrow('holds more')
})

test('title and description are escaped', () => {
  const svg = polishSvg('<svg></svg>', {...label, title: '</title><script>', description: 'A & B "c"'})
  expect(svg).toContain('<title id="title_fig-effort">&#x3C;/title>&#x3C;script></title>')
  expect(svg).toContain('>A &#x26; B "c"</desc>')
})

test.each([
  ['', 'must contain a root element'],
  ['<text fill="#eee"></text>', 'the drawing is empty'],
  ['<svg><g></svg>', 'unexpected close tag']
])('a drawing like "%s" is refused', (svg, reason) => {
  expect(() => polishSvg(svg, label)).toThrow(reason)
})
