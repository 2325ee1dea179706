/** A small sound study: the examples of the rules are laid over its files. */
export const baseStudy: Readonly<Record<string, string>> = {
  'study.yaml': `title: Beetles of two places
season: {start: 2026-05-01, end: 2026-06-30}
habitats: {wood: Wood, meadow: Meadow}
trap_types: {cup: {container: plastic cup, rim_diameter_mm: 75}}
fluids: {glycol: {substance: propylene glycol, dilution: '1:1'}}
`,
  'sites.csv': `site_id,habitat,latitude,longitude
W1,wood,51.20,9.10
M1,meadow,51.21,9.12
`,
  'traps.csv': `trap_id,site_id
W1-1,W1
M1-1,M1
`,
  'visits.csv': `trap_id,opened,collected,condition,sample
W1-1,2026-05-04,2026-05-18,intact,sorted
W1-1,2026-05-18,2026-06-01,intact,sorted
M1-1,2026-05-04,2026-05-18,intact,empty
`,
  'catch.csv': `trap_id,collected,taxon,count
W1-1,2026-05-18,Carabus problematicus,3
W1-1,2026-06-01,Abax parallelepipedus,2
`,
  'taxa.csv': `taxon,rank,order,family
Carabus problematicus,species,Coleoptera,Carabidae
Abax parallelepipedus,species,Coleoptera,Carabidae
`
}
