import {isDefined, type Quantity} from '../../src/model/quantity.ts'

/** The number of a quantity that a test takes to be defined. */
export function numberOf(quantity: Quantity): number {
  if (!isDefined(quantity)) throw new Error(`not defined, because ${quantity.notDefined}`)
  return quantity.value
}
