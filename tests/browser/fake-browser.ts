import {chmodSync, writeFileSync} from 'node:fs'
import {join} from 'node:path'
import {temporaryFolder} from '../files/study-on-disk.ts'

/** A program that takes a browser's words and does what the lines of shell say; `$pdf` is where the print belongs, `$page` the page. */
export function fakeBrowser(lines: string): string {
  const program = join(temporaryFolder(), 'browser')
  const script = `#!/bin/sh
for word in "$@"; do case "$word" in --print-to-pdf=*) pdf="\${word#--print-to-pdf=}";; file://*) page="\${word#file://}";; esac; done
${lines}
`
  writeFileSync(program, script)
  chmodSync(program, 0o755)
  return program
}

/** Prints the text of the page after the sign of a PDF. */
export const printing = '{ printf "%%PDF-"; cat "$page"; } > "$pdf"'
