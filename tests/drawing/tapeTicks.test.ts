import { describe, expect, it } from 'vitest'
import { tickSteps, ticksBetween } from '../../src/drawing/tapeTicks.ts'
import { tapeBody } from '../../src/drawing/tape.ts'

/** Scale in px a foot, as docs/look.md states it. */
const perFoot = (pxPerFt: number): number => pxPerFt / 0.3048

describe('marks of the tape', () => {
  // docs/look.md, 'what hides when', row 'tape ticks'.
  it.each([[1.5, 50], [3, 10], [4.7, 1], [20, 0.25]])('at %d px a foot the finest mark is every %d ft', (pxPerFt, finest) => {
    const { minor, mid, major } = tickSteps('feetInches', perFoot(pxPerFt))
    expect(minor ?? mid ?? major).toBe(finest)
  })

  it('gives figures room: never nearer than 38 px, in feet and in metres', () => {
    for (let pxPerM = 0.5; pxPerM < 400; pxPerM *= 1.13) {
      for (const system of ['feetInches', 'metric'] as const) {
        const { major, unitM, mid, minor } = tickSteps(system, pxPerM)
        expect(major * unitM * pxPerM).toBeGreaterThanOrEqual(38)
        for (const step of [mid, minor]) if (step !== null) expect(step * unitM * pxPerM).toBeGreaterThanOrEqual(3.9)
      }
    }
  })

  it('divides each step by the next finer one', () => {
    for (const pxPerM of [3, 8, 15.4, 30, 60, 200]) {
      for (const system of ['feetInches', 'metric'] as const) {
        const { major, mid, minor } = tickSteps(system, pxPerM)
        if (mid !== null) expect(major / mid).toBeCloseTo(Math.round(major / mid))
        if (mid !== null && minor !== null) expect(mid / minor).toBeCloseTo(Math.round(mid / minor))
      }
    }
  })

  it('counts from the datum both ways without a sign, and writes no figure at the nail', () => {
    const ticks = ticksBetween(-6.2, 6.2, tickSteps('feetInches', perFoot(4.7)))
    const figures = ticks.filter(({ rank }) => rank === 'major').map(({ atM, figure }) => [Math.round(atM / 0.3048), figure])
    expect(figures).toEqual([[-20, '20'], [-10, '10'], [0, ''], [10, '10'], [20, '20']])
    // 6.2 m are 20.3 ft: 41 whole feet with the datum.
    expect(ticks).toHaveLength(41)
  })

  it('lies where it says: a metric mark every half metre at 15 px a metre', () => {
    const ticks = ticksBetween(0, 2, tickSteps('metric', 15.4))
    expect(ticks.map(({ atM }) => atM)).toEqual([0, 0.5, 1, 1.5, 2])
  })
})

describe('the tape', () => {
  const look = { fromM: -10, toM: 10, pxPerM: 15.4, system: 'feetInches', thicknessPx: 29, isUpright: false, infeed: 'infeed', exit: 'exit', figurePx: 14, isMirrored: false } as const

  it('is pale on the infeed side and yellow on the exit side, meeting at the nail', () => {
    const bands = tapeBody(look).filter((p) => p.t === 'rect')
    expect(bands.map((p) => (p.t === 'rect' ? [p.fill, p.xM, p.xM + p.widthM] : []))).toEqual([['tapePale', -10, 0], ['tape', 0, 10]])
  })

  it('says which way is which on the proper side, also when the sheet is turned round', () => {
    const side = (isMirrored: boolean, word: string) => tapeBody({ ...look, isMirrored }).find((p) => p.t === 'text' && p.text === word)
    expect(side(false, 'exit')).toMatchObject({ align: 'left' })
    expect(side(true, 'exit')).toMatchObject({ align: 'right' })
    expect(side(true, 'infeed')).toMatchObject({ align: 'left' })
  })

  it('drops figures that would stand under the words at the nail', () => {
    const figures = tapeBody({ ...look, pxPerM: 15.4 }).filter((p) => p.t === 'text' && p.text === '10').map((p) => (p.t === 'text' ? Math.sign(p.xM) : 0))
    // 'infeed' reaches over the figure of infeed 10 ft, 'exit' ends before that of exit 10 ft.
    expect(figures).toEqual([1])
  })
})
