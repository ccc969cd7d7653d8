import { describe, expect, it } from 'vitest'
import { machinePitch } from '../../../src/checks/list/machinePitch.ts'
import { fusionYard, levelsOf, runOne, textOf } from '../../helpers/fusionYard.ts'

describe('pitch of the machine', () => {
  // tan 1° = 0.01746.
  it.each([[0.01, 'met'], [0.0174, 'met'], [0.0176, 'CHECK'], [-0.03, 'CHECK']] as const)('following ground that falls %s is %s', (fallRatio, level) => expect(levelsOf(machinePitch, fusionYard({ fallRatio }))['all']).toBe(level))
  it('says that it follows the ground', () => expect(textOf(runOne(machinePitch, fusionYard({ fallRatio: 0.03 }))[0]!)).toBe('The machine follows the ground at 1.7°.'))
})
