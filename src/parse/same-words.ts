/** Other ways of writing words that can mean nothing else. */
export const sameWords: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  sex: {
    f: 'female',
    fem: 'female',
    m: 'male',
    '♀': 'female',
    '♀♀': 'female',
    '♂': 'male',
    '♂♂': 'male',
    u: 'undetermined',
    '?': 'undetermined',
    unknown: 'undetermined',
    unsexed: 'undetermined',
    indet: 'undetermined'
  },
  life_stage: {
    ad: 'adult',
    imago: 'adult',
    imagines: 'adult',
    juv: 'juvenile',
    larvae: 'larva',
    l1: 'larva',
    l2: 'larva',
    l3: 'larva',
    pupae: 'pupa'
  }
}

/** What people write and probably mean: asked about, never read, for it decides on effort. */
export const perhaps: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  condition: {
    ok: 'intact',
    okay: 'intact',
    good: 'intact',
    fine: 'intact',
    working: 'intact',
    flooded: 'overflowed',
    inundated: 'overflowed',
    overflow: 'overflowed',
    'dried out': 'dry',
    'dried up': 'dry',
    trampled: 'disturbed',
    'dug up': 'disturbed',
    'dug out': 'disturbed',
    badger: 'disturbed',
    lost: 'missing',
    gone: 'missing',
    stolen: 'missing',
    'knocked over': 'spilled',
    lifted: 'raised'
  },
  sample: {ok: 'sorted', done: 'sorted', none: 'empty', nothing: 'empty', '0': 'empty', missing: 'lost'}
}
