import { describe, expect, it } from 'vitest'
import { cutHeld } from '../../../src/checks/list/cutHeld.ts'
import { free, item } from '../../helpers/documents.ts'
import { ftM, levelsOf, siteOf } from '../yardCase.ts'

describe('a cut', () => {
  it('is held on both sides, or said to be', () => {
    const cut = (bothSidesHeld: boolean | null) => levelsOf(cutHeld, siteOf({}, item('cuttingPlace', 'cuttingPlace:1', free(0, 20 * ftM), { bothSidesHeld })))
    expect([cut(true), cut(false), cut(null)]).toEqual([[], ['FIX'], ['CHECK?']])
  })
})
