import { Clipper, FillRule, type Path64 } from 'clipper2-ts'
import { describe, expect, it } from 'vitest'
import { deriveSite } from '../../../src/derive/site.ts'
import { zoneStagesOf } from '../../../src/derive/zoneStages.ts'
import type { Vec } from '../../../src/geometry/vector.ts'
import { recordsOf } from '../../../src/scene/document.ts'
import { arenalGood, mapleGood, redstemGood } from '../../helpers/makeExamples.ts'

/** Trench strip and loader lanes are counted apart: people stay off them on any plan. */
const apart = new Set(['Z-15', 'Z-07'])
const inMillimetres = (ring: readonly Vec[]): Path64 => ring.map(({ xM, yM }) => ({ x: Math.round(xM * 1000), y: Math.round(yM * 1000) })) as Path64

describe('RED on the good plans', () => {
  it('the area of a union is that of its parts without their overlap', () => {
    // Two squares of 10 m, 5 m over each other: 150 m².
    const squares = [0, 5].map((xM) => inMillimetres([{ xM, yM: 0 }, { xM: xM + 10, yM: 0 }, { xM: xM + 10, yM: 10 }, { xM, yM: 10 }]))
    expect(Math.abs(Clipper.union(squares, [], FillRule.NonZero).reduce((sum, path) => sum + Clipper.area(path), 0)) / 1e6).toBeCloseTo(150, 6)
  })

  it.each([['Maple Fork', mapleGood], ['Redstem Flat', redstemGood], ['Campo Arenal', arenalGood]])('%s: covers under 40 %% of the yard at every stage', (_name, make) => {
    const site = deriveSite(make())
    const yard = Clipper.union(recordsOf(site.document, 'boundary').map(({ points }) => inMillimetres(points)), [], FillRule.NonZero)
    const areaOf = (paths: readonly Path64[]): number => Math.abs(paths.reduce((sum, path) => sum + Clipper.area(path), 0))
    expect(areaOf(yard)).toBeGreaterThan(1e9)
    const shares = zoneStagesOf(site).map(({ stage, zones }) => {
      // Rings of either sense count as filled: each is turned one way before the union.
      const rings = zones.filter(({ zoneClass, id }) => zoneClass === 'RED' && !apart.has(id)).flatMap((zone) => zone.rings.map(inMillimetres)).map((path) => (Clipper.area(path) < 0 ? ([...path].reverse() as Path64) : path))
      return { stage: `${stage.phase} ${stage.joint}`, ratio: rings.length === 0 ? 0 : areaOf(Clipper.intersect(Clipper.union(rings, [], FillRule.NonZero), yard, FillRule.NonZero)) / areaOf(yard) }
    })
    expect(shares.filter(({ ratio }) => ratio >= 0.4)).toEqual([])
    // Some RED there is: a pull has a rope.
    expect(Math.max(...shares.map(({ ratio }) => ratio))).toBeGreaterThan(0.01)
    if (process.env['PRINT_SHARES'] !== undefined) console.log(shares)
  })
})
