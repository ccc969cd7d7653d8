import { describe, expect, it } from 'vitest'
import { bentRadiusM, circleThroughM } from '../../../src/engine/bends/verticalBend.ts'

describe('circle through three bottoms of pipe', () => {
  it('is positive over a crest and negative in a dip', () => {
    // Chord 20 m, middle 0.5 m over it: R = (10² + 0.5²)/(2 × 0.5) = 100.25 m.
    expect(circleThroughM({ atM: 0, levelM: 1 }, { atM: 10, levelM: 1.5 }, { atM: 20, levelM: 1 })).toBeCloseTo(100.25, 9)
    expect(circleThroughM({ atM: 0, levelM: 1 }, { atM: 10, levelM: 0.5 }, { atM: 20, levelM: 1 })).toBeCloseTo(-100.25, 9)
  })
  it('finds a circle from three unequal places on it', () => {
    const on = (atM: number): { atM: number; levelM: number } => ({ atM, levelM: Math.sqrt(50 ** 2 - (atM - 7) ** 2) })
    expect(circleThroughM(on(1), on(4), on(15))).toBeCloseTo(50, 9)
  })
  it('has no end on a straight line, also a sloping one', () => {
    expect(circleThroughM({ atM: 0, levelM: 0 }, { atM: 1, levelM: 0.5 }, { atM: 2, levelM: 1 })).toBe(Infinity)
  })
  it('refuses two points at one distance', () => {
    expect(() => circleThroughM({ atM: 0, levelM: 0 }, { atM: 0, levelM: 1 }, { atM: 2, levelM: 1 })).toThrow('follow each other')
  })
})

describe('radius by the moment', () => {
  it('is EI over M, whatever its sign, and none without a moment', () => {
    expect(bentRadiusM(36_000, 1200)).toBe(30)
    expect(bentRadiusM(36_000, -1200)).toBe(30)
    expect(bentRadiusM(36_000, 0)).toBe(Infinity)
  })
})
