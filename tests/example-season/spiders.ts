import type {SeasonCurve, TaxonDetails, TaxonSpec} from './taxon.ts'

type Rates = TaxonSpec['rates']

const guilds: Readonly<Record<string, string>> = {
  Agelenidae: 'sheet-web weaver',
  Dysderidae: 'night hunter',
  Gnaphosidae: 'night hunter',
  Linyphiidae: 'sheet-web weaver',
  Lycosidae: 'ground hunter',
  Pisauridae: 'ground hunter',
  Tetragnathidae: 'ground hunter',
  Thomisidae: 'ambush hunter'
}

function spider(
  taxon: string,
  family: string,
  authority: string,
  bodyLengthMm: number,
  season: SeasonCurve,
  rates: Rates,
  details: TaxonDetails = {}
): TaxonSpec {
  const group = {class: 'Arachnida', order: 'Araneae', guild: guilds[family] ?? ''} as const
  const usual = {clumping: 1, sexed: true} as const
  return {taxon, family, authority, bodyLengthMm, season, rates, ...group, ...usual, ...details}
}

/** Real names and authorities, from memory; habits plausible; every number invented. */
export const spiders: readonly TaxonSpec[] = [
  spider(
    'Alopecosa pulverulenta',
    'Lycosidae',
    '(Clerck, 1757)',
    8,
    'may',
    {oak: 0.06, hay: 5, barley: 0.06},
    {clumping: 0.5}
  ),
  spider(
    'Coelotes terrestris',
    'Agelenidae',
    '(Wider, 1834)',
    11,
    'long',
    {oak: 4.5, hay: 0.05},
    {
      note: 'A stout grey-brown spider that lives in a silk tube under logs and stones in old woods. The mother feeds her young.'
    }
  ),
  spider(
    'Erigone atra',
    'Linyphiidae',
    'Blackwall, 1833',
    2.3,
    'long',
    {oak: 0.05, hay: 0.8, barley: 7},
    {
      note: 'One of the tiny black money spiders that sail on threads of silk and are the first to settle on bare soil.'
    }
  ),
  spider(
    'Harpactea hombergi',
    'Dysderidae',
    '(Scopoli, 1763)',
    6,
    'spring',
    {},
    {
      stray: {animals: 1, sites: ['OAK1']}
    }
  ),
  spider(
    'Micaria pulicaria',
    'Gnaphosidae',
    '(Sundevall, 1831)',
    3.5,
    'summer',
    {},
    {
      stray: {animals: 1, sites: ['HAY4']}
    }
  ),
  spider('Microneta viaria', 'Linyphiidae', '(Blackwall, 1841)', 2.7, 'spring', {oak: 1.8}),
  spider(
    'Oedothorax apicatus',
    'Linyphiidae',
    '(Blackwall, 1850)',
    2.7,
    'summer',
    {hay: 0.1, barley: 7},
    {clumping: 0.5}
  ),
  spider('Pachygnatha degeeri', 'Tetragnathidae', 'Sundevall, 1830', 3.4, 'long', {
    oak: 0.05,
    hay: 3.5,
    barley: 1
  }),
  spider('Pardosa agrestis', 'Lycosidae', '(Westring, 1861)', 6.5, 'summer', {barley: 2.5}, {presence: 0.75}),
  spider(
    'Pardosa amentata',
    'Lycosidae',
    '(Clerck, 1757)',
    6,
    'may',
    {},
    {
      stray: {animals: 2, sites: ['HAY3']},
      englishName: 'spotted wolf spider'
    }
  ),
  spider('Pardosa lugubris', 'Lycosidae', '(Walckenaer, 1802)', 5.5, 'may', {oak: 4}, {clumping: 0.5}),
  spider(
    'Pardosa palustris',
    'Lycosidae',
    '(Linnaeus, 1758)',
    5.5,
    'may',
    {hay: 8, barley: 0.6},
    {
      clumping: 0.5,
      note: 'A wolf spider of short grass. It spins no web but runs its prey down, and the female carries her eggs in a pale bag behind her.'
    }
  ),
  spider(
    'Pardosa pullata',
    'Lycosidae',
    '(Clerck, 1757)',
    5,
    'may',
    {oak: 0.05, hay: 8, barley: 0.05},
    {clumping: 0.5}
  ),
  spider(
    'Pisaura mirabilis',
    'Pisauridae',
    '(Clerck, 1757)',
    13,
    'summer',
    {},
    {
      stray: {animals: 1, sites: ['HAY1']},
      englishName: 'nursery web spider'
    }
  ),
  spider('Tenuiphantes tenuis', 'Linyphiidae', '(Blackwall, 1852)', 2.7, 'long', {
    oak: 0.1,
    hay: 0.9,
    barley: 2
  }),
  spider('Tenuiphantes zimmermanni', 'Linyphiidae', '(Bertkau, 1890)', 2.6, 'long', {oak: 2}),
  spider('Trochosa ruricola', 'Lycosidae', '(De Geer, 1778)', 11, 'spring', {hay: 2, barley: 0.6}),
  spider('Trochosa terricola', 'Lycosidae', 'Thorell, 1856', 10, 'spring', {oak: 1.8, hay: 0.1}),
  spider(
    'Walckenaeria acuminata',
    'Linyphiidae',
    'Blackwall, 1833',
    3.2,
    'spring',
    {},
    {
      stray: {animals: 2, sites: ['OAK3', 'OAK4']}
    }
  ),
  spider(
    'Xysticus cristatus',
    'Thomisidae',
    '(Clerck, 1757)',
    6,
    'may',
    {hay: 0.4},
    {
      englishName: 'common crab spider'
    }
  )
]
