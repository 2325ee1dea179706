import spdxIds from 'spdx-license-ids' with {type: 'json'}

/** A licence that machines can tell. */
export interface Licence {
  /** SPDX identifier. */
  readonly id: string
  readonly name: string
  /** Where the legal text stands. */
  readonly url: string
}

/** The licences that networks for occurrence data take, with the addresses that they expect. */
const usual: Readonly<Record<string, Omit<Licence, 'id'>>> = {
  'CC0-1.0': {
    name: 'Creative Commons Zero v1.0 Universal',
    url: 'https://creativecommons.org/publicdomain/zero/1.0/legalcode'
  },
  'CC-BY-4.0': {
    name: 'Creative Commons Attribution 4.0 International',
    url: 'https://creativecommons.org/licenses/by/4.0/legalcode'
  },
  'CC-BY-NC-4.0': {
    name: 'Creative Commons Attribution Non Commercial 4.0 International',
    url: 'https://creativecommons.org/licenses/by-nc/4.0/legalcode'
  }
}

/** The licence of study.yaml, where it is one of the SPDX list; other words are no licence that a machine can tell. */
export function licenceOf(stated: string | undefined): Licence | undefined {
  if (stated === undefined || !(spdxIds as readonly string[]).includes(stated)) return undefined
  const known = usual[stated]
  return known === undefined
    ? {id: stated, name: stated, url: `https://spdx.org/licenses/${stated}`}
    : {id: stated, ...known}
}
