import type {ArchiveEntry} from '../model/archive-entry.ts'
import type {Study} from '../model/study.ts'
import {eventTable} from './darwin-core/event-rows.ts'
import {humboldtTable} from './darwin-core/humboldt-rows.ts'
import {measurementTable} from './darwin-core/measurement-rows.ts'
import {metadataFile, metaXml} from './darwin-core/meta-xml.ts'
import {occurrenceTable} from './darwin-core/occurrence-rows.ts'
import {seasonEvents} from './darwin-core/season-events.ts'
import {targetOf} from './darwin-core/target.ts'
import {type TermTable, termTableBytes} from './darwin-core/term-table.ts'
import type {Dataset} from './dataset.ts'
import {eml} from './eml.ts'
import type {StudyPrivacy} from './privacy/study-privacy.ts'

export const darwinCoreFolder = 'dwca/'

/** The files of a Darwin Core archive, and its tables as a Data Package describes them. */
export interface DarwinCoreArchive {
  readonly entries: readonly ArchiveEntry[]
  readonly tables: readonly Pick<TermTable<never>, 'file' | 'title' | 'columns'>[]
  /** Whether study.yaml says what was sought; without it nothing is said of scope, completeness and absence. */
  readonly hasTarget: boolean
}

/**
 * The season as a Darwin Core archive: events as the core, with occurrences, measurements and, where study.yaml
 * states a target, the Humboldt Extension. Positions and names are those that others may see.
 */
export function darwinCoreArchive(study: Study, privacy: StudyPrivacy, dataset: Dataset): DarwinCoreArchive {
  const events = seasonEvents(study, privacy, dataset.id)
  const target = targetOf(study, privacy.names)
  const core = eventTable(events, dataset)
  const extensions: readonly TermTable<never>[] = [
    written(occurrenceTable(events, dataset, target)),
    written(measurementTable(events)),
    ...(target === undefined ? [] : [written(humboldtTable(events, target))])
  ]
  const tables = [written(core), ...extensions]
  return {
    entries: [
      {path: `${darwinCoreFolder}meta.xml`, content: metaXml(core, extensions)},
      {path: `${darwinCoreFolder}${metadataFile}`, content: eml(study, dataset)},
      ...tables.map((table) => ({
        path: darwinCoreFolder + table.file,
        content: () => termTableBytes(table)
      }))
    ],
    tables,
    hasTarget: target !== undefined
  }
}

/** A table whose rows only it knows: its columns read nothing but rows of its own. */
function written<Row>(table: TermTable<Row>): TermTable<never> {
  return table as unknown as TermTable<never>
}
