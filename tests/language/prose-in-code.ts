import {readdirSync, readFileSync} from 'node:fs'
import {join} from 'node:path'
import {fileURLToPath} from 'node:url'
import ts from 'typescript'

const root = fileURLToPath(new URL('../../', import.meta.url))

/** Words that a reader may meet, and where they stand. */
export interface Prose {
  readonly file: string
  readonly text: string
}

/** Every string of two words or more in the code of a folder: what is not read by people has no spaces. */
export function proseInCode(folder: string): readonly Prose[] {
  return filesIn(join(root, folder))
    .filter((file) => file.endsWith('.ts'))
    .flatMap((file) => {
      const found: Prose[] = []
      const visit = (node: ts.Node): void => {
        if (ts.isStringLiteralLike(node) || ts.isTemplateExpression(node)) {
          const text = ts.isStringLiteralLike(node) ? node.text : node.getText(source)
          if (/\S \S/.test(text)) found.push({file: file.slice(root.length), text})
        }
        ts.forEachChild(node, visit)
      }
      const source = ts.createSourceFile(file, readFileSync(file, 'utf8'), ts.ScriptTarget.Latest, true)
      visit(source)
      return found
    })
}

/** The paragraphs of the documents' templates. */
export function proseInTemplates(): readonly Prose[] {
  const folder = join(root, 'templates')
  return readdirSync(folder)
    .filter((name) => name.endsWith('.md'))
    .flatMap((name) =>
      readFileSync(join(folder, name), 'utf8')
        .split('\n')
        .filter((line) => /\S \S/.test(line))
        .map((text) => ({file: `templates/${name}`, text}))
    )
}

function filesIn(folder: string): readonly string[] {
  return readdirSync(folder, {withFileTypes: true, recursive: true})
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
}
