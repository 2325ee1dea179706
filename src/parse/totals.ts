const certain =
  /^(?:grand |sub[- ]?)?totals?\s*:?$|^(?:summe|gesamt(?:summe)?|zwischensumme|insgesamt|total g[ée]n[ée]ral|totaux|sous-total|totaal|\u03a3)\s*:?$/i
const elsewhereANameToo = /^(?:sums?|somme|suma|totale)\s*:?$/i
const totalOfSomething = /\S\s+totals?$/i

/** Whether a cell that should name a site, trap, day or taxon heads a row of sums: `Total`, `Oak wood Total`. */
export function isTotal(text: string): boolean {
  return certain.test(text) || totalOfSomething.test(text)
}

/** The same where nothing else is likely: above a column, or before a row that lacks what every record has. */
export function mayBeTotal(text: string): boolean {
  return isTotal(text) || elsewhereANameToo.test(text)
}
