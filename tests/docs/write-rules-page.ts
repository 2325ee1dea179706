/** Writes templates/docs/rules.md: npx tsx tests/docs/write-rules-page.ts */
import {mkdirSync, writeFileSync} from 'node:fs'
import {rulesPage} from './rules-page.ts'

const page = new URL('../../templates/docs/rules.md', import.meta.url)
mkdirSync(new URL('.', page), {recursive: true})
writeFileSync(page, rulesPage())
