/** A small sound study, two woods with five traps each: the examples of the rules are laid over its files. */
export const baseStudy: Readonly<Record<string, string>> = {
  'study.yaml': `title: Beetles of two places
season: {start: 2026-05-01, end: 2026-06-30}
habitats: {wood: Wood, meadow: Meadow}
trap_types: {cup: {container: plastic cup, rim_diameter_mm: 75}}
fluids: {glycol: {substance: propylene glycol, dilution: '1:1'}}
`,
  'sites.csv': `site_id,habitat,latitude,longitude,litter_depth_mm
W1,wood,51.20,9.10,30
M1,wood,51.21,9.12,25
`,
  'traps.csv': `trap_id,site_id,installed
W1-1,W1,2026-04-27
M1-1,M1,2026-04-27
W1-2,W1,2026-04-27
W1-3,W1,2026-04-27
W1-4,W1,2026-04-27
W1-5,W1,2026-04-27
M1-2,M1,2026-04-27
M1-3,M1,2026-04-27
M1-4,M1,2026-04-27
M1-5,M1,2026-04-27
`,
  'visits.csv': `trap_id,opened,collected,condition,sample,vertebrates_count
W1-1,2026-05-04,2026-05-18,intact,sorted,0
W1-1,2026-05-18,2026-06-01,intact,sorted,0
M1-1,2026-05-04,2026-05-18,intact,empty,0
W1-2,2026-05-04,2026-05-18,intact,empty,0
W1-3,2026-05-04,2026-05-18,intact,empty,0
W1-4,2026-05-04,2026-05-18,intact,empty,0
W1-5,2026-05-04,2026-05-18,intact,empty,0
M1-2,2026-05-04,2026-05-18,intact,empty,0
M1-3,2026-05-04,2026-05-18,intact,empty,0
M1-4,2026-05-04,2026-05-18,intact,empty,0
M1-5,2026-05-04,2026-05-18,intact,empty,0
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
