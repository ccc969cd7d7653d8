import { describe, expect, it } from 'vitest'
import { onDial, steppedDeg, turnAtDeg, turnOfKey, wrappedDeg } from '../../src/ui/bow/turns.ts'

describe('the dial of the bow', () => {
  it('steps to the next 15° in a direction, from between as from a step, and on past half a turn', () => {
    expect([0, 15, 22, -22, 172, 180].map((degrees) => steppedDeg(degrees, 1))).toEqual([15, 30, 30, -15, 180, -165])
    expect([0, 15, 22, -22, 180, -165].map((degrees) => steppedDeg(degrees, -1))).toEqual([-15, 0, 15, -30, 165, 180])
  })
  it('turns left with the left arrow, as the ends go, and knows no other keys', () => {
    expect(['ArrowLeft', 'ArrowRight', 'PageUp', 'Home', 'End', 'Tab'].map((key) => turnOfKey(key, 30))).toEqual([45, 15, 45, 0, 180, null])
  })
  it('takes the turn under the pointer to 5°: above is ends up, left of the middle is left', () => {
    expect([[0, -50], [-50, 0], [50, 0], [0, 50], [-10, -50]].map(([dx, dy]) => turnAtDeg(dx!, dy!))).toEqual([0, 90, -90, 180, 10])
  })
  it('draws the hand where the pointer was', () => {
    for (const degrees of [0, 45, 90, -120, 180]) {
      const { x, y } = onDial(degrees, 60)
      expect(turnAtDeg(x, y)).toBe(degrees)
    }
  })
  it('keeps turns within half a turn either way', () => expect([190, -180, 360, -190].map(wrappedDeg)).toEqual([-170, 180, 0, 170]))
})
