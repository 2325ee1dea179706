import {packageRoot} from '../files/package-root.ts'
import {exitCode} from './exit-code.ts'
import {runPitfolio} from './run-pitfolio.ts'
import {processTerminal} from './terminal/process-terminal.ts'
import {faultText} from './terminal/trouble-text.ts'

const terminal = processTerminal()

/** What escapes every other net: the same words, and no stack unless it is asked for. */
function endWithFault(error: unknown): never {
  terminal.err.write(faultText(terminal.err, error, packageRoot().version, terminal.debug))
  process.exit(exitCode.ourFault)
}

process.on('uncaughtException', endWithFault)
process.on('unhandledRejection', endWithFault)

// Set, not exited with: what is still on its way to a pipe must arrive.
process.exitCode = await runPitfolio(process.argv.slice(2), terminal)
