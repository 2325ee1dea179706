import {expect, test} from 'vitest'
import {readAssets} from '../../src/files/read-assets.ts'
import {sectionsOfChecklist} from '../../src/report/tables/checklist.ts'
import {checklistItems} from '../../src/results/checklist-items.ts'

test('the checklist names a section of the chapter for every item, and no section that is not there', async () => {
  expect(Object.keys(sectionsOfChecklist).sort()).toEqual(checklistItems.map(({id}) => id).sort())
  const chapter = (await readAssets()).templates.get('chapter.md') ?? ''
  const headings = [...chapter.matchAll(/^#+ (.+)$/gm)].map(([, heading]) => heading)
  expect(
    Object.values(sectionsOfChecklist)
      .flat()
      .filter((section) => !headings.includes(section))
  ).toEqual([])
})
