/** A text as it stands in a line of YAML: in quotes where it would mean something else without. */
export function yamlText(text: string): string {
  return /^[\p{L}][\p{L}\p{N} ._/-]*$/u.test(text) && !/^(true|false|null|yes|no|on|off|n|y)$/i.test(text)
    ? text
    : JSON.stringify(text)
}
