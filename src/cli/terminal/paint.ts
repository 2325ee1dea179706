export type Ink = 'bold' | 'faint' | 'red' | 'yellow' | 'cyan' | 'green'

export type Paint = (ink: Ink, text: string) => string

const codes: Readonly<Record<Ink, readonly [on: number, off: number]>> = {
  bold: [1, 22],
  faint: [2, 22],
  red: [31, 39],
  yellow: [33, 39],
  cyan: [36, 39],
  green: [32, 39]
}

export const colours: Paint = (ink, text) => {
  const [on, off] = codes[ink]
  return text === '' ? '' : `\u001b[${on}m${text}\u001b[${off}m`
}

export const noColours: Paint = (_ink, text) => text
