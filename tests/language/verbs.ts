/**
 * Verb forms that the templates and the computed sentences use. A sentence that holds none of them is most often a
 * sentence that lost its middle, because a part that should have been there was left out.
 */
const forms = `
is are was were be been being has have had do does did can cannot could may might must shall should will would
add adds allow allows answers asks ask be became become bear bears belong belongs belonged came can't catch catches
caught change changes come comes compare compared count counts counted describe describes described differ differs
draw drew end ends fall fell fit fits follow follows followed follows gave get gets give gives given go goes held hold
holds keep keeps kept lay lie lies like list lists lived lives lost make makes made mean means meant meet meets move
moves need needs needed passed point points print prints put puts ran rank ranks reach reaches read reads rest rests
rise rises rose run runs saw say says said see sees set sets show shows shown sat sit sits stand stands stood start
starts supports stay stays stayed take takes taken tell tells told thank thanks think took tried turn turns use uses used wait
waits waited walk walks want wants went work works worked write wrote written wash mark accounts achieved belong
carry carries climb climbs finds find found gives grow grows leave leaves left live put recomputes names weigh weighs
recorded lasted extended extends begin begins describes estimate tested divides chose
`

const known = new Set(forms.trim().split(/\s+/))

export function hasVerb(sentence: string): boolean {
  return sentence
    .toLowerCase()
    .split(/[^\p{L}’']+/u)
    .some((word) => known.has(word))
}
