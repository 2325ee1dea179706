import type {SeasonCurve, TaxonDetails, TaxonSpec} from './taxon.ts'

type Rates = TaxonSpec['rates']

function carabid(
  taxon: string,
  authority: string,
  bodyLengthMm: number,
  guild: string,
  season: SeasonCurve,
  rates: Rates,
  details: TaxonDetails = {}
): TaxonSpec {
  const group = {class: 'Insecta', order: 'Coleoptera', family: 'Carabidae'} as const
  const usual = {clumping: 1, sexed: taxon.startsWith('Carabus')} as const
  return {taxon, authority, bodyLengthMm, guild, season, rates, ...group, ...usual, ...details}
}

/** Real names and authorities, from memory; habits plausible; every number invented. */
export const carabids: readonly TaxonSpec[] = [
  carabid(
    'Abax parallelepipedus',
    '(Piller & Mitterpacher, 1783)',
    19,
    'predator',
    'summer',
    {oak: 15, hay: 0.1, barley: 0.04},
    {
      note: 'A broad, flat, shining black beetle of old woods. It cannot fly and seldom crosses open fields, so a wood that has it has been a wood for a long time.'
    }
  ),
  carabid(
    'Amara aenea',
    '(De Geer, 1774)',
    7.5,
    'seed eater',
    'spring',
    {hay: 1.6, barley: 0.9},
    {
      note: 'A small bronze beetle that runs about in full sun and eats the seeds of weeds and grasses.'
    }
  ),
  carabid('Amara communis', '(Panzer, 1797)', 7, 'seed eater', 'spring', {hay: 3.4, barley: 0.06}),
  carabid('Amara lunicollis', 'Schiødte, 1837', 7.5, 'seed eater', 'spring', {hay: 3}, {presence: 0.75}),
  carabid(
    'Anchomenus dorsalis',
    '(Pontoppidan, 1763)',
    7,
    'predator',
    'may',
    {hay: 0.06, barley: 8},
    {
      clumping: 0.5,
      note: 'A small green and orange beetle that sleeps through the winter in crowds in hedge banks and walks out into the crop in spring to eat aphids.'
    }
  ),
  carabid(
    'Asaphidion flavipes',
    '(Linnaeus, 1761)',
    4.2,
    'predator',
    'spring',
    {},
    {
      stray: {animals: 1, sites: ['BAR3']}
    }
  ),
  carabid(
    'Badister bullatus',
    '(Schrank, 1798)',
    5.5,
    'snail eater',
    'spring',
    {},
    {
      stray: {animals: 1, sites: ['HAY4']}
    }
  ),
  carabid('Bembidion lampros', '(Herbst, 1784)', 3.6, 'predator', 'spring', {barley: 8}),
  carabid(
    'Bembidion quadrimaculatum',
    '(Linnaeus, 1761)',
    3,
    'predator',
    'spring',
    {},
    {
      stray: {animals: 1, sites: ['BAR4']}
    }
  ),
  carabid('Calathus fuscipes', '(Goeze, 1777)', 12, 'predator', 'autumn', {hay: 3, barley: 2}),
  carabid(
    'Calathus melanocephalus',
    '(Linnaeus, 1758)',
    7.5,
    'predator',
    'autumn',
    {},
    {
      stray: {animals: 2, sites: ['HAY4', 'HAY1']}
    }
  ),
  carabid(
    'Carabus granulatus',
    'Linnaeus, 1758',
    19,
    'predator',
    'spring',
    {oak: 0.06, hay: 2.2},
    {
      note: 'A large bronze hunter of wet meadows and carr. It eats slugs and worms and spends the winter inside rotten wood.'
    }
  ),
  carabid(
    'Carabus intricatus',
    'Linnaeus, 1761',
    29,
    'snail eater',
    'spring',
    {},
    {
      stray: {animals: 4, sites: ['OAK3']},
      englishName: 'blue ground beetle',
      legalStatus: "protected (the study's own example)",
      sensitive: 2,
      note: 'A very large, long-legged, steel-blue beetle of damp old oak woods with mossy trunks, where it climbs at night after slugs.'
    }
  ),
  carabid(
    'Carabus monilis',
    'Fabricius, 1792',
    24,
    'predator',
    'may',
    {},
    {
      stray: {animals: 9, sites: ['HAY2', 'HAY4']},
      redList: "vulnerable (the study's own example)",
      note: 'A large beetle with chain-like rows on its wing cases. It lives in old grassland and on heavy soil that is not ploughed.'
    }
  ),
  carabid('Carabus problematicus', 'Herbst, 1786', 24, 'predator', 'summer', {oak: 3.5}),
  carabid(
    'Carabus violaceus',
    'Linnaeus, 1758',
    27,
    'predator',
    'autumn',
    {oak: 1.8, hay: 0.2},
    {
      englishName: 'violet ground beetle',
      note: 'As long as the top joint of a thumb, black with a violet edge. It hunts slugs at night and lives for two or three years.'
    }
  ),
  carabid(
    'Cychrus caraboides',
    '(Linnaeus, 1758)',
    16,
    'snail eater',
    'autumn',
    {oak: 0.5},
    {
      note: 'A black beetle with a long narrow head, made for reaching into snail shells.'
    }
  ),
  carabid(
    'Demetrias atricapillus',
    '(Linnaeus, 1758)',
    5,
    'predator',
    'spring',
    {},
    {
      stray: {animals: 1, sites: ['BAR1']}
    }
  ),
  carabid('Harpalus affinis', '(Schrank, 1781)', 10, 'mixed diet', 'summer', {hay: 0.1, barley: 2}),
  carabid(
    'Harpalus rufipes',
    '(De Geer, 1774)',
    14,
    'mixed diet',
    'autumn',
    {oak: 0.04, hay: 0.3, barley: 15},
    {
      englishName: 'strawberry seed beetle',
      note: 'A downy brown-black beetle that eats weed seeds as well as small animals, and flies to lights on warm nights.'
    }
  ),
  carabid(
    'Leistus rufomarginatus',
    '(Duftschmid, 1812)',
    9,
    'springtail eater',
    'twice',
    {},
    {
      stray: {animals: 5, sites: ['OAK1', 'OAK3']}
    }
  ),
  carabid(
    'Limodromus assimilis',
    '(Paykull, 1790)',
    11,
    'predator',
    'spring',
    {},
    {
      stray: {animals: 12, sites: ['OAK3', 'OAK4', 'OAK3']}
    }
  ),
  carabid(
    'Loricera pilicornis',
    '(Fabricius, 1775)',
    7.5,
    'springtail eater',
    'may',
    {oak: 0.4, hay: 0.8, barley: 2.6},
    {
      note: 'A small bronze beetle with stiff bristles on its feelers that make a cage around jumping springtails.'
    }
  ),
  carabid(
    'Nebria brevicollis',
    '(Fabricius, 1792)',
    12,
    'predator',
    'twice',
    {oak: 16, hay: 1.2, barley: 2},
    {
      clumping: 0.5,
      note: 'A shining black-brown beetle that appears in crowds in May, sleeps through the summer and comes back in autumn to breed.'
    }
  ),
  carabid('Notiophilus biguttatus', '(Fabricius, 1779)', 5.5, 'springtail eater', 'long', {
    oak: 1.8,
    hay: 0.06,
    barley: 0.12
  }),
  carabid(
    'Poecilus cupreus',
    '(Linnaeus, 1758)',
    11,
    'predator',
    'may',
    {oak: 0.05, hay: 0.8, barley: 13},
    {
      note: 'A coppery green beetle active by day, common on farmland, where it eats aphids, caterpillars and some seeds.'
    }
  ),
  carabid(
    'Poecilus versicolor',
    '(Sturm, 1824)',
    10,
    'predator',
    'may',
    {hay: 10, barley: 0.08},
    {clumping: 0.5}
  ),
  carabid(
    'Pterostichus madidus',
    '(Fabricius, 1775)',
    15,
    'predator',
    'autumn',
    {oak: 10, hay: 2.2, barley: 1.6},
    {clumping: 0.5}
  ),
  carabid(
    'Pterostichus melanarius',
    '(Illiger, 1798)',
    15,
    'predator',
    'autumn',
    {oak: 0.08, hay: 3, barley: 46},
    {
      note: 'The common large black beetle of ploughed land. It walks the field at night from June on and eats slugs, worms and insects.'
    }
  ),
  carabid('Pterostichus niger', '(Schaller, 1783)', 18, 'predator', 'autumn', {
    oak: 3.5,
    hay: 2,
    barley: 0.5
  }),
  carabid('Pterostichus oblongopunctatus', '(Fabricius, 1787)', 11, 'predator', 'spring', {oak: 4.5}),
  carabid(
    'Pterostichus vernalis',
    '(Panzer, 1796)',
    7,
    'predator',
    'spring',
    {hay: 3},
    {presence: 0.75, clumping: 0.5}
  ),
  carabid(
    'Stomis pumicatus',
    '(Panzer, 1796)',
    7.5,
    'predator',
    'summer',
    {},
    {
      stray: {animals: 2, sites: ['OAK1', 'HAY1']}
    }
  ),
  carabid(
    'Synuchus vivalis',
    '(Illiger, 1798)',
    7.5,
    'predator',
    'autumn',
    {},
    {
      stray: {animals: 1, sites: ['HAY4']}
    }
  ),
  carabid(
    'Trechus quadristriatus',
    '(Schrank, 1781)',
    3.8,
    'predator',
    'autumn',
    {hay: 0.08, barley: 5},
    {clumping: 0.5}
  )
]
