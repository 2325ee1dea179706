import {execFileSync} from 'node:child_process'
import fc from 'fast-check'
import {expect, test} from 'vitest'
import {element, textElement, xmlDocument} from '../../src/archive/xml.ts'
import {testWith} from '../needs.ts'

test('text and attributes are escaped, and what XML cannot hold is left out', () => {
  const written = xmlDocument(
    element('a', {b: '<"&\'>\t\n', c: undefined}, 'x < y & z > \u0000\u000b\ud800', undefined, [
      element('d', {})
    ])
  )
  expect(written).toBe(
    '<?xml version="1.0" encoding="UTF-8"?>\n<a b="&lt;&quot;&amp;\'&gt;&#9;&#10;">x &lt; y &amp; z &gt; <d/>\n</a>\n'
  )
  expect(textElement('a', undefined)).toBeUndefined()
  expect(textElement('a', ' ')).toBeUndefined()
  expect(() => element('no name', {})).toThrow(RangeError)
})

testWith('xmllint')('whatever a text holds, the document is well-formed', () => {
  const words = fc.sample(fc.string({unit: 'binary', maxLength: 40}), 300)
  const root = element(
    'root',
    {},
    words.map((word) => element('word', {written: word}, word))
  )
  execFileSync('xmllint', ['--noout', '-'], {input: xmlDocument(root)})
})
