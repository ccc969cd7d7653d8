import { describe, expect, it } from 'vitest'
import { limitsOf } from '../../src/checks/limits.ts'
import { bodySolverOf, type BodyCase } from '../../src/derive/bodies.ts'
import { criticalSupports, type CriticalRanking } from '../../src/derive/critical.ts'
import { createMechanics } from '../../src/derive/mechanics.ts'
import { deriveSite } from '../../src/derive/site.ts'
import type { SiteModel } from '../../src/derive/types.ts'
import type { YardDocument } from '../../src/scene/document.ts'
import { poundForceN } from '../../src/units/factors.ts'
import { ft, fusionYard, inch, type YardSpec } from '../helpers/fusionYard.ts'

/** Heights 30 / 28½ / 21½ / 12½ / 7¼ in at 12.5 / 25 / 35.7 / 46.4 / 57.1 ft, rollers from 67.8 ft on every 12½ ft. */
const good: YardSpec = { exits: [[12.5, 0], [25, 1.5], [35.7, 8.5], [46.4, 17.5], [57.1, 22.75]], rollers: Array.from({ length: 15 }, (_, i) => 67.8 + 12.5 * i), neededFt: 270 }

const rankingOf = (document: YardDocument, sinkM = inch(0.5)): CriticalRanking => {
  const site = deriveSite(document)
  const limits = limitsOf(document)
  return criticalSupports(site, limits, createMechanics(site, limits), sinkM)
}
const lb = (forceN: number | null): number => Math.round((forceN ?? NaN) / poundForceN)

describe('a stand missing or sunk: a worked 12 in layout with jaws at 0 and 2 ft and one string through them', () => {
  // Expected: a finite-element run of our own on a 0.1 ft mesh, made apart from this code and repeated independently; printed to 1 lb.
  // Mean wall for weight and stiffness: 12.75 in OD, wall 1.06 × 0.75 in, 955 kg/m³, 78,000 psi. Tail at −30 ft on stands at −10 and −20 ft.
  const odM = inch(12.75)
  const idM = odM - 2 * 1.06 * inch(0.75)
  const inertiaM4 = (Math.PI * (odM ** 4 - idM ** 4)) / 64
  const base = deriveSite(fusionYard({ ...good, infeed: [-10, -20] }))
  const site: SiteModel = {
    ...base,
    jaws: { ...base.jaws, innerClampM: 0, outerClampM: ft(2), bopLevelM: inch(30), slopeRatio: 0 },
    pipe: { ...base.pipe, properties: { ...base.pipe.properties!, inertiaM4, lineLoadNPerM: (955 * 9.80665 * Math.PI * (odM ** 2 - idM ** 2)) / 4 }, stiffnessNm2: () => 78_000 * 6894.757293168 * inertiaM4 },
  }
  const string: BodyCase = { name: 'string', startM: -ft(30), endM: ft(220), question: 'jaws', infeedJaws: 'out', exitJaws: 'closed', lifts: false }
  const keyAt = (atFt: number): string => site.supports.find(({ runningM }) => Math.abs(runningM - ft(atFt)) < 0.01)!.key
  const jaws = (change: Partial<BodyCase>): number[] => bodySolverOf(site).solve({ ...string, ...change })!.jaws.map(({ forceN }) => forceN / poundForceN)

  it.each([
    ['all as set', {}, 113, 55],
    ['25 ft removed', { without: keyAt(25) }, 336, -292],
    ['25 ft sunk ½ in', { shift: { key: keyAt(25), byM: -inch(0.5) } }, 174, -39],
    ['12.5 ft removed', { without: keyAt(12.5) }, 91, 85],
    ['rear infeed removed', { without: keyAt(-20) }, -814, 636],
    ['−10 ft sunk ½ in', { shift: { key: keyAt(-10), byM: -inch(0.5) } }, 218, -24],
  ] as const)('%s', (_name, change, innerLb, outerLb) => {
    const [inner, outer] = jaws(change)
    expect(Math.abs(inner! - innerLb)).toBeLessThan(1)
    expect(Math.abs(outer! - outerLb)).toBeLessThan(1)
  })

  it('from 46 ft outward no support, missing or sunk, changes the jaws by 5 lb', () => {
    const [inner, outer] = jaws({})
    const far = site.supports.filter(({ runningM }) => runningM > ft(46) && runningM < ft(200))
    expect(far.length).toBeGreaterThan(10)
    for (const { key, label } of far) {
      for (const change of [{ without: key }, { shift: { key, byM: -inch(0.5) } }]) {
        const changed = jaws(change)
        expect(Math.abs(changed[0]! - inner!), label).toBeLessThan(5)
        expect(Math.abs(changed[1]! - outer!), label).toBeLessThan(5)
      }
    }
  })
})

describe('critical supports in the product’s own convention: stick and string apart, clamps at 4 and 28 in each side', () => {
  // The worked layout again. Its statement, that the rear of the infeed and the last level stand are the ones to guard and nothing from
  // 46 ft outward, holds here too; forces differ, because the fed stick ends at the joint. Numbers: this engine, for the record.
  const ranking = rankingOf(fusionYard({ ...good, infeed: [-10, -20, -30] }))
  const of = (label: string): CriticalRanking['supports'][number] => ranking.supports.find((one) => one.label === label)!

  it('names the rear infeed stand and the last level stand, not those in the field', () => {
    expect(ranking.supports.filter(({ rank }) => rank !== null).map(({ label }) => label)).toEqual(['I3', 'I1', 'E2', 'E1'])
    expect(ranking.supports.filter(({ runningM }) => runningM > ft(46)).every(({ rank }) => rank === null)).toBe(true)
  })
  it('E2 missing: the jaws carry 254 and −353 lb where the finite-element run of one string had 336 and −292', () => {
    expect([of('E2').removed.innerN, of('E2').removed.outerN].map(lb)).toEqual([254, -353])
    expect(of('E2').removed.effortChange).toBeGreaterThan(0.5)
  })
  it('a rack: its far beam weighs more than its near beam', () => {
    const { supports } = rankingOf(fusionYard(good))
    expect(supports.slice(0, 2).map(({ label }) => label)).toEqual(['R2', 'R1'])
    expect(supports[0]!.level).toBe('FIX')
  })
  it('the joint and what the figures belong to agree: C is the largest force × 2 ft over stick weight × 2 ft', () => {
    for (const { removed, sunk } of ranking.supports) {
      for (const { innerN, outerN, effortRatio } of [removed, sunk]) {
        // clamps 24 in apart, lever 2 ft; 494.5 lb a stick
        expect(effortRatio! * 494.5).toBeCloseTo(Math.max(Math.abs(innerN!), Math.abs(outerN!)) / poundForceN, 0)
      }
    }
  })
  it('a stand let down past the pipe does what a missing one does', () => {
    const deep = rankingOf(fusionYard({ ...good, infeed: [-10, -20, -30] }), 5)
    for (const { label, removed, sunk } of deep.supports) expect(sunk.effortRatio, label).toBeCloseTo(removed.effortRatio!, 9)
  })
  it('sinking by next to nothing ranks by what goes missing alone', () => {
    const tiny = rankingOf(fusionYard({ ...good, infeed: [-10, -20, -30] }), 1e-6)
    for (const { sunk } of tiny.supports) expect(Math.abs(sunk.effortChange!)).toBeLessThan(1e-3)
  })
})

describe('the cut-off: three bearing supports in a row without effect', () => {
  // Stiff pipe reaches farther: the sizes and the even row that follows a drop of 24 in are the hard case.
  it.each([['4', 11], ['8', 11], ['12', 17], ['24', 11], ['36', 17], ['54', 21]] as const)('in %s in DR %s pipe no support beyond the last one tried changes C by 0.01, missing or 1 in down', (size, dr) => {
    const document = fusionYard({ size, dr, exits: [[12.5, 0], [25, 0], [37.5, 0]], rollers: Array.from({ length: 24 }, (_, i) => 50 + 12.5 * i), neededFt: 350 })
    const site = deriveSite(document)
    const limits = limitsOf(document)
    const mechanics = createMechanics(site, limits)
    const { reachM, beyondCount } = criticalSupports(site, limits, mechanics, inch(1))
    const solver = bodySolverOf(site)
    const weightLever = site.pipe.properties!.lineLoadNPerM * ft(40) * ft(2)
    const far = site.supports.filter(({ runningM }) => runningM > reachM + 1e-9)
    expect(far.length).toBe(beyondCount)
    expect(far.length).toBeGreaterThan(5)
    for (const joint of mechanics.joints) {
      const { body, effortRatio } = mechanics.joint(joint)!.exit
      for (const { key, runningM } of far) {
        if (runningM > body.endM) continue
        for (const change of [{ without: key }, { shift: { key, byM: -inch(1) } }]) {
          const largestN = Math.max(...solver.solve({ ...body, ...change })!.jaws.map(({ forceN }) => Math.abs(forceN)))
          expect(Math.abs((largestN * ft(2)) / weightLever - effortRatio), `${key} joint ${joint}`).toBeLessThan(0.01)
        }
      }
    }
  })
})

describe('what cannot be ranked', () => {
  it('without a stick length names it and ranks nothing', () => {
    const ranking = rankingOf(fusionYard({ job: { stickLengthM: null } }))
    expect(ranking.supports).toEqual([])
    expect(ranking.missing.map(({ path }) => path)).toContain('stickLengthM')
  })
  it.each([0, -0.01, NaN, Infinity])('refuses to sink by %s', (sinkM) => expect(() => rankingOf(fusionYard(good), sinkM)).toThrow(RangeError))
})
