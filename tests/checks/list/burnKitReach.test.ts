import { describe, expect, it } from 'vitest'
import { burnKitReach } from '../../../src/checks/list/burnKitReach.ts'
import { item, free } from '../../helpers/documents.ts'
import { ftM, levelsOf, machineAt0, siteOf } from '../yardCase.ts'

// The machine is 3.35 m long: its end lies at x = 1.675 m.
const kit = (feet: number) => item('burnKit', 'burnKit:1', free(1.675 + feet * ftM, 0))

describe('the burn kit', () => {
  it('stands within 50 ft of the machine; common practice, no source', () => {
    expect(levelsOf(burnKitReach, siteOf({}, machineAt0(), kit(50)))).toEqual(['met'])
    expect(levelsOf(burnKitReach, siteOf({}, machineAt0(), kit(50.1)))).toEqual(['CHECK'])
  })
  it('of the hot plate as well', () => expect(levelsOf(burnKitReach, siteOf({}, machineAt0(), kit(10), item('plateHolder', 'plateHolder:1', free(-40, 0))))).toEqual(['CHECK']))
  it('is asked for where there is none, and not without a machine', () => {
    expect(levelsOf(burnKitReach, siteOf({}, machineAt0()))).toEqual(['CHECK'])
    expect(levelsOf(burnKitReach, siteOf({}))).toEqual([])
  })
})
