import {type Command, InvalidArgumentError} from 'commander'
import type {ArchiveOptions} from './archive.ts'
import type {BuildCommandOptions} from './build.ts'
import type {CheckOptions} from './check.ts'
import {exampleLines} from './example-lines.ts'
import type {ExitCode} from './exit-code.ts'
import type {InitOptions} from './init.ts'
import type {Terminal} from './terminal/terminal.ts'
import type {VerifyOptions} from './verify.ts'

type End = (code: ExitCode) => void

/**
 * Every command, in the order in which a study meets them. What one needs is loaded when it runs, so that `--help`
 * comes at once.
 */
export function addCommands(program: Command, terminal: Terminal, end: End): void {
  addInit(program, terminal, end)
  addCheck(program, terminal, end)
  addBuild(program, terminal, end)
  addArchive(program, terminal, end)
  addVerify(program, terminal, end)
  addExplain(program, terminal, end)
}

function addInit(program: Command, terminal: Terminal, end: End): void {
  program
    .command('init')
    .summary('start a study folder, with comments that say what belongs where')
    .description(
      'Writes a commented study folder that passes the check. Nothing that stands in DIR is ever touched.'
    )
    .argument('<DIR>', 'a new or empty folder')
    .option('--from-example', 'copy the example study, an invented season, instead')
    .addHelpText('after', exampleLines(['pitfolio init my-study', 'pitfolio init try-it --from-example']))
    .action(async (folder: string, options: InitOptions) =>
      end(await (await import('./init.ts')).init(folder, options, terminal))
    )
}

function addCheck(program: Command, terminal: Terminal, end: End): void {
  program
    .command('check')
    .summary('say what is wrong with a study, where, and how to mend it')
    .description(
      'Reads and judges a study folder. Ends with 0 when there is no error, with 1 when there is, with 2 when the folder cannot be read.'
    )
    .argument('[DIR]', 'the study folder', '.')
    .option('--json', 'print the findings and the balance of rows as JSON')
    .addHelpText(
      'after',
      exampleLines(['pitfolio check my-study', 'pitfolio check my-study --json > findings.json'])
    )
    .action(async (folder: string, options: CheckOptions) =>
      end(await (await import('./check.ts')).check(folder, options, terminal))
    )
}

function addBuild(program: Command, terminal: Terminal, end: End): void {
  program
    .command('build')
    .summary('make the report: every document, table, figure and number')
    .description(
      'Makes the report of a study folder, or nothing. A report that was edited since, or a folder that pitfolio did not make, is left alone.'
    )
    .argument('[DIR]', 'the study folder', '.')
    .option('--out <folder>', 'where the report goes (default: report/ in the study folder)')
    .option('--force', 'replace a report of pitfolio although somebody edited it')
    .option('--strict', 'write nothing when there is any error')
    .option('--only <documents>', 'make only these: chapter, season, site, site-<site_id>', namesOf)
    .option(
      '--pdf',
      'print chapter and site reports to PDF as well, with an installed Chromium, Chrome or Edge'
    )
    .option('--quiet', 'say nothing when all goes well')
    .option('--timings', 'say at the end how long each stage took')
    .option('--cores <number>', 'compute with so many cores (default: those that there are)', coresOf)
    .addHelpText(
      'after',
      exampleLines([
        'pitfolio build my-study',
        'pitfolio build my-study --out /tmp/draft --only chapter,season',
        'pitfolio build my-study --pdf',
        'pitfolio build my-study --strict --quiet'
      ])
    )
    .action(async (folder: string, options: BuildCommandOptions) => {
      end(await (await import('./build.ts')).build(folder, options, terminal))
    })
}

function addArchive(program: Command, terminal: Terminal, end: End): void {
  program
    .command('archive')
    .summary('pack records, report and their description into one zip that others can check')
    .description(
      'Writes one zip of raw records, report and metadata in open standards; the same study gives the same bytes. Positions and names that are not for others are held back, and the archive says so.'
    )
    .argument('[DIR]', 'the study folder', '.')
    .option('--out <file>', 'where the archive goes (default: <study_id>-<season>.zip in the study folder)')
    .option('--exact', 'put the original files in although they hold what is not for others')
    .option('--quiet', 'say nothing when all goes well')
    .addHelpText(
      'after',
      exampleLines(['pitfolio archive my-study', 'pitfolio archive my-study --out /tmp/season.zip --exact'])
    )
    .action(async (folder: string, options: ArchiveOptions) =>
      end(await (await import('./archive.ts')).archive(folder, options, terminal))
    )
}

function addVerify(program: Command, terminal: Terminal, end: End): void {
  program
    .command('verify')
    .summary('check an archive, or a report, against its raw records')
    .description(
      'Checks every file of an archive, computes every number again from its raw records and makes the documents anew. Ends with 0 when all is as it was, with 1 when anything differs, with 2 when it is no archive or not to be trusted.'
    )
    .argument('[PATH]', 'an archive, as a zip or unpacked; with --report, the study')
    .option(
      '--report <folder>',
      'check a report against the study that it was made from (default: the folder it is in)'
    )
    .option('--quiet', 'say nothing when all is well')
    .addHelpText(
      'after',
      exampleLines([
        'pitfolio verify my-study/quill-valley-2025.zip',
        'pitfolio verify --report my-study/report',
        'pitfolio verify my-study --report /tmp/draft'
      ])
    )
    .action(async (path: string | undefined, options: VerifyOptions) =>
      end(await (await import('./verify.ts')).verify(path, options, terminal))
    )
}

function addExplain(program: Command, terminal: Terminal, end: End): void {
  program
    .command('explain')
    .summary('say what a finding means, why it matters and how to mend it')
    .description('Explains the code of a finding; without a code, lists them all.')
    .argument('[CODE]', 'the code of a finding, such as duplicate-visit')
    .addHelpText('after', exampleLines(['pitfolio explain duplicate-visit', 'pitfolio explain']))
    .action(async (code: string | undefined) => end((await import('./explain.ts')).explain(code, terminal)))
}

function namesOf(written: string, before: readonly string[] = []): readonly string[] {
  return [
    ...before,
    ...written
      .split(',')
      .map((name) => name.trim())
      .filter((name) => name !== '')
  ]
}

function coresOf(written: string): number {
  const cores = Number(written)
  if (!(Number.isInteger(cores) && cores >= 1 && cores <= 64)) {
    throw new InvalidArgumentError('It is a whole number from 1 to 64.')
  }
  return cores
}
