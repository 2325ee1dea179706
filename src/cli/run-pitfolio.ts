import {Command, CommanderError} from 'commander'
import {DiskTrouble} from '../files/disk-trouble.ts'
import {packageRoot} from '../files/package-root.ts'
import {addCommands} from './add-commands.ts'
import {exampleLines} from './example-lines.ts'
import {type ExitCode, exitCode} from './exit-code.ts'
import type {Terminal} from './terminal/terminal.ts'
import {faultText, troubleText} from './terminal/trouble-text.ts'
import {visible} from './terminal/visible.ts'

/** The command line as a function: words in, text on the two channels, and the number to end with. */
export async function runPitfolio(words: readonly string[], terminal: Terminal): Promise<ExitCode> {
  const {version} = packageRoot()
  let code: ExitCode = exitCode.clean
  const program = commandLine(version, terminal)
  addCommands(program, terminal, (ended) => {
    code = ended
  })
  try {
    await program.parseAsync([...words], {from: 'user'})
    return code
  } catch (error) {
    // Help and version end here too, with 0; every slip in the words of a command with 2.
    if (error instanceof CommanderError) return error.exitCode === 0 ? exitCode.clean : exitCode.couldNotRun
    if (error instanceof DiskTrouble) {
      terminal.err.write(troubleText(terminal.err, error))
      return exitCode.couldNotRun
    }
    terminal.err.write(faultText(terminal.err, error, version, terminal.debug))
    return exitCode.ourFault
  }
}

/** What all commands share: version, help, and the words for a slip. */
function commandLine(version: string, {out, err}: Terminal): Command {
  return new Command('pitfolio')
    .description('Turns a pitfall-trap study folder (YAML and CSV) into reports that stand up.')
    .version(`pitfolio ${version}`, '-V, --version', 'print the version')
    .helpOption('-h, --help', 'print this help')
    .helpCommand('help [command]', 'print the help of a command')
    .exitOverride()
    .configureOutput({
      writeOut: (text) => out.write(text),
      writeErr: (text) => err.write(text),
      getOutHelpWidth: () => out.width,
      getErrHelpWidth: () => err.width,
      outputError: (text, write) =>
        write(
          `pitfolio: ${text
            .trimEnd()
            .replace(/^error: /, '')
            .split('\n')
            .map(visible)
            .join('\n  ')}\n`
        )
    })
    .configureHelp({styleTitle: (text) => out.paint('bold', text)})
    .showHelpAfterError('  `pitfolio --help` lists the commands and their options')
    .addHelpText(
      'after',
      exampleLines([
        'pitfolio init my-study',
        'pitfolio check my-study',
        'pitfolio build my-study',
        'pitfolio explain duplicate-visit'
      ])
    )
}
