import { describe, expect, it } from 'vitest'
import { noseHold } from '../../src/checks/list/noseHold.ts'
import { item, onRun } from '../helpers/documents.ts'
import { findingsOf, ftM, machineAt0, rollersAt, siteOf } from './yardCase.ts'

describe('how the nose is held', () => {
  const row = rollersAt(45 * ftM, 60 * ftM, 11 * ftM)

  it('has to be said where it arrives on something', () => {
    const [unknown] = findingsOf(noseHold, siteOf({}, machineAt0(), item('rack', 'rack:1', onRun(-6)), ...row))
    expect([unknown!.isUnknown, unknown!.missing[0]!.path]).toEqual([true, 'noseHold'])
    expect(findingsOf(noseHold, siteOf({ job: { noseHold: 'sled' } }, machineAt0(), item('rack', 'rack:1', onRun(-6)), ...row))).toEqual([])
  })
})
