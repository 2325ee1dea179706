interface Trouble {
  readonly message: string
  readonly remedy: string
}

const noSpace = /^\s*(?:- )?([a-z_]+):([^\s/].*)$/

/** Why a line of study.yaml cannot be read, for somebody who knows no YAML: told by what stands in the line. */
export function yamlTrouble(reason: string, lines: readonly string[], at: number): Trouble {
  const line = lines[at] ?? ''
  if (/^\s*\t/.test(line))
    return {
      message: 'this line is indented with a tab, which YAML does not allow',
      remedy: 'indent with spaces'
    }
  if (/duplicated mapping key/.test(reason)) return twice(lines, at)
  if (/escape/.test(reason) && line.includes('\\'))
    return {
      message: 'a backslash in double quotes means something else in YAML',
      remedy: 'write `/` between folders, and no backslash'
    }
  const tight = lines.slice(0, at + 1).findIndex((text) => noSpace.test(text))
  if (tight >= 0) {
    const [, name, text] = noSpace.exec(lines[tight] ?? '') ?? []
    return {
      message: `no space stands behind the colon${tight === at ? '' : ` in line ${tight + 1}`}`,
      remedy: `write \`${name}: ${text}\``
    }
  }
  const value = unquotedValue(line)
  if (value !== undefined) {
    const {key, text} = value
    const quoted = `${key}: "${text.replaceAll('"', '\\"')}"`
    if (/^[*&@%`!|>\]},?-]/.test(text))
      return {
        message: `\`${text.charAt(0)}\` cannot begin a text in YAML`,
        remedy: `put the text into quotes: \`${quoted}\``
      }
    if (/^[^[{].*:(\s|$)/.test(text))
      return {
        message: 'a colon stands within a text that is not in quotes',
        remedy: `put the text into quotes: \`${quoted}\``
      }
  }
  if (/indentation|expected|can not read|mapping/.test(reason)) {
    const [above, mine] = [lines.slice(0, at).findLast((text) => /^\s*[^\s#]/.test(text)) ?? '', line]
    if (indentOf(above) !== indentOf(mine))
      return {
        message: `this line does not begin where it must: ${indentOf(mine)} ${indentOf(mine) === 1 ? 'space' : 'spaces'} before it, ${indentOf(above)} before the line above`,
        remedy:
          'begin lines of one block below each other, two spaces further in than the name that they belong to, which ends with a colon and nothing behind it'
      }
  }
  return {
    message: `this is not valid YAML: ${reason}`,
    remedy: 'check indentation, colons and quotation marks near this line'
  }
}

function twice(lines: readonly string[], at: number): Trouble {
  const line = lines[at] ?? ''
  const [, indent = '', name = line.trim()] = /^(\s*)([^\s:#][^:]*):/.exec(line) ?? []
  const same = (text: string): boolean => text.startsWith(`${indent}${name}:`)
  const first = lines.findIndex(same)
  const before = first >= 0 && first < at ? `, first in line ${first + 1}` : ''
  return {
    message: `\`${name}\` stands twice${before}`,
    remedy: 'put what belongs to it into one place and delete the other'
  }
}

function unquotedValue(line: string): {key: string; text: string} | undefined {
  const [, key, text] = /^\s*(?:- )?([\p{L}_][\p{L}\p{N}_ -]*):\s+([^"'#\s].*?)\s*$/u.exec(line) ?? []
  return key === undefined || text === undefined ? undefined : {key, text}
}

function indentOf(line: string): number {
  return line.length - line.trimStart().length
}
