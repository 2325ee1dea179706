import {expect, test} from 'vitest'
import {all, docxOf, everything, type Node, partsOf} from './docx-parts.ts'

/**
 * The order in which the standard wants the children of some elements (ECMA-376 part 1, annex A, types CT_PPr,
 * CT_TblPr, CT_TcPr, CT_SectPr, CT_Style, CT_Lvl). Some word processors call a file damaged that has another.
 */
const orders: Readonly<Record<string, string>> = {
  'w:pPr':
    'pStyle keepNext keepLines pageBreakBefore framePr widowControl numPr suppressLineNumbers pBdr shd tabs suppressAutoHyphens kinsoku wordWrap overflowPunct topLinePunct autoSpaceDE autoSpaceDN bidi adjustRightInd snapToGrid spacing ind contextualSpacing mirrorIndents suppressOverlap jc textDirection textAlignment textboxTightWrap outlineLvl divId cnfStyle rPr sectPr pPrChange',
  'w:tblPr':
    'tblStyle tblpPr tblOverlap bidiVisual tblStyleRowBandSize tblStyleColBandSize tblW jc tblCellSpacing tblInd tblBorders shd tblLayout tblCellMar tblLook',
  'w:tblBorders': 'top left start bottom right end insideH insideV',
  'w:tcPr':
    'cnfStyle tcW gridSpan hMerge vMerge tcBorders shd noWrap tcMar textDirection tcFitText vAlign hideMark',
  'w:sectPr':
    'headerReference footerReference footnotePr endnotePr type pgSz pgMar paperSrc pgBorders lnNumType pgNumType cols formProt vAlign noEndnote titlePg textDirection bidi rtlGutter docGrid printerSettings',
  'w:style':
    'name aliases basedOn next link autoRedefine hidden uiPriority semiHidden unhideWhenUsed qFormat locked personal personalCompose personalReply rsid pPr rPr tblPr trPr tcPr tblStylePr',
  'w:lvl': 'start numFmt lvlRestart pStyle isLgl suff lvlText lvlPicBulletId legacy lvlJc pPr rPr',
  'w:tbl': 'tblPr tblGrid tr',
  'w:tc': 'tcPr p',
  'w:tr': 'trPr tc'
}

test('the children of properties stand in the order that the standard asks for, and each stands once', async () => {
  const {xml} = partsOf(await docxOf(everything))
  let seen = 0
  for (const [name, part] of xml) {
    for (const [parent, order] of Object.entries(orders)) {
      const places = order.split(' ').map((child) => `w:${child}`)
      for (const node of all(part, parent)) {
        const children = (node.elements ?? []).map((child) => child.name ?? '')
        expect(places, `${name} ${parent}`).toEqual(expect.arrayContaining(children))
        const ranks = children.map((child) => places.indexOf(child))
        expect(ranks, `${name} ${parent}: ${children.join(' ')}`).toEqual([...ranks].sort((a, b) => a - b))
        if (parent.endsWith('Pr')) expect(new Set(children).size, `${name} ${parent}`).toBe(children.length)
        seen += 1
      }
    }
  }
  expect(seen).toBeGreaterThan(100)
})

test('a run holds its properties first, and every cell ends with a paragraph', async () => {
  const body = partsOf(await docxOf(everything)).xml.get('word/document.xml')!
  const last = (node: Node) => node.elements?.at(-1)?.name
  for (const run of all(body, 'w:r')) {
    const at = run.elements?.findIndex(({name}) => name === 'w:rPr') ?? -1
    expect(at).toBeLessThanOrEqual(0)
  }
  expect(new Set(all(body, 'w:tc').map(last))).toEqual(new Set(['w:p']))
})
