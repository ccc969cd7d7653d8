import { describe, expect, it } from 'vitest'
import { stackRows } from '../../../src/engine/pipe/stackRows.ts'

// PPI Handbook of Polyethylene Pipe, 2nd edition, chapter 2, from memory, confirm.
describe('rows in a stack', () => {
  it.each([
    ['12 IPS DR 17', 12.75 * 0.0254, 17, 5],
    ['12 IPS DR 21', 12.75 * 0.0254, 21, 4],
    ['24 IPS DR 17', 24 * 0.0254, 17, 3],
    ['dn 315 takes the 12 in row', 0.315, 11, 5],
    ['dn 355 takes the 14 in row', 0.355, 17, 5],
  ])('%s', (_name, odM, dr, rows) => expect(stackRows({ odM, dr })).toEqual({ status: 'ok', value: rows }))

  it('names what is missing and ends at 63 in', () => {
    expect(stackRows({ odM: null, dr: null })).toEqual({ status: 'missing', fields: ['odM', 'dr'] })
    expect(stackRows({ odM: 1.8, dr: 26 })).toMatchObject({ status: 'uncovered', field: 'odM' })
  })
})
