import { describe, expect, it } from 'vitest'
import { inchM } from '../../src/units/factors.ts'
import { fusionYard, mechanicsOf, siteOf, ft, inch } from '../helpers/fusionYard.ts'
import { limitsOf } from '../../src/checks/limits.ts'
import { createMechanics } from '../../src/derive/mechanics.ts'

const string: Parameters<typeof fusionYard>[0] = { size: '10', neededFt: 280, exits: [[12.5, 0], [25, 1.5], [35.67, 8.5], [46.4, 17.5], [57.1, 22.75]], rollers: Array.from({ length: 23 }, (_, i) => 67.83 + 11 * i) }

describe('set-out tolerance', () => {
  it('is the error that changes C by a quarter', () => {
    const mechanics = mechanicsOf(fusionYard())
    const rack = mechanics.tolerances().find(({ view }) => view.label === 'R1')!
    expect(rack.toleranceM / inchM).toBeGreaterThan(1 / 16)
    const base = mechanics.joint(1)!.infeed.effortRatio
    const changes = [rack.toleranceM, -rack.toleranceM].map((byM) => Math.abs(mechanics.effortWithShift('rack:1#1', byM)! - mechanics.worstEffortRatio()!))
    // R1 changes the infeed side; over both sides the larger C is the exit's, so the change is read off the infeed solve.
    expect(base).toBeCloseTo(0.285, 3)
    expect(Math.max(...changes)).toBeLessThanOrEqual(0.25 + 1e-3)
  })
  it('lies between 1/16 and ½ in', () => {
    for (const size of ['4', '12', '36', '54']) {
      for (const { toleranceM } of mechanicsOf(fusionYard({ size })).tolerances()) {
        expect(toleranceM).toBeGreaterThanOrEqual(inch(1 / 16) - 1e-12)
        expect(toleranceM).toBeLessThanOrEqual(inch(1 / 2) + 1e-12)
      }
    }
  })
  it('is finer for stiffer pipe on the same stands', () => {
    const at25 = (size: string): number => mechanicsOf(fusionYard({ size })).tolerances().find(({ view }) => view.label === 'E1')!.toleranceM
    const all = ['6', '12', '24', '36', '54'].map(at25)
    expect(all).toEqual(all.toSorted((a, b) => b - a))
    expect(all[0]).toBeCloseTo(inch(1 / 2), 9)
  })
})

describe('loads', () => {
  it('a support carries most when the nose hangs out past it', () => {
    const mechanics = mechanicsOf(fusionYard(string))
    const roller = mechanics.loads().get('roller:10')!
    expect(roller.when).toBe('pull')
    // Derived: moment w S²/2 at it, w S²/12 less 0.268 · 5/12 w S² at the one before, so R = w S (1 + ½ + ½ + 0.028) = 2.03 w S.
    const spanLoadN = mechanics.site.pipe.properties!.lineLoadNPerM * ft(11)
    expect(roller.loadN / spanLoadN).toBeCloseTo(2.02, 1)
  })
  it('cover every support under the string', () => {
    const mechanics = mechanicsOf(fusionYard(string))
    expect(mechanics.loads().size).toBe(siteOf(fusionYard(string)).supports.length)
  })
})

describe('sinking a stand', () => {
  it('near the jaws moves the joint more than far from them', () => {
    const changes = mechanicsOf(fusionYard({ exits: [[10, 0], [35, 0]] })).sinkChanges().filter(({ side, joint }) => side === 'exit' && joint === 1)
    expect(changes.map(({ view }) => view.label)).toEqual(['E1', 'E2'])
    expect(changes[0]!.changeM).toBeGreaterThan(3 * changes[1]!.changeM)
  })
})

describe('lifts', () => {
  it('raise the pipe over the lower halves by about their travel', () => {
    const [clearance] = mechanicsOf(fusionYard()).liftClearances()
    expect(clearance!.clearM / inchM).toBeGreaterThan(1.5)
    expect(clearance!.clearM / inchM).toBeLessThan(2.5)
  })
})

describe('work', () => {
  it('is done once a site and asked for lazily', () => {
    const document = fusionYard(string)
    const site = siteOf(document)
    const mechanics = createMechanics(site, limitsOf(document))
    expect(mechanics.solveCount()).toBe(0)
    mechanics.solvedJoints()
    // Infeed closed and open; exit closed and open, joined open and held, for each of five joints.
    expect(mechanics.solveCount()).toBe(2 + 5 * 4)
    mechanics.solvedJoints()
    createMechanics(site, limitsOf(document)).solvedJoints()
    expect(mechanics.solveCount()).toBe(22)
  })
})
