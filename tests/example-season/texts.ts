/** The author's own pages, and the page that tells a visitor what the folder is. No number of the season in them. */
export const texts: ReadonlyMap<string, string> = new Map([
  [
    'text/introduction.md',
    `Ground beetles and spiders hunt on the floor of every field and wood, and both groups answer quickly to
how land is used. A pitfall trap is a cheap way to meet them, but it meets only those that walk: what it
counts is activity-density, which rises with warmth, appetite and open ground as much as with numbers.

The Quill valley is invented. It was given three kinds of ground that lie side by side on many upland
farms, old oak wood, hay meadow and spring barley, and one question: do the three hold different beetles
and spiders, or the same ones in different numbers? Four farms were to answer it, each with one site of
every kind, so that the ground and the part of the valley cannot be mistaken for each other.
`
  ],
  [
    'text/discussion.md',
    `The barley fields caught the most beetles, and most of those were of a few kinds that live on ploughed land
all over the region. A large catch is not a rich one: the figures for equal coverage, not the counts, say
how varied the three habitats are.

The woods have beetles that cannot fly and that were met nowhere else. Such kinds come back slowly, if at
all, once a wood is gone, and a single season is enough to show that they are there. It is not enough to
show that something is absent.

The storm at the end of May filled the low traps by the beck, and the hot fortnight in July dried out some in
the sun. Loss of that kind is not spread evenly over the habitats, which is why effort is counted trap by
trap, and why the rates are also given under other rules of credit.

All of this is an exercise on invented records. The species are real and their habits are roughly right;
the catches are not observations, and nobody should cite them as such.
`
  ],
  [
    'text/site-OAK2.md',
    `Badger Holt has well-used badger paths, and the line of traps crosses one of them. Badgers know within
a night that a cup holds beetles. In another season the line should stand twenty metres further up the
slope; the animals were here first.
`
  ],
  [
    'README.md',
    `# An invented season in an invented place

This folder is a study as pitfolio reads it. The Quill valley does not exist, the people are made up, and
**all data are invented**: a script of the project drew them from a seeded random stream. The
coordinates lie in the open North Sea, so that no real land is meant. Do not use the records as
observations of anything.

What is real: the names of the beetles and spiders. Authorities, English names and typical lengths are from
memory; habits are roughly right. The red-list and the protection entry are the study's own examples.

What it holds: three habitats, four sites in each, one on each of four farms, six traps a site, eight rounds of fourteen nights.
Things went wrong as they do: a storm, a drought, badgers, a mower, a broken vial, a few slips of the
keyboard. They are left in on purpose; \`pitfolio check\` finds what is wrong.

| file | is |
|---|---|
| \`study.yaml\` | who, where, why and how, with every setting explained |
| \`sites.csv\` | one row per site |
| \`traps.csv\` | one row per trap |
| \`visits.csv\` | one row per trap and round, with the state of the trap |
| \`catch.csv\` | one row per kind, sex and life stage of a collection |
| \`taxa.csv\` | one row per name used in the catch |
| \`weather.csv\` | rain and temperature, day by day |
| \`text/\` | what the author wrote |
`
  ]
])
