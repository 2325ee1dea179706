import {expect, test} from 'vitest'
import {tinyResults} from './tiny-study.ts'

test('what study.yaml states stands as it is written, and every value has its place', () => {
  const settings = {
    title: 'Beetles',
    target: {groups: ['Carabidae', 'Araneae']},
    habitats: {'wet/dry': 'edge'}
  }
  const {stated, statedAt} = tinyResults({settings})
  expect(stated).toEqual(settings)
  expect(Object.keys(statedAt)).toEqual([
    '/title',
    '/target/groups/0',
    '/target/groups/1',
    '/habitats/wet~1dry'
  ])
  expect(statedAt['/target/groups/1']).toBe('study.yaml:3:1')
})

test('the address of a person is kept to the study unless contact names the person', () => {
  const people = [
    {name: 'A. Botha', email: 'a@example.org'},
    {name: 'C. Diaz', email: 'c@example.org'}
  ]
  const {stated, statedAt} = tinyResults({settings: {people, contact: 'ask C. Diaz'}})
  expect(stated.people).toEqual([{name: 'A. Botha'}, {name: 'C. Diaz', email: 'c@example.org'}])
  expect(Object.keys(statedAt)).not.toContain('/people/0/email')
})
