import { describe, expect, it } from 'vitest'
import { clearShift, mostLacking, roomLack, shifted, type Room } from '../../src/checks/clearShift.ts'
import { gapBetween, isUnder, type SiteObstacle } from '../../src/checks/gearBodies.ts'
import { along, type Vec } from '../../src/geometry/vector.ts'
import { seededRandom } from '../helpers/seededRandom.ts'

const TURNS = Array.from({ length: 24 }, (_, i) => (i % 2 === 0 ? 1 : -1) * Math.ceil(i / 2) * (Math.PI / 12))

/** Every place measured, none ruled out. */
function plainSearch(points: readonly Vec[], rooms: readonly Room[], firstRad: number, mostM: number): Vec | null {
  for (let step = 1; step * 0.1 <= mostM + 1e-9; step += 1) {
    for (const turnRad of TURNS) {
      const { xM, yM } = along(firstRad + turnRad, step * 0.1)
      const by = { xM: Math.round(xM * 1000) / 1000 + 0, yM: Math.round(yM * 1000) / 1000 + 0 }
      if (rooms.every(({ obstacle, roomM }) => !isUnder(gapBetween(shifted(points, by), obstacle).clearM, roomM))) return by
    }
  }
  return null
}

describe('least move to where it is clear', () => {
  const random = seededRandom(71)
  const at = (reachM: number): Vec => ({ xM: (random() - 0.5) * reachM, yM: (random() - 0.5) * reachM })
  const figure = (corners: number, reachM: number): Vec[] => {
    const middle = at(reachM)
    return Array.from({ length: corners }, () => {
      const { xM, yM } = at(6)
      return { xM: middle.xM + xM, yM: middle.yM + yM }
    })
  }
  const obstacle = (i: number): SiteObstacle => {
    const shape = [{ kind: 'polygon' as const, points: figure(4, 9) }, { kind: 'polyline' as const, points: figure(3, 9) }, { kind: 'point' as const, point: at(9) }][i % 3]!
    return { id: `o${i}`, kind: 'tree', name: { en: 'o', es: 'o' }, shape, halfWidthM: random() < 0.5 ? 0 : random() }
  }

  it('is the one a search finds that rules nothing out, on 60 seeded scenes with crossing, containing and self-crossing figures', () => {
    let found = 0
    for (let scene = 0; scene < 60; scene += 1) {
      const points = scene % 4 === 0 ? [{ xM: -8, yM: -0.3 }, { xM: 8, yM: -0.3 }, { xM: 8, yM: 0.3 }, { xM: -8, yM: 0.3 }] : figure(4, 4)
      const rooms = Array.from({ length: 1 + (scene % 4) }, (_, i) => ({ obstacle: obstacle(scene + i), roomM: random() }))
      const firstRad = random() * 6
      const mostM = scene % 3 === 0 ? 1 : 5
      const by = clearShift(roomLack(points, rooms), firstRad, mostM)
      expect(by, `scene ${scene}`).toEqual(plainSearch(points, rooms, firstRad, mostM))
      if (by !== null) found += 1
    }
    expect(found).toBeGreaterThan(20)
    expect(found).toBeLessThan(60)
  })

  it('measures few places where a body lies deep in something: a loader in the middle of a building 20 m wide', () => {
    const building = { id: 'b', kind: 'building' as const, name: { en: 'b', es: 'b' }, shape: { kind: 'polygon' as const, points: [{ xM: -10, yM: -10 }, { xM: 10, yM: -10 }, { xM: 10, yM: 10 }, { xM: -10, yM: 10 }] }, halfWidthM: 0 }
    const loader = [{ xM: -1, yM: -1 }, { xM: 1, yM: -1 }, { xM: 1, yM: 1 }, { xM: -1, yM: 1 }]
    const lack = roomLack(loader, [{ obstacle: building, roomM: 0.05 }])
    let asked = 0
    // 10 m to the wall, 1 m half a loader, 5 cm of room: 11.05, so 11.1 m to the decimetre.
    expect(clearShift((by) => (asked++, lack(by)), 0, 12)).toEqual({ xM: 11.1, yM: 0 })
    // 24 directions at 110 steps would be 2,640 places.
    expect(asked).toBeLessThan(400)
  })

  it('of several bodies the worst tells', () => {
    expect(mostLacking([() => null, () => 2, () => 0.5])({ xM: 0, yM: 0 })).toBe(2)
    expect(mostLacking([() => null])({ xM: 0, yM: 0 })).toBeNull()
  })
})
