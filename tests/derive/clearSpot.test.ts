import { describe, expect, it } from 'vitest'
import { MOST_DISTANCES, searchClearSpot } from '../../src/derive/clearSpot.ts'
import { deriveSite } from '../../src/derive/site.ts'
import { depthIn, judging, zoneStagesOf } from '../../src/derive/zoneStages.ts'
import type { Zone } from '../../src/derive/zones.ts'
import { distanceBetween, type Shape } from '../../src/geometry/distance.ts'
import { recordsOf } from '../../src/scene/document.ts'
import type { SiteModel } from '../../src/derive/types.ts'
import { shapeOf } from '../../src/derive/ways.ts'
import { boxM, siteOf } from '../checks/yardCase.ts'
import { randomLayout } from '../helpers/randomLayout.ts'
import { seededRandom } from '../helpers/seededRandom.ts'

/** By the exact distances of src/geometry, each figure in full: what the search leaves out for speed must not change its answer. */
function isClear(site: SiteModel, zones: readonly Zone[], runningM: number, offsetM: number): boolean {
  const { xM, yM } = site.atRunning(runningM, offsetM)
  const to = (shape: Shape): number => distanceBetween({ kind: 'point', point: { xM, yM } }, shape).distanceM
  const yards = recordsOf(site.document, 'boundary')
  const solids = [...site.placed.values()].filter(({ kind }) => ['machine', 'rack', 'building', 'water', 'fence', 'tree'].includes(kind))
  return zones.every((zone) => zone.zoneClass === 'BLUE' || depthIn(zone, { xM, yM }) <= 0.0005)
    && solids.every((item) => to(shapeOf(item)) > 0.3 + (item.record.kind === 'tree' ? (item.record.figures.radiusM.value ?? 2) : 0))
    && (yards.length === 0 || yards.some(({ points }) => to({ kind: 'polygon', points }) === 0))
}

const cases = Array.from({ length: 40 }, (_, i) => {
  const site = deriveSite(randomLayout(seededRandom(i + 1)))
  const random = seededRandom(i + 1000)
  const zones = zoneStagesOf(site).flatMap((stage) => stage.zones).filter((zone) => judging(zone) && !zone.mayEnter.includes('spotter'))
  return { site, zones, from: { runningM: random() * 120 - 20, offsetM: random() * 16 - 8 } }
})

describe('the nearest clear place', () => {
  it('in random yards is clear by the exact distances, and nothing nearer is that was tried before it', () => {
    let found = 0
    for (const { site, zones, from } of cases) {
      const { place } = searchClearSpot(site, from, zones)
      if (place === null) continue
      found += 1
      expect(isClear(site, zones, place.runningM, place.offsetM)).toBe(true)
      // Straight away from the pipe, in the steps of the search, up to the distance found.
      const side = from.offsetM < 0 ? -1 : 1
      const awayM = Math.hypot(place.runningM - from.runningM, place.offsetM - from.offsetM)
      for (let aroundM = 0; aroundM < awayM - 0.01; aroundM = Math.max(aroundM + 0.25, aroundM * 1.05)) expect(isClear(site, zones, from.runningM, from.offsetM + side * aroundM)).toBe(false)
    }
    expect(found).toBeGreaterThan(20)
  })

  it('costs few distances: under a tenth of its cap in random yards, and the cap holds', () => {
    const counts = cases.map(({ site, zones, from }) => searchClearSpot(site, from, zones).distanceCount)
    expect(Math.max(...counts)).toBeLessThan(MOST_DISTANCES / 10)
    expect(Math.max(...counts)).toBeGreaterThan(0)
  })

  it('gives up at the cap instead of searching on: a field of narrow strips that leaves no place', () => {
    const site = siteOf({})
    const strip = (atM: number) => boxM(-40, 40, atM, atM + 0.12)
    // Open frames whose boxes cover the field but which shut nothing there: each is measured for every place tried.
    const frame = (sizeM: number) => [...boxM(-sizeM, sizeM, -sizeM, sizeM), { xM: -sizeM, yM: -sizeM + 0.1 }, { xM: -sizeM + 0.1, yM: sizeM - 0.1 }, { xM: sizeM - 0.1, yM: sizeM - 0.1 }, { xM: sizeM - 0.1, yM: -sizeM + 0.1 }, { xM: -sizeM, yM: -sizeM + 0.1 }]
    const zone = (rings: Zone['rings']): Zone => ({ key: 'hand@zone:grid', id: 'hand', name: { en: 'grid', es: 'red' }, sentence: { en: '', es: '' }, zoneClass: 'RED', phases: ['pull'], rings, itemIds: [], mayEnter: [], entering: [], askedBy: null, keepsOut: 'people', source: { class: 'houseRule', cite: '' }, missing: [], changedBecause: null, size: { en: '', es: '' } })
    const strips = Array.from({ length: 800 }, (_, i) => strip(-40 + 0.1 * i))
    const frames = Array.from({ length: 20 }, (_, i) => frame(50 + i))
    const { place, distanceCount } = searchClearSpot(site, { runningM: 0, offsetM: 0 }, [zone([...frames, ...strips])])
    expect(place).toBeNull()
    expect(distanceCount).toBeGreaterThanOrEqual(MOST_DISTANCES)
    // At most one distance a figure past the cap.
    expect(distanceCount).toBeLessThan(MOST_DISTANCES + 820)
  })
})
