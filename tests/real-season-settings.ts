/** What study.yaml says of the real season. */
export const about = `title: Ground beetles at one observatory site
season: {start: 2014-05-01, end: 2014-10-31}
habitats: {deciduousForest: deciduous forest, pastureHay: pasture and hay}
trap_types: {deli-cup: {container: deli cup, rim_diameter_mm: 110, cover: raised cover}}
fluids: {propylene-glycol: {substance: propylene glycol, dilution: '1:1', volume_ml: 250}}
target: {groups: [Carabidae], life_stages: [adult], all_recorded: true}
analysis: {replicates: 10, permutations: 99, scopes: {carabidae: {label: 'ground beetles, adults', family: Carabidae}}}
`

/** What its files need to be read as they came: one file serves several tables. */
export const maps = `dates: mdy
no_catch_rows: empty
files: {sites: field.csv, traps: field.csv, visits: field.csv, catch: catch.csv, taxa: catch.csv}
columns:
  sites: {site_id: plotID, habitat: nlcdClass, latitude: decimalLatitude, longitude: decimalLongitude, elevation_m: elevation}
  traps: {trap_id: {join: [plotID, trapID]}, site_id: plotID, trap_type: {value: deli-cup}, fluid: {value: propylene-glycol}}
  visits: {trap_id: {join: [plotID, trapID]}, opened: setDate, collected: collectDate, condition: cupStatus, round: boutNumber}
  catch: {trap_id: {join: [plotID, trapID]}, collected: collectDate, taxon: {first_of: [scientificName, morphospeciesID]}, count: individualCount, qualifier: identificationQualifier}
  taxa: {taxon: {first_of: [scientificName, morphospeciesID]}, rank: taxonRank, authority: scientificNameAuthorship, family: {value: Carabidae}}
words: {condition: {ok: intact}, taxon: {'': Carabidae}}
`
