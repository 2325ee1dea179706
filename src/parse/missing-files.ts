import type {TableDescription} from '../model/column.ts'
import {tables} from '../model/columns.ts'
import type {Settings} from '../model/settings.ts'
import type {StudySource} from '../model/source.ts'
import type {Problem} from '../model/study.ts'
import {fileOf} from './file-of.ts'
import {nearFileRemedy} from './near-file.ts'

export const settingsFile = 'study.yaml'

export function missingSettings(source: StudySource): Problem {
  const near = [...source.files.keys()].find((file) => /(^|\/)study\.ya?ml$/i.test(file))
  return {
    code: 'missing-table',
    place: {file: settingsFile},
    message: 'there is no study.yaml here, so this is not a study folder',
    remedy:
      near === undefined
        ? 'name the folder that holds study.yaml, or start one with `pitfolio init DIR`'
        : near.includes('/')
          ? `there is a ${near}: is that the folder you meant?`
          : `rename ${near} to study.yaml`,
    setsAside: false
  }
}

export function missingTable(
  file: string,
  table: TableDescription,
  source: StudySource,
  settings: Settings
): Problem {
  const taken = new Set(Object.values(tables).map((other) => fileOf(other, settings)))
  const usual =
    settings.files?.[table.name] === undefined
      ? 'add the file, or name yours under `files:` in study.yaml'
      : /[\u0000-\u001f]/.test(file)
        ? 'a backslash in double quotes means something else in YAML: write `/` between folders'
        : 'correct the name under `files:` in study.yaml; it is looked for in the study folder, and folders are written with `/`'
  return {
    code: 'missing-table',
    place: {file},
    message: `${file} is not there; it holds ${table.row}`,
    remedy: nearFileRemedy(table.name, file, source.files.keys(), taken) ?? usual,
    setsAside: false
  }
}
