import {element, type Xml, xmlDocument} from '../xml.ts'
import type {TermTable} from './term-table.ts'
import {type Term, termIri} from './terms.ts'

export const metadataFile = 'eml.xml'

type Described = Pick<TermTable<never>, 'file' | 'rowType' | 'constants'> & {
  readonly columns: readonly {readonly term: Term}[]
}

/** meta.xml: which file holds which terms. Darwin Core text guide, http://rs.tdwg.org/dwc/terms/guides/text/. */
export function metaXml(core: Described, extensions: readonly Described[]): string {
  return xmlDocument(
    element(
      'archive',
      {xmlns: 'http://rs.tdwg.org/dwc/text/', metadata: metadataFile},
      table('core', core),
      extensions.map((extension) => table('extension', extension))
    )
  )
}

function table(kind: 'core' | 'extension', {file, rowType, columns, constants}: Described): Xml {
  const own = columns
    .map(({term}, index) => ({term, index}))
    // In an extension the first column only points at the event.
    .filter(({index}) => kind === 'core' || index > 0)
  return element(
    kind,
    {
      encoding: 'UTF-8',
      fieldsTerminatedBy: ',',
      // Written as backslash and n, as the guide has it, not as a line feed.
      linesTerminatedBy: '\\n',
      fieldsEnclosedBy: '"',
      ignoreHeaderLines: '1',
      rowType: termIri(rowType)
    },
    element('files', {}, element('location', {}, file)),
    element(kind === 'core' ? 'id' : 'coreid', {index: '0'}),
    own.map(({term, index}) => element('field', {index: `${index}`, term: termIri(term)})),
    constants.map(([term, value]) => element('field', {default: value, term: termIri(term)}))
  )
}
