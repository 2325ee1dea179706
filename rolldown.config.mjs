import {createHash} from 'node:crypto'
import {chmodSync, existsSync, readdirSync, readFileSync, writeFileSync} from 'node:fs'
import {join} from 'node:path'
import {pathToFileURL} from 'node:url'
import {defineConfig} from 'rolldown'

/** The packages that are bundled ask that their licences go with every copy. */
function licences() {
  const packages = new Map()
  return {
    name: 'licences',
    generateBundle(_options, bundle) {
      const modules = Object.values(bundle).flatMap((chunk) =>
        chunk.type === 'chunk' ? Object.keys(chunk.modules) : []
      )
      for (const module of modules) {
        const folder = /^(.*\/node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(module.replaceAll('\\', '/'))?.[1]
        if (folder !== undefined && !packages.has(folder)) packages.set(folder, licenceOf(folder))
      }
      const source = [...new Set(packages.values())].sort().join(`\n${'-'.repeat(78)}\n\n`)
      this.emitFile({type: 'asset', fileName: 'third-party-licences.txt', source})
    },
    writeBundle({dir}) {
      chmodSync(join(dir, 'pitfolio.js'), 0o755)
    }
  }
}

function licenceOf(folder) {
  const {name, version, license} = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'))
  const file =
    existsSync(folder) &&
    readdirSync(folder)
      .sort()
      .find((entry) => /^(licen[cs]e|copying)/i.test(entry))
  const text = file
    ? readFileSync(join(folder, file), 'utf8').replaceAll('\r\n', '\n').trim()
    : `Licence: ${license}`
  return `${name} ${version}\n\n${text}\n`
}

/**
 * The trees of the templates, by the SHA-256 of their texts: reading them takes a third as long as drawing all the
 * pictures. A template that was changed since, or belongs to a study, is read when it is needed.
 */
function templateTrees() {
  return {
    name: 'template-trees',
    async writeBundle({dir}) {
      const {parseTemplate} = await import(pathToFileURL(join(dir, 'parse-template.js')).href)
      const trees = readdirSync('templates')
        .filter((name) => name.endsWith('.md'))
        .sort()
        .map((name) => readFileSync(join('templates', name), 'utf8'))
        .map((text) => [createHash('sha256').update(text).digest('hex'), parseTemplate('', text).tree])
      writeFileSync(join(dir, 'template-trees.json'), JSON.stringify(Object.fromEntries(trees)))
    }
  }
}

export default defineConfig({
  input: {
    pitfolio: 'src/cli/main.ts',
    'parse-template': 'src/report/parse-template.ts',
    'pictures-thread': 'src/pictures-thread.ts',
    'replicates-thread': 'src/replicates-thread.ts'
  },
  platform: 'node',
  // `canvas` is never installed by us, and vega does without it. @resvg/resvg-js is a native library: it is loaded
  // from node_modules as it is.
  external: ['canvas', /^@resvg\//],
  plugins: [licences(), templateTrees()],
  output: {
    dir: 'dist',
    cleanDir: true,
    format: 'esm',
    entryFileNames: '[name].js',
    chunkFileNames: 'parts/[name]-[hash].js',
    banner: (chunk) => (chunk.name === 'pitfolio' ? '#!/usr/bin/env node' : '')
  }
})
