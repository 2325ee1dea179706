import {expect, test} from 'vitest'
import {fluidKind} from '../../src/rules/fluid-kind.ts'

test.each([
  ['propylene glycol', 'propylene glycol'],
  ['Propylene glycol antifreeze', 'propylene glycol'],
  ['1,2-propanediol', 'propylene glycol'],
  ['monoethylene glycol and water', 'ethylene glycol'],
  ['Ethylene-glycol', 'ethylene glycol'],
  ['polyethylene glycol', undefined],
  ['car antifreeze', 'glycol of unknown kind'],
  ['glycol', 'glycol of unknown kind'],
  ['4 % formalin', 'formaldehyde'],
  ['70 % ethanol', 'ethanol'],
  ['isopropyl alcohol', undefined],
  ['methanol', 'methanol'],
  ['saturated salt water', 'brine'],
  ['vinegar with detergent', 'acid'],
  ['soapy water', 'water'],
  ['', undefined]
] as const)('%s is taken for %s', (substance, kind) => {
  expect(fluidKind({substance})).toBe(kind)
})
