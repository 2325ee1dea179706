import {defaultSchema} from 'hast-util-sanitize'

const base = defaultSchema.attributes ?? {}

/**
 * What may stand in a page besides the usual: the elements and attributes of figures, tables and their boxes. A
 * second wall only, since raw HTML never gets this far. Ids keep their names (a prefix would break every link
 * within the page), and pictures may only be data of the page itself.
 */
export const sanitizeSchema: typeof defaultSchema = {
  ...defaultSchema,
  clobberPrefix: '',
  tagNames: [...(defaultSchema.tagNames ?? []), 'figure', 'figcaption', 'caption', 'section', 'nav'],
  attributes: {
    ...base,
    '*': [
      ...(base['*'] ?? []).filter((name) => name !== 'name'),
      'className',
      'id',
      'role',
      'tabIndex',
      'ariaLabelledBy',
      'ariaLabel',
      'ariaHidden'
    ],
    div: [...(base.div ?? []), 'dataFigure'],
    th: ['scope'],
    tbody: ['dataRows'],
    tfoot: ['dataRows'],
    a: [
      'href',
      'title',
      'dataFootnoteRef',
      'dataFootnoteBackref',
      'ariaDescribedBy',
      'ariaLabel',
      'className',
      'id'
    ],
    section: ['dataFootnotes', 'className'],
    li: ['id', 'className'],
    ul: ['className'],
    ol: ['className', 'start'],
    code: ['className'],
    h2: ['className'],
    img: ['src', 'alt', 'title']
  },
  protocols: {...defaultSchema.protocols, src: ['data']}
}
