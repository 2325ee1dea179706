/**
 * A small season in which everything happens that an archive must tell apart: traps that caught nothing, failed, were
 * not sorted; doubtful names, synonyms, vouchers. Nothing of it is private.
 */
export const openStudy: Readonly<Record<string, string>> = {
  'study.yaml': `title: 'Beetles & spiders of "two places" <2026>'
study_id: two-places
licence: CC-BY-4.0
issued: 2026-12-01
people:
  - {name: Ada Ash, orcid: 0000-0002-1825-0097, role: design and writing, email: ada@example.org}
  - {name: Jan van der Berg, role: fieldwork}
contact: Ada Ash, ada@example.org
funding: Nobody
place: {country: Tarnmark, region: Quill valley, description: Two invented places., datum: WGS84}
habitats: {wood: {label: old wood}, meadow: {label: meadow}}
trap_types: {cup: {container: plastic cup, rim_diameter_mm: 75, depth_mm: 100, cover: wooden roof}}
fluids: {glycol: {substance: propylene glycol, dilution: '1:1'}}
target: {groups: [Carabidae, Araneae], life_stages: [adult], all_recorded: true}
identification: {level: species, keys: ['A key'], verifier: Jan van der Berg}
privacy: {coordinates: exact}
analysis: {replicates: 10, permutations: 99}
`,
  'sites.csv': `site_id,habitat,site_name,country,region,locality,latitude,longitude,coordinate_uncertainty_m,elevation_m,litter_depth_mm,remarks
W1,wood,North Wood,DE,Hesse,Nordheim,51.2034,9.1034,20,210,35,"steep, wet"
M1,meadow,Long Meadow,DE,Hesse,Südheim,51.2178,9.1299,,180,5,
`,
  'traps.csv': `trap_id,site_id,latitude,longitude,x_m,y_m
W1-1,W1,51.20341,9.10341,0,0
W1-2,W1,,,10,0
M1-1,M1,,,0,0
M1-2,M1,,,10,0
`,
  'visits.csv': `trap_id,opened,collected,condition,sample,collected_by,round,vertebrates_count,vertebrates_what,remarks
W1-1,2026-05-04,2026-05-18,intact,sorted,Ada Ash,1,0,,
W1-2,2026-05-04,2026-05-18,overflowed,sorted,Ada Ash,1,0,,after the storm
M1-1,2026-05-04,2026-05-18,intact,empty,Ada Ash,1,0,,
M1-2,2026-05-04,2026-05-18,diluted,empty,Ada Ash,1,1,shrew,
W1-1,2026-05-18,2026-06-01,missing,lost,Ada Ash,2,0,,dug out by a badger
W1-2,2026-05-18,2026-06-01,intact,unsorted,Ada Ash,2,0,,
M1-1,2026-05-18,2026-06-01,intact,sorted,Jan van der Berg,2,0,,
M1-2,2026-05-18,2026-06-01,overflowed,empty,Jan van der Berg,2,0,,
`,
  'catch.csv': `trap_id,collected,taxon,count,sex,life_stage,qualifier,identified_by,identified_on,sample_fraction,wing_form,voucher,remarks
W1-1,2026-05-18,Carabus problematicus,3,female,,,Ada Ash,2026-07-01,,,TP-1,
W1-1,2026-05-18,Carabus problematicus,2,male,,,Ada Ash,2026-07-01,,,,
W1-1,2026-05-18,Amara familiaris,1,,,cf.,Ada Ash,2026-07-01,,,,"worn, doubtful"
W1-1,2026-05-18,Lasius niger,7,,,,,,,,,
W1-2,2026-05-18,Pardosa amentata,4,,,,,,,,,
M1-1,2026-06-01,Pardosa amentata,12,,,,,,0.5,,,
M1-1,2026-06-01,Amara sp. 1,2,,,,,,,macropterous,,
M1-1,2026-06-01,Feronia cuprea,1,,larva,,,,,,,
`,
  'taxa.csv': `taxon,rank,class,order,family,genus,authority,sensitive,accepted_name
Carabus problematicus,species,Insecta,Coleoptera,Carabidae,Carabus,"Herbst, 1786",,
Amara familiaris,species,Insecta,Coleoptera,Carabidae,Amara,,,
Amara sp. 1,morphospecies,Insecta,Coleoptera,Carabidae,Amara,,,
Pardosa amentata,species,Arachnida,Araneae,Lycosidae,Pardosa,"(Clerck, 1757)",,
Lasius niger,species,Insecta,Hymenoptera,Formicidae,Lasius,,,
Feronia cuprea,species,Insecta,Coleoptera,Carabidae,Feronia,,,Poecilus cupreus
Poecilus cupreus,species,Insecta,Coleoptera,Carabidae,Poecilus,"(Linnaeus, 1758)",,
`,
  'text/introduction.md': 'Why two places.\n',
  'photos/field book.txt': 'Not read by anything.\n'
}

/** The same with a sensitive beetle in the wood, positions for others only to 0.01 degrees, and one kept back. */
export const privateStudy: Readonly<Record<string, string>> = {
  ...openStudy,
  'study.yaml': openStudy['study.yaml']!.replace(
    'privacy: {coordinates: exact}\n',
    'privacy: {coordinates: 0.01}\n'
  ).replace('role: fieldwork}', 'role: fieldwork, email: jan@example.net}'),
  'sites.csv': `site_id,habitat,site_name,country,region,locality,latitude,longitude,coordinate_uncertainty_m,coordinates_shown,grid_ref,remarks
W1,wood,North Wood,DE,Hesse,Nordheim,51.2034,9.1034,20,,32UND123,"steep, wet"
M1,meadow,Long Meadow,DE,Hesse,Südheim,51.2178,9.1299,,,32UND456,
K1,meadow,Kept Back,DE,Hesse,Geheim,51.3178,9.2299,15,none,32UND789,
`,
  'traps.csv': `${openStudy['traps.csv']}K1-1,K1,51.31781,9.22991,0,0\n`,
  'visits.csv': `${openStudy['visits.csv']}K1-1,2026-05-04,2026-05-18,intact,sorted,Ada Ash,1,0,,\n`,
  'catch.csv': openStudy['catch.csv']!.replace(
    'W1-1,2026-05-18,Lasius niger,7',
    'W1-1,2026-05-18,carabus Intricatus,2,female,,,,,,,TP-9,under the old oak\nW1-1,2026-05-18,Lasius niger,7'
  ).concat('K1-1,2026-05-18,Pardosa amentata,1,,,,,,,,,\n'),
  'taxa.csv': `${openStudy['taxa.csv']}Carabus intricatus,species,Insecta,Coleoptera,Carabidae,Carabus,"Linnaeus, 1761",2,\n`
}
