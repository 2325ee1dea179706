import type {Nodes} from 'mdast'
import {parseTemplate} from './parse-template.ts'
import {visitNodes} from './visit-nodes.ts'

/** The paths at which each picture that the texts and templates of a study name may lie. */
export function picturesNamed(texts: ReadonlyMap<string, string>): readonly string[] {
  const paths = new Set<string>()
  for (const [file, text] of texts) {
    // Most texts show none, and reading one as Markdown takes its time.
    if (!file.endsWith('.md') || !text.includes('![')) continue
    visitNodes(parseTemplate(file, text).tree, (node) => {
      if (node.type === 'image') for (const path of picturePaths(node.url, file)) paths.add(path)
    })
  }
  return [...paths]
}

/** Where a picture may lie that a text names: beside the text, or counted from the study folder. */
export function picturePaths(url: string, file: string): readonly string[] {
  const written = decoded(url).replace(/^\.\//, '')
  const folder = file.split('/').slice(0, -1)
  return [...new Set([within([...folder, ...written.split('/')]), within(written.split('/'))])].filter(
    (path) => path !== undefined
  )
}

/** The path without `.` and `..`; undefined where it leads out of the folder. */
function within(parts: readonly string[]): string | undefined {
  const path: string[] = []
  for (const part of parts) {
    if (part === '..') {
      if (path.pop() === undefined) return undefined
    } else if (part !== '.' && part !== '') path.push(part)
  }
  return path.join('/')
}

function decoded(url: string): string {
  try {
    return decodeURI(url)
  } catch {
    // A lone per cent sign is part of a name.
    return url
  }
}

/** Addresses of the pictures that stand in a document. */
export function picturesIn(tree: Nodes): readonly string[] {
  const urls: string[] = []
  visitNodes(tree, (node) => {
    if (node.type === 'image') urls.push(node.url)
  })
  return urls
}
