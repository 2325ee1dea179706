import {type CountModel, type CountModelFit, isFitted} from '../../src/statistics/count-model.ts'

/** The fit of a model that a test takes to have one. */
export function fitted(model: CountModel): CountModelFit {
  if (!isFitted(model)) throw new Error(`no model, because ${model.message}`)
  return model
}
