/** From documents and results to the files of a report. Every function is pure and gives the same bytes for the same input. */
export {bibtex} from './bibtex.ts'
export {docx} from './docx.ts'
export {figureCsv} from './figure-csv.ts'
export {html, type PageInput, type Pictures} from './html.ts'
export {json} from './json.ts'
export {markdown} from './markdown.ts'
export {tableCsv} from './table-csv.ts'
