/** Controls, and the invisible characters that turn the direction of writing or hide in a name. */
const hidden =
  /[\u0000-\u001f\u007f-\u009f\u00ad\u061c\u200b\u200e\u200f\u2028-\u202e\u2060\u2066-\u2069\ufeff]/g

/** Longer than anything that a message needs to show of a cell. */
const longest = 600

/**
 * Text that came out of somebody's file, made safe for a terminal: control characters are written out (`\x1b`), so
 * that a cell can neither colour the screen nor move the cursor, and what the eye cannot see is seen.
 */
export function visible(text: string): string {
  const shown = text.length > longest ? `${text.slice(0, longest)} ...` : text
  return shown.replace(hidden, escaped)
}

/** JSON with the characters that JSON itself lets through but a terminal obeys written as `\u....`. */
export function visibleJson(value: unknown): string {
  const written = (found: string): string => (found === '\n' ? found : `\\u${code(found, 4)}`)
  return JSON.stringify(value, null, 2).replace(hidden, written)
}

function escaped(found: string): string {
  const named: Readonly<Record<string, string>> = {'\n': '\\n', '\r': '\\r', '\t': '\\t'}
  const value = found.charCodeAt(0)
  return named[found] ?? (value < 0x100 ? `\\x${code(found, 2)}` : `\\u${code(found, 4)}`)
}

function code(found: string, digits: number): string {
  return found.charCodeAt(0).toString(16).padStart(digits, '0')
}
