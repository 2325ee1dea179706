import {habitatStyle} from '../model/habitat-style.ts'

/** Fields of a datum that is drawn in its habitat's colour and symbol. */
export function habitatFields(style: number): {readonly colour: string; readonly shape: string} {
  const {colour, shape} = habitatStyle(style)
  return {colour, shape}
}

/** Encodings that read those fields as they are: the habitats' colours need no scale. */
export const habitatColour = {field: 'colour', type: 'nominal', scale: null} as const
export const habitatShape = {field: 'shape', type: 'nominal', scale: null} as const
