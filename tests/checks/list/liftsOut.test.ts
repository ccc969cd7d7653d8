import { describe, expect, it } from 'vitest'
import { liftsOut } from '../../../src/checks/list/liftsOut.ts'
import { fusionYard, levelsOf, moveOf, runOne, textOf, type YardSpec } from '../../helpers/fusionYard.ts'

/** A finite-element run of our own lifted here by 0.35 to 0.49 in: one level stand at 12 ft 6 in, then the quarter points of the lay-down. */
const oneStand: YardSpec = { neededFt: 150, exits: [[12.5, 0], [23.2, 6.2], [33.9, 16.6], [44.7, 22.8]], rollers: [55.4, 67.9, 80.4, 92.9, 105.4, 117.9] }

describe('lifting out of the open jaws', () => {
  it('clear of both lower halves with C over 1 is FIX', () => {
    const one = runOne(liftsOut, fusionYard(oneStand)).find(({ key }) => key === 'lifts-out@exit')!
    expect(one.level).toBe('FIX')
    expect(one.measured!.value).toBeGreaterThan(1)
    expect(textOf(one)).toMatch(/up out of the exit side|out of the open exit jaws/)
  })
  it('clear with C up to 1 is NOTE with the force that holds it down', () => {
    const one = runOne(liftsOut, fusionYard()).find(({ key }) => key === 'lifts-out@infeed')!
    expect(one.level).toBe('NOTE')
    // The infeed inner clamp pulls 0.285 W of a 494 lb stick.
    expect(moveOf(one)).toBe('Hold it down while closing, 141 lb.')
  })
  it('a pipe that lies in one of the halves is met', () => expect(levelsOf(liftsOut, fusionYard())['exit']).toBe('met'))
})
