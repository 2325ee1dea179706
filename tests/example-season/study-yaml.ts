/** study.yaml of the season, laid out by hand: every setting is shown, the seldom needed ones as comments. */
export const studyYaml = `# yaml-language-server: $schema=../src/model/study.schema.json
#
# The study in words: who, where, why and how. The records are in the CSV files beside it.
# Almost everything here may be left out. What is left out is listed as "not recorded" in the
# reporting checklist; nothing is ever made up for it. A line that starts with # is a comment.
#
# This study is an example. The valley, the people and all the data are invented.

title: Ground beetles and spiders of the Quill valley, an invented season
study_id: quill-valley-2025          # short; used for file names and identifiers
licence: CC0-1.0                     # licence of the data, an SPDX identifier
issued: 2025-11-14                   # the day that the documents carry

people:                              # the first one is the author
  - name: Hazel Underhedge
    role: design, fieldwork, sorting, beetles, writing
    email: hazel.underhedge@example.org
    # orcid: 0000-0002-1825-0097     # looks like this; invented people have none
  - name: Rowan Overbrook
    role: fieldwork, sorting
  - name: Fern Loomweaver
    role: spiders
  - name: Sedge Lantern
    role: checked the voucher specimens

funding: None; the season is invented.
thanks: The four farms of the invented valley, for the loan of their ground and for not driving over the canes.


# ---------------------------------------------------------------------------------------- the place

place:
  country: Tarnmark                  # an invented country
  region: Quill valley
  description: >-
    An invented valley four kilometres long, with oak woods on its slopes, hay meadows along the
    beck and barley on the terraces between. The coordinates lie in the open sea, so that no real
    land is meant.
  datum: WGS84

season:
  start: 2025-04-14
  end: 2025-08-04

site_selection: >-
    Each of the four farms gave one old oak wood, one hay meadow and one barley field, taken at
    random from those of at least two hectares; the farms are the blocks of the design.

habitats:                            # the word used in sites.csv: what it stands for
  oak:
    label: old oak wood
    assigned_by: wood on the oldest map of the valley, canopy of oak above half
    vegetation: oak over bramble, bilberry and wood-rush
    litter: oak leaves, 20 to 50 mm deep
    soil: stony brown earth
  hay:
    label: hay meadow
    assigned_by: permanent grass, cut for hay every year since 2005 at least
    vegetation: red fescue, crested dog's-tail, knapweed, yellow rattle
    litter: thin thatch of last year's grass
    soil: clay loam to gravelly loam
  barley:
    label: barley field
    assigned_by: spring barley in 2025, arable for ten years at least
    vegetation: spring barley with some fat hen and speedwell
    litter: hardly any
    soil: sandy to silty loam


# ---------------------------------------------------------------------------------- traps and visits

trap_types:                          # the word used in traps.csv; one type for the whole study here
  cup:
    container: two nested beer cups
    shape: round
    rim_diameter_mm: 80              # inner width of the mouth
    depth_mm: 120
    material: polypropylene
    colour: white
    nested: true                     # the inner cup lifts out, the hole stays as it is
    funnel: false                    # or what it is, in words
    drainage: four holes of 2 mm, 25 mm below the rim
    cover: square of brown plywood, 150 mm wide, 30 mm above the rim
    guard: false                     # mesh or cage against vertebrates
    barrier: false                   # guidance barrier or drift fence
    rim_plate: false

fluids:                              # the word used in traps.csv
  pg:
    substance: propylene glycol
    dilution: "1:2"                  # parts of fluid to parts of water; keep the quotes
    volume_ml: 140
    depth_mm: 30                     # how deep it stands in the cup
    detergent: three drops of unscented washing-up liquid a litre
    bittering_agent: denatonium benzoate
    bait: false

layout:
  geometry: one line of six traps a site
  traps_per_site: 6
  spacing_m: 30                      # from trap to trap
  edge_m: 25                         # nearest edge of the habitat, at the least

protocol:
  rounds: 8                          # as planned; what was achieved comes from visits.csv
  interval_nights: 14
  settling_nights: 7                 # dug in and capped a week before opening
  pooling: Nothing was pooled; every trap has its own vial for every round.

# States of a trap and the effort each one earns. The usual words (intact, diluted, overflowed, dry,
# raised, disturbed, blocked, spilled, missing, closed) need no line here. Words of your own do.
conditions:
  trampled:
    credit: half                     # full, half, none, or a number from 0 to 1
    meaning: cup dented by deer or cattle, the animals still in the fluid

target:                              # what was looked for: a zero means something only for this
  groups: [Carabidae, Araneae]
  life_stages: [adult]
  all_recorded: true                 # every adult of these groups was written down

sorting:
  groups_done: [Carabidae, Araneae]

bycatch_fate: >-
    Other invertebrates are kept in ethanol by the author for ten years and lent to anyone who asks.

# What a visit without catch rows and without a word in the column "sample" means. Without this line
# such a visit is a finding and is set aside, because nothing found and never looked are different.
# no_catch_rows: empty


# ------------------------------------------------------------------------------- names and specimens

identification:
  level: adults to species, young animals to family
  keys:
    - Luff ML (2007) The Carabidae (ground beetles) of Britain and Ireland. Handbooks for the Identification of British Insects 4(2), 2nd edition
    - Roberts MJ (1985, 1987) The Spiders of Great Britain and Ireland. Harley Books
  nomenclature: as in the keys, with newer genera where they are in general use
  checklist: taxa.csv of this study
  morphospecies: none were used
  verifier: Sedge Lantern

vouchers: >-
    One specimen of every kind, in the made-up collection of the Quill valley (QVC).

permits: >-
    Written leave of the four farms. No other permit is needed in this invented country.


# ------------------------------------------------------------------------------------ for the readers

management: >-
    Ordinary upland farming: woods left alone, meadows cut once a year, barley sown in spring.

limitations: >-
    All of it is invented, so it says nothing about any real valley. Were it real, one season of
    pitfall traps would still tell of animals that walk about in summer, and not of those that sit
    still, climb or wait for autumn.

contact: Hazel Underhedge, hazel.underhedge@example.org

privacy:
  coordinates: 0.01                  # exact, 0.001, 0.01, 0.1 (degrees) or none; sites.csv can say otherwise


# --------------------------------------------------------------------------------- analysis and report

analysis:
  unit: site                         # traps are subsamples of their site
  # unit: trap                       # only with a reason that an examiner would accept:
  # unit_reason: traps stand 100 m apart and in different fields
  scopes:                            # groups whose diversity is worked out, each on its own
    ground_beetles:
      label: ground beetles, adults
      family: Carabidae
      life_stages: [adult]
    spiders:
      label: spiders, adults
      order: Araneae
      life_stages: [adult]
    # class: Insecta                 # a scope can name a class, orders, families or single names:
    # taxa: [Carabus violaceus, Carabus problematicus]
  seed: 1                            # any whole number; the same seed gives the same intervals
  confidence: 0.95
  replicates: 1000                   # of the bootstrap
  permutations: 9999
  # planning:                         # what another season is to reach
  #   coverage: 0.99                  # sample coverage
  #   half_width: 0.25                # half the interval of a rate, as a share of the rate

report:
  language: en-GB                    # or en-US
  text:                              # your own Markdown, and where it belongs
    introduction: text/introduction.md
    discussion: text/discussion.md
    site-OAK2: text/site-OAK2.md

# Rules of the check that you judge otherwise, with the reason; the report prints it.
# "pitfolio check" shows the name of the rule beside each finding.
# rules:
#   name-of-the-rule:
#     severity: note                 # error, caution, note or silent
#     reason: why that is no mistake in this study

planning:
  costs:                             # for "pitfolio plan": what the next season would cost
    per_visit: 9                     # one trap, emptied once
    per_trap_night: 0.05
    per_sample: 16                   # sorting and naming
    currency: EUR


# ----------------------------------------------------------------- how the tables are to be read
#
# The tables of this study have the usual names and headers, so little is needed. Most spreadsheets
# can be read as they are with a few lines like those that are commented out.

# dates: dmy                         # for 31/5/2025; mdy for 5/31/2025; 2025-05-31 needs no line
decimal: point                       # or comma
encoding: utf-8                      # utf-16le, utf-16be, windows-1252
catch:
  shape: long                        # one row per kind; wide: one column per kind
  # blanks: zero                     # what an empty cell of a wide table means: zero or unknown

# files:                             # file names of your own; one file may serve several tables
#   sites: plots.csv
#   traps: plots.csv
#   visits: collections.csv
#   catch: beetles-2025.csv
#   taxa: names.csv
#   weather: station.csv

# columns:                           # the usual name, then your header
#   visits:
#     collected: date emptied
#     trap_id: {join: [plot, letter], with: "-"}           # several columns joined to one
#     remarks: {first_of: [note, weather note]}            # the first one that is filled
#     opened: {value: 2025-04-14}                          # the same for every row

# words:                             # codes of your own, by column
#   condition: {ok: intact, F: overflowed, B: disturbed}
#   sex: {f: female, m: male}
`
