/**
 * Puts texts into the places `{{name}}` of a shell. What is put in is not looked at again, so a study's text may
 * hold braces.
 *
 * @throws Error for a place that nothing is given for: the shell and the code have parted.
 */
export function fillSlots(shell: string, slots: Readonly<Record<string, string>>): string {
  return shell.replace(/\{\{([a-z-]+)\}\}/g, (_, name: string) => {
    const text = slots[name]
    if (text === undefined) throw new Error(`nothing is given for the place {{${name}}}`)
    return text
  })
}
