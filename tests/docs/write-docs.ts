import {readFileSync, writeFileSync} from 'node:fs'
import {generatedFiles} from './generated-files.ts'

/** `npm run docs` writes every file that is made from code; with `--check` it names those that are not current. */
const root = new URL('../../', import.meta.url)
const isCheck = process.argv.includes('--check')

for (const [path, text] of generatedFiles()) {
  const file = new URL(path, root)
  if (currentText(file) === text) continue
  if (isCheck) process.exitCode = 1
  else writeFileSync(file, text)
  process.stdout.write(isCheck ? `${path} is not current: npm run docs\n` : `${path} written\n`)
}

function currentText(file: URL): string | undefined {
  try {
    return readFileSync(file, 'utf8')
  } catch {
    return undefined
  }
}
