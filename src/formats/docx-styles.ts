import {
  AlignmentType,
  DocumentDefaults,
  type IParagraphStyleOptions,
  LineRuleType,
  StyleForCharacter,
  StyleForParagraph,
  UnderlineType,
  type XmlComponent
} from 'docx'
import {element} from './docx-fields.ts'
import type {Scale} from './docx-scale.ts'

/** Fonts that every machine has, or one of the same widths; tables are laid out by the widths of the second. */
const serif = 'Times New Roman'
const sans = 'Arial'
const linkColour = '1d5440'
const softColour = '5c5c57'
export const ruleColour = 'dfdfda'

/** Size of the words in a table that fits without being made smaller, in half points. */
export const tableTextSize = 18

/** The styles of a document, all by the names under which word processors know them, or of their kind. */
export function docxStyles(language: string, scale: Scale): XmlComponent[] {
  return [
    new DocumentDefaults({
      run: {font: serif, size: scale.text.size, language: {value: language}},
      paragraph: {spacing: {after: 0, line: 240, lineRule: LineRuleType.AUTO}}
    }),
    fallback('paragraph', 'Normal', 'Normal', [element('w:qFormat', {})]),
    fallback('character', 'DefaultParagraphFont', 'Default Paragraph Font'),
    fallback('table', 'TableNormal', 'Normal Table'),
    fallback('numbering', 'NoList', 'No List'),
    ...paragraphStyles(scale).map((style) => new StyleForParagraph(style)),
    ...characterStyles(),
    tableStyle()
  ]
}

function paragraphStyles(scale: Scale): IParagraphStyleOptions[] {
  const text = {basedOn: 'Normal', quickFormat: true}
  const body = {after: scale.text.after, line: scale.text.line, lineRule: LineRuleType.AUTO}
  const item = {...body, after: body.after / 2}
  return [
    {
      id: 'Title',
      name: 'Title',
      ...text,
      next: 'BodyText',
      run: {font: sans, size: scale.title, bold: true},
      paragraph: {spacing: {after: 240}, keepNext: true, keepLines: true}
    },
    ...[1, 2, 3, 4, 5, 6].map((level) => {
      const {before, after, size} = scale.headings[level - 1] ?? scale.headings.at(-1)!
      return {
        id: `Heading${level}`,
        name: `heading ${level}`,
        ...text,
        next: 'BodyText',
        run: {font: sans, size, ...(level < 4 ? {bold: true} : {italics: true})},
        paragraph: {spacing: {before, after}, keepNext: true, keepLines: true, outlineLevel: level - 1}
      }
    }),
    {id: 'BodyText', name: 'Body Text', ...text, paragraph: {spacing: body}},
    {
      id: 'ListBullet',
      name: 'List Bullet',
      basedOn: 'BodyText',
      quickFormat: true,
      paragraph: {spacing: item}
    },
    {
      id: 'ListNumber',
      name: 'List Number',
      basedOn: 'BodyText',
      quickFormat: true,
      paragraph: {spacing: item}
    },
    {id: 'ListContinue', name: 'List Continue', basedOn: 'BodyText', paragraph: {spacing: item}},
    {
      id: 'Quote',
      name: 'Quote',
      basedOn: 'BodyText',
      quickFormat: true,
      paragraph: {indent: {left: 480, right: 480}}
    },
    {
      id: 'Code',
      name: 'Code',
      basedOn: 'Normal',
      run: {font: 'Courier New', size: 18, noProof: true},
      paragraph: {spacing: {after: 140}, indent: {left: 240}}
    },
    {
      id: 'Figure',
      name: 'Figure',
      ...text,
      next: 'Caption',
      paragraph: {spacing: {before: 200, after: 100}, keepNext: true}
    },
    {
      id: 'Caption',
      name: 'caption',
      ...text,
      next: 'BodyText',
      run: {font: sans, size: 18},
      paragraph: {spacing: {before: 60, after: 100, line: 259}, keepLines: true}
    },
    {
      id: 'TableText',
      name: 'Table Text',
      ...text,
      run: {font: sans, size: tableTextSize},
      paragraph: {spacing: {before: 25, after: 25}}
    },
    {
      id: 'TableHead',
      name: 'Table Head',
      basedOn: 'TableText',
      quickFormat: true,
      run: {bold: true},
      paragraph: {keepNext: true}
    },
    {id: 'TableTotal', name: 'Table Total', basedOn: 'TableText', quickFormat: true, run: {bold: true}},
    {
      id: 'TableNote',
      name: 'Table Note',
      ...text,
      run: {font: sans, size: 16},
      paragraph: {spacing: {before: 40, after: 40}, keepLines: true}
    },
    {
      id: 'Bibliography',
      name: 'Bibliography',
      basedOn: 'BodyText',
      paragraph: {spacing: item, indent: {left: 480, hanging: 480}, keepLines: true}
    },
    {
      id: 'Footer',
      name: 'footer',
      basedOn: 'Normal',
      run: {font: sans, size: 16, color: softColour},
      paragraph: {alignment: AlignmentType.RIGHT}
    },
    {
      id: 'FootnoteText',
      name: 'footnote text',
      basedOn: 'Normal',
      run: {size: 19},
      paragraph: {spacing: {after: 40}}
    }
  ]
}

function characterStyles(): StyleForCharacter[] {
  const basedOn = 'DefaultParagraphFont'
  return [
    new StyleForCharacter({
      id: 'Hyperlink',
      name: 'Hyperlink',
      basedOn,
      run: {color: linkColour, underline: {type: UnderlineType.SINGLE}}
    }),
    new StyleForCharacter({
      id: 'FootnoteReference',
      name: 'footnote reference',
      basedOn,
      run: {superScript: true}
    }),
    new StyleForCharacter({
      id: 'InlineCode',
      name: 'Inline Code',
      basedOn,
      run: {font: 'Courier New', size: 20, noProof: true}
    })
  ]
}

/** A table's own looks; its rules stand with each table, since the library writes rules there in any case. */
function tableStyle(): XmlComponent {
  const margin = (name: string) => element(`w:${name}`, {'w:w': tableCellMargin, 'w:type': 'dxa'})
  return element('w:style', {'w:type': 'table', 'w:customStyle': 1, 'w:styleId': 'ReportTable'}, [
    element('w:name', {'w:val': 'Report Table'}),
    element('w:basedOn', {'w:val': 'TableNormal'}),
    element('w:qFormat', {}),
    element('w:tblPr', {}, [element('w:tblCellMar', {}, [margin('left'), margin('right')])])
  ])
}

/** Space left and right of the words in a cell, in twentieths of a point. */
export const tableCellMargin = 70

/** What a kind of style is when a paragraph, a run or a table names none. */
function fallback(type: string, id: string, name: string, more: readonly XmlComponent[] = []): XmlComponent {
  return element('w:style', {'w:type': type, 'w:default': 1, 'w:styleId': id}, [
    element('w:name', {'w:val': name}),
    ...more
  ])
}
