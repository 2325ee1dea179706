import {readStarter} from '../files/read-starter.ts'
import {writeNewFolder} from '../files/write-new-folder.ts'
import {type ExitCode, exitCode} from './exit-code.ts'
import {shellWord} from './terminal/shell-word.ts'
import type {Terminal} from './terminal/terminal.ts'
import {visible} from './terminal/visible.ts'
import {wrapText} from './terminal/wrap-text.ts'

export interface InitOptions {
  readonly fromExample?: boolean
}

/** `pitfolio init DIR`: a study folder to begin with. */
export async function init(
  folder: string,
  {fromExample = false}: InitOptions,
  {out}: Terminal
): Promise<ExitCode> {
  const files = await readStarter(fromExample ? 'example' : 'starter')
  await writeNewFolder(folder, files)
  const next = fromExample ? 'build' : 'check'
  const advice = fromExample
    ? 'All of its data are invented. Change what you like, and see what follows.'
    : 'Begin with study.yaml: it says what belongs where. The rows in the tables are examples: put yours in their place.'
  out.write(
    [
      `A study stands in ${out.paint('bold', visible(folder))}:`,
      ...[...files.keys()].map((path) => `  ${path}`),
      ...wrapText(advice, out.width),
      `Next: pitfolio ${next} ${shellWord(folder)}`
    ]
      .map((line) => `${line}\n`)
      .join('')
  )
  return exitCode.clean
}
