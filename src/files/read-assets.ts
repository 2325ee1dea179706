import {createHash} from 'node:crypto'
import {readFile} from 'node:fs/promises'
import {join} from 'node:path'
import type {Root} from 'mdast'
import {listFolder} from './list-folder.ts'
import {packageRoot} from './package-root.ts'

/** Folders of templates/ that no report is made from. */
const notForReports = /^(starter|docs|fonts)\//

/** Cuts of the font that pictures are drawn with where they must be bitmaps. */
const fontCuts = ['Regular', 'Bold', 'Italic', 'BoldItalic']

/** The text of every template of the package by its path inside templates/, and the version of the package. */
export async function readAssets(): Promise<{
  readonly templates: ReadonlyMap<string, string>
  /** The trees of those that were read when the package was built, by their texts. */
  readonly templateTrees: ReadonlyMap<string, Root>
  /** What every finding means: the page that is made from the rules. */
  readonly rulesPage: string
  readonly fontFiles: readonly string[]
  readonly toolVersion: string
}> {
  const {folder, version} = packageRoot()
  const rulesPage = await readFile(join(folder, 'templates', 'docs', 'rules.md'), 'utf8')
  const names = (await listFolder(join(folder, 'templates'))).filter((name) => !notForReports.test(name))
  const texts = await Promise.all(
    names.map(async (name) => [name, await readFile(join(folder, 'templates', name), 'utf8')] as const)
  )
  const fontFiles = fontCuts.map((cut) => join(folder, 'templates', 'fonts', `LiberationSans-${cut}.ttf`))
  const templates = new Map(texts)
  const templateTrees = await treesOf(folder, templates)
  return {templates, templateTrees, rulesPage, fontFiles, toolVersion: version}
}

/** What rolldown.config.mjs wrote; nothing where the package runs from source without having been built. */
async function treesOf(
  folder: string,
  templates: ReadonlyMap<string, string>
): Promise<ReadonlyMap<string, Root>> {
  const written = await readFile(join(folder, 'dist', 'template-trees.json'), 'utf8').catch(() => '{}')
  const trees: Readonly<Record<string, Root>> = JSON.parse(written)
  return new Map(
    [...templates.values()].flatMap((text) => {
      const tree = trees[createHash('sha256').update(text).digest('hex')]
      return tree === undefined ? [] : [[text, tree] as const]
    })
  )
}
