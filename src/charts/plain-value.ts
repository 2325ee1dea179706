import {isDefined, type Quantity} from '../model/quantity.ts'

/** The value of a quantity as a data table holds it: null where it is not defined. */
export function plainValue(quantity: Quantity): number | null {
  return isDefined(quantity) ? quantity.value : null
}
