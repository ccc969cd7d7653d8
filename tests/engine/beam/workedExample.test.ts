/**
 * A worked layout of a 12 in IPS DR 17 string (tests/helpers/workedLayout.ts). Expected values: a finite-element run of our own on a 0.1 ft
 * mesh, made apart from this code and repeated independently; printed to 1 lb, 0.1 in. The same figures: shared/cases/worked-layout.json.
 */
import { describe, expect, it } from 'vitest'
import { quarterPoints, softStart as good, statedNoseIn, statedSection as section, statedString as string, sunk, twoBehind, without, type StatedLayout as Layout } from '../../helpers/workedLayout.ts'

const IN = 0.0254
const FT = 0.3048
const LB = 4.4482216152605

function expectJaws(layout: Layout, innerLb: number, outerLb: number): void {
  const { jawsLb } = string(layout)
  expect(Math.abs(jawsLb[0] - innerLb)).toBeLessThan(1)
  expect(Math.abs(jawsLb[1] - outerLb)).toBeLessThan(1)
}

describe('a worked 12 in layout', () => {
  it('weighs 12.36 lb/ft', () => {
    expect((section.lineLoadNPerM / LB) * FT).toBeCloseTo(12.362, 3)
  })

  it('with one level stand and open jaws the string lifts 0.35 to 0.49 in out of them', () => {
    const { result, jaw } = string({ stands: [[12.5, 30], ...quarterPoints(12.5)], areJawsOpen: true })
    expect(result.supports[jaw]!.gapM / IN).toBeCloseTo(0.35, 2)
    expect(result.supports[jaw + 1]!.gapM / IN).toBeCloseTo(0.49, 2)
  })

  it('with one level stand and closed jaws they fight +597 and −697 lb', () => {
    expectJaws({ stands: [[12.5, 30], ...quarterPoints(12.5)] }, 597, -697)
  })

  it('with two level stands the first floats 0.4 in and the open jaws carry 166 and 0 lb', () => {
    const { result, jaw, jawsLb } = string({ stands: [[12.5, 30], [25, 30], ...quarterPoints(25)], areJawsOpen: true })
    expect(Math.abs(jawsLb[0] - 166)).toBeLessThan(1)
    expect(jawsLb[1]).toBe(0)
    expect(Math.abs(result.supports[jaw + 2]!.gapM / IN - 0.4)).toBeLessThan(0.03)
    // 'about half an inch' at ½ and ¼ of the lay-down
    for (const k of [5, 6]) expect(Math.abs(result.supports[jaw + k]!.gapM / IN - 0.5)).toBeLessThan(0.15)
  })

  it('with a soft start the jaws carry 113 and 55 lb, every stand is within 0.1 in, the largest load is 381 lb', () => {
    const { result, jaw, jawsLb } = string({ stands: good })
    expect(Math.abs(jawsLb[0] - 113)).toBeLessThan(1)
    expect(Math.abs(jawsLb[1] - 55)).toBeLessThan(1)
    const stands = result.supports.slice(jaw + 2, jaw + 8)
    expect(Math.max(...stands.map((s) => s.gapM)) / IN).toBeLessThan(0.1)
    expect(Math.abs(Math.max(...stands.map((s) => s.reactionN)) / LB - 381)).toBeLessThan(1)
    // rollers 146–211 lb, the first seven; the free end of the string is not part of the statement
    const rollersLb = result.supports.slice(jaw + 7, jaw + 14).map((s) => s.reactionN / LB)
    expect(Math.min(...rollersLb)).toBeGreaterThan(145)
    expect(Math.max(...rollersLb)).toBeLessThan(212)
  })

  it.each([
    ['the stand at 25 ft removed', { stands: without(25) }, 336, -292],
    ['the stand at 25 ft sunk ½ in', { stands: sunk(good, 25) }, 174, -39],
    ['the stand at 12.5 ft removed', { stands: without(12.5) }, 91, 85],
    ['the rear infeed stand removed', { stands: good, behind: [[-10, 30]] }, -814, 636],
    ['the stand at −10 ft sunk ½ in', { stands: good, behind: sunk(twoBehind, -10) }, 218, -24],
    ['a tail of 40 ft behind the jaws', { stands: good, tailFt: 40 }, -378, 446],
  ] as const)('critical stands: %s', (_name, layout, innerLb, outerLb) => expectJaws(layout, innerLb, outerLb))

  it('critical stands: from 46 ft outward no stand changes the jaws by 5 lb', () => {
    const base = string({ stands: good }).jawsLb
    for (const xFt of [46.4, 57.1, 67.8]) {
      const { jawsLb } = string({ stands: without(xFt) })
      expect(Math.abs(jawsLb[0] - base[0])).toBeLessThan(5)
      expect(Math.abs(jawsLb[1] - base[1])).toBeLessThan(5)
    }
  })

  // Bottom of pipe less roller top with the tip just short of the support, ±0.3 in as stated; 105 ft and on 'steady −3.0'.
  it.each([
    [12.5, -0.9], [25, -1.2], [35.7, 3.7], [46.4, -0.9], [57.1, -6.0], [67.8, -6.0], [80.3, -5.0], [92.8, -2.8], [105.3, -3.0], [117.8, -3.0], [142.8, -3.0],
  ])('nose arriving at %s ft stands %s in over the roller', (xFt, expectedIn) => {
    expect(Math.abs(statedNoseIn(xFt) - expectedIn)).toBeLessThan(0.3)
  })
})
