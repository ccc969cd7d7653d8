import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { madeLengthM } from '../../../src/engine/pipe/stickPlan.ts'
import { bestSplit, evenShares, mostSticksIn } from '../../../src/engine/pipe/stringSplit.ts'

const ftM = 0.3048

describe('a job in several strings', () => {
  it('takes as many sticks as the room allows, to the millimetre', () => {
    // Five 50 ft sticks less four joints of 1.5 in: 249.5 ft.
    const of = (roomM: number) => mostSticksIn({ stickLengthM: 50 * ftM, jointLossM: 0.125 * ftM, roomM })
    expect(of(249.5 * ftM)).toBe(5)
    expect(of(249.5 * ftM - 0.001)).toBe(4)
    expect(of(49 * ftM)).toBe(0)
    expect(of(-3)).toBe(0)
  })

  it('makes nineteen sticks in a room of 259 ft four strings, 5, 5, 5 and 4', () => {
    // Six would take 300 − 5 × 0.125 = 299.4 ft; 19 ÷ 5 rounded up is 4.
    expect(bestSplit({ sticks: 19, stickLengthM: 50 * ftM, jointLossM: 0.125 * ftM, roomM: 259 * ftM })).toEqual({ counts: [5, 5, 5, 4], mostSticks: 5, midJoints: 3 })
  })

  it('has no answer where not one stick fits, and one string where all of it does', () => {
    const job = { sticks: 7, stickLengthM: 12, jointLossM: 0.02 }
    expect(bestSplit({ ...job, roomM: 11.9 })).toBeNull()
    expect(bestSplit({ ...job, roomM: 500 })).toEqual({ counts: [7], mostSticks: 41, midJoints: 0 })
  })

  it('names a loss that takes a whole stick', () => {
    expect(() => mostSticksIn({ stickLengthM: 12, jointLossM: 12, roomM: 100 })).toThrow(/jointLossM/)
  })

  it('never needs a string more than it must, fits each, and shares within one stick', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 400 }), fc.double({ min: 6, max: 20, noNaN: true }), fc.double({ min: 0, max: 0.1, noNaN: true }), fc.double({ min: 6, max: 900, noNaN: true }), (sticks, stickLengthM, jointLossM, roomM) => {
      const split = bestSplit({ sticks, stickLengthM, jointLossM, roomM })
      if (split === null) return stickLengthM > roomM
      const most = Math.max(...split.counts)
      const isWhole = split.counts.reduce((sum, one) => sum + one, 0) === sticks
      const fits = madeLengthM(most, stickLengthM, jointLossM) <= roomM + 1e-6
      const isEven = most - Math.min(...split.counts) <= 1
      // With one string fewer at least one of them would have more sticks than fit.
      const isFewest = split.counts.length === 1 || Math.ceil(sticks / (split.counts.length - 1)) > split.mostSticks
      return isWhole && fits && isEven && isFewest
    }))
  })

  it('shares a count out larger first', () => {
    expect(evenShares(50, 3)).toEqual([17, 17, 16])
    expect(evenShares(3, 3)).toEqual([1, 1, 1])
  })
})
