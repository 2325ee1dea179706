import {expect, test} from 'vitest'
import {taxonName} from '../../src/report/taxon-name.ts'

/** Italics as Markdown, so that a name can be read in one line. */
function set(name: string, rank?: string): string {
  return taxonName(name, rank)
    .map((node) =>
      node.type === 'emphasis'
        ? `*${'value' in node.children[0]! ? node.children[0].value : ''}*`
        : 'value' in node
          ? node.value
          : ''
    )
    .join('')
}

test.each([
  ['Carabus nemoralis', 'species', '*Carabus nemoralis*'],
  ['Carabus', 'genus', '*Carabus*'],
  ['Carabidae', 'family', 'Carabidae'],
  ['Araneae', 'order', 'Araneae'],
  ['Carabus sp.', 'morphospecies', '*Carabus* sp.'],
  ['Carabus sp. 1', 'morphospecies', '*Carabus* sp. 1'],
  ['Linyphiidae sp. A', 'morphospecies', 'Linyphiidae sp. A'],
  ['Amara cf. communis', 'species', '*Amara* cf. *communis*'],
  ['Bembidion lampros agg.', 'species', '*Bembidion lampros* agg.'],
  ['Pterostichus (Poecilus) cupreus', 'species', '*Pterostichus (Poecilus) cupreus*'],
  ['Carabus violaceus Linnaeus, 1758', 'species', '*Carabus violaceus* Linnaeus, 1758'],
  ['Carabus violaceus purpurascens', 'subspecies', '*Carabus violaceus purpurascens*'],
  ['Carabus nemoralis', undefined, '*Carabus nemoralis*'],
  ['Carabidae', undefined, 'Carabidae'],
  ['Staphylinidae larvae', undefined, 'Staphylinidae larvae'],
  ['', 'species', '']
])('%s (%s) is set as %s', (name, rank, text) => {
  expect(set(name, rank)).toBe(text)
})
