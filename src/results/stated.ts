import {formatPlace} from '../model/place.ts'
import type {Study} from '../model/study.ts'

interface Stated {
  readonly stated: Record<string, unknown>
  readonly statedAt: Record<string, string>
}

/**
 * What study.yaml states, as it is written, and the place of every value by its JSON pointer (RFC 6901). Addresses
 * of people whom `contact` does not name are left out: they were not given for publication.
 */
export function statedValues({settings, settingPlace}: Study): Stated {
  const statedAt: Record<string, string> = {}
  const visit = (value: unknown, path: readonly (string | number)[]): void => {
    if (value === undefined) return
    if (typeof value === 'object' && value !== null) {
      const entries = Array.isArray(value) ? [...value.entries()] : Object.entries(value)
      for (const [key, item] of entries) visit(item, [...path, key])
    } else {
      const pointer = path.map((step) => `/${`${step}`.replaceAll('~', '~0').replaceAll('/', '~1')}`).join('')
      statedAt[pointer] = formatPlace(settingPlace(path))
    }
  }
  const people = publishedPeople(settings)
  const stated = {...settings, ...(people !== undefined && {people})}
  visit(stated, [])
  return {stated, statedAt}
}

function publishedPeople({people, contact = ''}: Study['settings']): Study['settings']['people'] {
  return people?.map(({email, ...person}) => {
    const named = email !== undefined && (contact.includes(person.name) || contact.includes(email))
    return named ? {...person, email} : person
  })
}
