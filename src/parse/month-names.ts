/** Names of the months in the languages in which most spreadsheets name them, without accents. */
const names: readonly string[] = [
  'january januar janvier enero gennaio janeiro januari',
  'february februar fevrier febrero febbraio fevereiro februari',
  'march marz maerz mars marzo marco maart mrt marts',
  'april avril abril aprile',
  'may mai mayo maggio maio mei maj',
  'june juni juin junio giugno junho',
  'july juli juillet julio luglio julho',
  'august aout agosto augustus augusti',
  'september septembre septiembre settembre setembro sept',
  'october oktober octobre octubre ottobre outubro',
  'november novembre noviembre novembro',
  'december dezember decembre diciembre dicembre dezembro'
]

/** As collectors have written months on labels for two hundred years. */
const roman = ['i', 'ii', 'iii', 'iv', 'v', 'vi', 'vii', 'viii', 'ix', 'x', 'xi', 'xii']

const weekdays =
  /^(mon|tue|wed|thu|fri|sat|sun|montag|dienstag|mittwoch|donnerstag|freitag|samstag|sonnabend|sonntag|mo|di|mi|do|fr|sa|so|lundi|mardi|mercredi|jeudi|vendredi|samedi|dimanche|lun|mar|mer|jeu|ven|sam|dim|lunes|martes|miercoles|jueves|viernes|sabado|domingo)[a-z]*$/i

/**
 * Number of the month that a word names: whole or shortened to three letters or more, or a Roman numeral. 0 where no
 * month, or more than one, is called so.
 */
export function monthNumber(word: string): number {
  const plain = withoutAccents(word).toLowerCase()
  const numeral = roman.indexOf(plain)
  if (numeral >= 0) return numeral + 1
  if (plain.length < 3) return 0
  const meant = [...names.keys()].filter((month) =>
    names[month]?.split(' ').some((name) => name.startsWith(plain))
  )
  return meant.length === 1 ? (meant[0] ?? -1) + 1 : 0
}

/** A day without the name of the weekday that spreadsheets write before it. */
export function withoutWeekday(text: string): string | undefined {
  const [, word = '', rest] = /^(\p{L}{2,10})\.?,?\s+(\S.*)$/u.exec(text) ?? []
  return rest !== undefined && weekdays.test(withoutAccents(word)) ? rest : undefined
}

function withoutAccents(text: string): string {
  return text.normalize('NFD').replace(/\p{M}/gu, '')
}
