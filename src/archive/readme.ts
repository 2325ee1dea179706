import type {ArchiveFile} from '../model/archive-file.ts'
import type {Dataset} from './dataset.ts'

/** data/README.md: for whoever finds the archive, with or without the tool that made it. */
export function readme(dataset: Dataset, archive: ArchiveFile, hasTarget: boolean): string {
  const {title, description, authors, licence, licenceWords, contact, id, toolVersion} = dataset
  const names = authors.map(({name}) => name).join(', ')
  const terms =
    licence === undefined ? (licenceWords ?? 'not stated') : `${licence.name} (${licence.id}), ${licence.url}`
  const blocks = [
    `# ${line(title)}`,
    [
      names === '' ? undefined : `By ${line(names)}.`,
      description,
      contact === undefined ? undefined : `Questions: ${line(contact)}.`
    ]
      .filter((part) => part !== undefined)
      .join(' '),
    `Licence: ${line(terms)}. How to cite: see \`CITATION.cff\`.`,
    '## What is here',
    'Cups were sunk into the ground at these sites, and what fell in was counted. To read about it, open `report/index.html` in a browser. To work with the records, begin with the tables in `raw/`: `datapackage.json` says what each column means.',
    [
      '| folder or file | holds |',
      '|---|---|',
      `| \`raw/\` | ${archive.raw === 'exact' ? 'the files of the study, byte for byte' : 'a copy of the files of the study that holds some things back, see below'} |`,
      '| `report/` | the report: documents, tables, figures; `results.json` (every number), `findings.json` (every finding and what became of every row), `provenance.json` (what it was made from) |',
      `| \`dwca/\` | the same records as a Darwin Core archive: events, occurrences, measurements${hasTarget ? ', scope and effort (Humboldt Extension)' : ''}, with \`eml.xml\` |`,
      '| `datapackage.json` | every CSV file described: columns, types, keys (Data Package 2.0) |',
      '| `ro-crate-metadata.json` | every file described, with people, licence, place, time and the run that made the report (RO-Crate 1.2) |',
      '| `archive.json` | what made this archive, the checksums of the original files, what is held back and which values that keeps from being computed again |'
    ].join('\n'),
    ...heldBackBlocks(archive),
    ...(hasTarget
      ? []
      : [
          'study.yaml names no target groups, so nothing is said here about what was looked for and not found: an animal that is not in `dwca/occurrence.csv` may have been there and not recorded.'
        ]),
    '## Is it whole?',
    'The folder above this one is a bag (BagIt 1.0, RFC 8493). Where it is unpacked, any of these checks every file:',
    '```\nsha512sum --check manifest-sha512.txt\nsha256sum --check manifest-sha256.txt\n```',
    ...(archive.originals.some(({path}) => path.includes('%'))
      ? [
          'RFC 8493 writes `%` in a file name as `%25`; these two programs do not know that, and miss such files.'
        ]
      : []),
    '## Are the numbers right?',
    `Made with pitfolio ${toolVersion}. With Node.js 20 or later (https://nodejs.org):`,
    [
      '```',
      `npm install --global pitfolio@${toolVersion}`,
      `pitfolio verify ${id}.zip`,
      `pitfolio build ${id}/data/raw --out my-own-report`,
      '```'
    ].join('\n'),
    'The first command gets the tool, the second checks every file and computes every number again from the raw records, the third makes the report anew. The records are plain CSV and need none of this to be read.',
    '## Handing the records to a network',
    'Zip the files of `dwca/`, without the folder itself, and upload that zip.'
  ]
  return `${blocks.join('\n\n')}\n`
}

function heldBackBlocks({
  raw,
  heldBack,
  leftOut,
  notRecomputable,
  originals
}: ArchiveFile): readonly string[] {
  const list = (items: readonly string[]): string => items.map((item) => `- ${line(item)}`).join('\n')
  if (heldBack.length === 0) return []
  if (raw === 'exact') {
    return [
      '## Not for publication',
      'This archive holds the original files, and with them what is not for others. Everything outside `raw/` is generalised:',
      list(heldBack)
    ]
  }
  return [
    '## What is held back',
    list(heldBack),
    'Pictures are without what a camera writes beside them. Texts of the authors, comments in study.yaml and names of sites and of people are as they were written.',
    `\`archive.json\` lists the checksums of the ${originals.length} original files, so that whoever holds them can show that they are the ones. A checksum tells nothing by itself, but it confirms a guess: of a file in which a single position is held back, all possible ones could be tried out.`,
    ...(notRecomputable.length === 0
      ? []
      : [
          `The report was made from the originals. ${notRecomputable.length} of its values hang on what is held back and cannot be computed again from the copy; \`archive.json\` lists them, and \`pitfolio verify\` names them.`
        ]),
    ...(leftOut.length === 0
      ? []
      : [
          'Files of the study that are not here:',
          list(leftOut.map(({path, reason}) => `${path}: ${reason}`))
        ])
  ]
}

/** Text of the study in one line of Markdown, as text. */
function line(text: string): string {
  return text
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/[\\`*_<>[\]|#]/g, '\\$&')
}
