/** Lines longer than this are broken up, so that a measure stands on one line and a difference can be seen. */
const width = 110

/**
 * A value as JSON for people and programs: two spaces, members in the order in which they were made, short objects
 * and lists on one line, LF at the end. Maps become objects; members without a value are left out.
 *
 * @throws RangeError when a number is not finite: JSON would write null, which means something else.
 */
export function json(value: unknown): string {
  return `${written(value, 0, 0)}\n`
}

/** The text of a value that starts `indent` spaces in, with `taken` more columns of its line in use. */
function written(value: unknown, indent: number, taken: number): string {
  if (value === undefined) return 'null'
  if (typeof value === 'number') return writtenNumber(value)
  if (typeof value !== 'object' || value === null) return JSON.stringify(value)
  if (value instanceof Map) return written(Object.fromEntries(value), indent, taken)
  const inner = indent + 2
  const isList = Array.isArray(value)
  const parts = isList ? value.map((item) => written(item, inner, 0)) : writtenMembers(value, inner)
  const [open, close] = isList ? ['[', ']'] : ['{', '}']
  if (parts.length === 0) return open + close
  const length = parts.reduce((sum, part) => sum + part.length + 2, indent + taken)
  const fits = indent > 0 && length < width && parts.every((part) => !part.includes('\n'))
  if (fits) return `${open}${parts.join(', ')}${close}`
  const space = ' '.repeat(inner)
  if (isList && value.every((item) => typeof item === 'number'))
    return `[\n${filled(parts, space)}\n${' '.repeat(indent)}]`
  return `${open}\n${parts.map((part) => space + part).join(',\n')}\n${' '.repeat(indent)}${close}`
}

function writtenNumber(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`${value} cannot be written as JSON`)
  return String(value)
}

function writtenMembers(value: object, indent: number): string[] {
  const parts: string[] = []
  for (const [name, member] of Object.entries(value)) {
    if (member === undefined) continue
    const key = `${JSON.stringify(name)}: `
    parts.push(key + written(member, indent, key.length))
  }
  return parts
}

/** Long columns of numbers fill their lines: one number a line would be most of the file. */
function filled(parts: readonly string[], space: string): string {
  const lines: string[] = []
  let line = ''
  for (const part of parts) {
    if (line !== '' && space.length + line.length + part.length + 2 > width) {
      lines.push(`${space}${line},`)
      line = ''
    }
    line = line === '' ? part : `${line}, ${part}`
  }
  return [...lines, `${space}${line}`].join('\n')
}
