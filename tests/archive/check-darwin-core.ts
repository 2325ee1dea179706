import Papa from 'papaparse'
import {textOf} from './archive-on-disk.ts'

export type CsvRow = Readonly<Record<string, string>>

export function rowsOf(files: ReadonlyMap<string, Uint8Array>, path: string): readonly CsvRow[] {
  const {data, errors} = Papa.parse<Record<string, string>>(textOf(files, path), {
    header: true,
    skipEmptyLines: true,
    delimiter: ',',
    newline: '\n'
  })
  if (errors.length > 0) throw new Error(`${path}: ${errors[0]!.message} in row ${errors[0]!.row}`)
  return data
}

/** Every term that meta.xml names, with its file and column. */
export function termsOf(
  files: ReadonlyMap<string, Uint8Array>
): readonly {readonly file: string; readonly index?: number; readonly term: string}[] {
  const meta = textOf(files, 'data/dwca/meta.xml')
  return [...meta.matchAll(/<(core|extension) [^>]*rowType="([^"]+)"[^>]*>([\s\S]*?)<\/\1>/g)].flatMap(
    ([, , , inner = '']) => {
      const file = /<location>(.*?)<\/location>/.exec(inner)![1]!
      return [...inner.matchAll(/<field (?:index="(\d+)"|default="[^"]*") term="([^"]+)"\/>/g)].map(
        ([, index, term = '']) => ({
          file,
          term,
          ...(index !== undefined && {index: Number(index)})
        })
      )
    }
  )
}

/** Row types that meta.xml names. */
export function rowTypesOf(files: ReadonlyMap<string, Uint8Array>): readonly string[] {
  return [...textOf(files, 'data/dwca/meta.xml').matchAll(/rowType="([^"]+)"/g)].map(
    ([, rowType = '']) => rowType
  )
}

/** Rules across the files of a Darwin Core archive that no schema can see. */
export function checkDarwinCore(files: ReadonlyMap<string, Uint8Array>): readonly string[] {
  const errors: string[] = []
  const rows = (name: string): readonly CsvRow[] =>
    files.has(`data/dwca/${name}`) ? rowsOf(files, `data/dwca/${name}`) : []
  for (const {file, index, term} of termsOf(files)) {
    if (index === undefined) continue
    const header = textOf(files, `data/dwca/${file}`).split('\n')[0]!.split(',')
    if (header[index] !== term.slice(term.lastIndexOf('/') + 1))
      errors.push(`${file}: column ${index} is ${header[index]}, meta.xml says ${term}`)
  }
  const events = rows('event.csv')
  const byId = new Map(events.map((row) => [row.eventID!, row]))
  if (byId.size !== events.length) errors.push('an eventID stands twice')
  const days = (row: CsvRow): readonly [string, string] => {
    const [from = '', to = from] = row.eventDate!.split('/').map((moment) => moment.slice(0, 10))
    return [from, to]
  }
  const parents = new Set(events.map((row) => row.parentEventID))
  for (const row of events) {
    const pair = (one: string, other: string): void => {
      if ((row[one] === '') !== (row[other] === '')) errors.push(`${row.eventID}: ${one} without ${other}`)
    }
    pair('sampleSizeValue', 'sampleSizeUnit')
    pair('decimalLatitude', 'decimalLongitude')
    pair('decimalLatitude', 'geodeticDatum')
    if (row.coordinateUncertaintyInMeters === '0') errors.push(`${row.eventID}: an uncertainty of 0`)
    if (parents.has(row.eventID) && row.sampleSizeValue !== '')
      errors.push(`${row.eventID}: effort summed upwards`)
    if (row.parentEventID === '') continue
    const parent = byId.get(row.parentEventID!)
    if (parent === undefined) errors.push(`${row.eventID}: no parent`)
    else if (days(row)[0] < days(parent)[0] || days(row)[1] > days(parent)[1])
      errors.push(`${row.eventID}: outside the dates of its parent`)
  }
  const occurrences = rows('occurrence.csv')
  const found = new Set(occurrences.filter((row) => row.individualCount !== '0').map((row) => row.eventID))
  if (new Set(occurrences.map((row) => row.occurrenceID)).size !== occurrences.length)
    errors.push('an occurrenceID stands twice')
  for (const row of occurrences) {
    if (!byId.has(row.eventID!)) errors.push(`${row.occurrenceID}: no event`)
    if ((row.occurrenceStatus === 'absent') !== (row.individualCount === '0'))
      errors.push(`${row.occurrenceID}: status and count disagree`)
    if (!['present', 'absent'].includes(row.occurrenceStatus!))
      errors.push(`${row.occurrenceID}: ${row.occurrenceStatus}`)
    if (row.occurrenceStatus === 'absent' && found.has(row.eventID))
      errors.push(`${row.occurrenceID}: absent from a trap with animals`)
    if (!/^(PreservedSpecimen|HumanObservation|MaterialSample)$/.test(row.basisOfRecord!))
      errors.push(`${row.occurrenceID}: ${row.basisOfRecord}`)
    if (row.scientificName === '') errors.push(`${row.occurrenceID}: no name`)
  }
  const measurements = rows('measurement.csv')
  if (new Set(measurements.map((row) => row.measurementID)).size !== measurements.length)
    errors.push('a measurementID stands twice')
  for (const row of measurements) if (!byId.has(row.eventID!)) errors.push(`${row.measurementID}: no event`)
  const humboldt = rows('humboldt.csv')
  const scoped = new Set(humboldt.map((row) => row.eventID))
  if (humboldt.length > 0)
    for (const {eventID} of events) if (!scoped.has(eventID)) errors.push(`${eventID}: no scope`)
  for (const row of humboldt) {
    if (!byId.has(row.eventID!)) errors.push(`${row.eventID}: scope without an event`)
    if (row.targetTaxonomicScope === '') errors.push(`${row.eventID}: no target`)
    for (const name of ['samplingEffort', 'eventDuration'])
      if ((row[`${name}Value`] === '') !== (row[`${name}Unit`] === ''))
        errors.push(`${row.eventID}: ${name} without unit`)
    if ((row.absentTaxa !== '') !== (row.isAbsenceReported === 'true'))
      errors.push(`${row.eventID}: absentTaxa and isAbsenceReported disagree`)
    if (row.absentTaxa !== '' && found.has(row.eventID)) errors.push(`${row.eventID}: animals and absence`)
    if (row.isSamplingEffortReported === 'false' && row.samplingEffortValue !== '')
      errors.push(`${row.eventID}: effort not reported and given`)
  }
  return errors
}
