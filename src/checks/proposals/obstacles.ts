/** Where along the run nothing can stand: trench, road, way, fence, wall, water and tree under it, and what is locked in place. */
import type { SiteModel, SupportView } from '../../derive/types.ts'
import { distanceBetween } from '../../geometry/distance.ts'
import { obstaclesOf } from '../gearBodies.ts'

const crossing = ['trench', 'road', 'walkway', 'fence', 'building', 'water', 'tree'] as const
/** Between two bases a hand must pass. */
const BETWEEN_BASES_M = 0.15

export interface Ground {
  /** Whether a base of that size may stand there. */
  isFree: (runningM: number, base: { lengthM: number; widthM: number }) => boolean
  /** Name of what is in the way there; null where nothing is. */
  nameAt: (runningM: number) => { en: string; es: string } | null
}

/**
 * Obstacles nearer to the middle of a base than half its diagonal are in the way; a kept support is where the bases would
 * come closer than a hand. Obstacles whose width nobody gave count with their line alone.
 */
export function groundOf(site: SiteModel, kept: readonly SupportView[]): Ground {
  const known = obstaclesOf(site, crossing)
  const bare = [...site.placed.values()].flatMap(({ record }) => (crossing.some((kind) => kind === record.kind) && 'points' in record && !known.some(({ id }) => id === record.id) ? [{ name: { en: record.name, es: record.name }, shape: { kind: 'polyline' as const, points: record.points }, halfWidthM: 0 }] : []))
  const all = [...known, ...bare]
  const nearest = (runningM: number, reachM: number): { en: string; es: string } | null => {
    const { xM, yM } = site.atRunning(runningM)
    const hit = all.find(({ shape, halfWidthM }) => distanceBetween({ kind: 'point', point: { xM, yM } }, shape).distanceM - halfWidthM < reachM)
    return hit?.name ?? null
  }
  return {
    isFree: (runningM, { lengthM, widthM }) =>
      (all.length === 0 || nearest(runningM, Math.hypot(lengthM, widthM) / 2) === null)
      && kept.every((support) => Math.abs(support.runningM - runningM) >= lengthM + BETWEEN_BASES_M),
    nameAt: (runningM) => nearest(runningM, 0.3),
  }
}
