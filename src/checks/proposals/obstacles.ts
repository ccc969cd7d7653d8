/** Where along the run nothing can stand: trench, road, way, fence, wall, water and tree under it, and what is locked in place. */
import type { SiteModel, SupportView } from '../../derive/types.ts'
import { distanceBetween } from '../../geometry/distance.ts'
import { gapBetween, obstaclesOf, runStrip } from '../gearBodies.ts'

const crossing = ['trench', 'road', 'walkway', 'fence', 'building', 'water', 'tree'] as const
/** Between two bases a hand must pass. */
const BETWEEN_BASES_M = 0.15

export interface Ground {
  /** Whether a base of that size may stand there. */
  isFree: (runningM: number, base: { lengthM: number; widthM: number }) => boolean
}

/**
 * A base that would come on to an obstacle is in the way of it; a kept support is where two bases would come closer than a
 * hand. Obstacles whose width nobody gave count with their line alone.
 */
export function groundOf(site: SiteModel, kept: readonly SupportView[]): Ground {
  const known = obstaclesOf(site, crossing)
  const bare = [...site.placed.values()].flatMap(({ record }) => (crossing.some((kind) => kind === record.kind) && 'points' in record && !known.some(({ id }) => id === record.id) ? [{ shape: { kind: 'polyline' as const, points: record.points }, halfWidthM: 0 }] : []))
  const all = [...known, ...bare]
  return {
    isFree: (runningM, { lengthM, widthM }) => {
      if (kept.some((support) => Math.abs(support.runningM - runningM) < lengthM + BETWEEN_BASES_M)) return false
      const at = site.atRunning(runningM)
      // Most obstacles lie far off: the exact distance of the base is asked for only near by.
      const reachM = Math.hypot(lengthM, widthM) / 2
      const near = all.filter(({ shape, halfWidthM }) => distanceBetween({ kind: 'point', point: at }, shape).distanceM - halfWidthM < reachM)
      if (near.length === 0) return true
      const base = runStrip(site, runningM - lengthM / 2, runningM + lengthM / 2, widthM / 2)
      return near.every((obstacle) => gapBetween(base, obstacle).clearM > 0)
    },
  }
}
