import type {StudySource} from './source.ts'

/** The files below one folder of a source, as a source of their own. */
export function partOfSource(source: StudySource, folder: string): StudySource {
  const files = [...source.files].flatMap(([path, file]) =>
    path.startsWith(folder) ? [[path.slice(folder.length), file] as const] : []
  )
  return {files: new Map(files), read: (path) => source.read(folder + path)}
}
