import {type Binding, bind, lookUp, type Scope} from '../scope.ts'

/** The scopes in which the items of a list are told one after another: the item, its number, and whether it is first or last. */
export function bindItems(scope: Scope, items: readonly unknown[], path: string, name: string): Scope[] {
  return items.map((value, index) => {
    const found = lookUp(scope, `${path}.${index}`)
    const plain = (told: unknown): Binding => ({value: told, shape: undefined})
    return bind(scope, [
      [name, {value, shape: found.status === 'unknown' ? undefined : found.shape}],
      [`${name}Number`, plain(index + 1)],
      [`${name}First`, plain(index === 0)],
      [`${name}Last`, plain(index === items.length - 1)]
    ])
  })
}
