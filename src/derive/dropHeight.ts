/** How high a stick lies where it is let go. */
import { polygonContains } from '../geometry/polygon.ts'
import type { Vec } from '../geometry/vector.ts'
import type { SiteModel } from './types.ts'
import { pointsOf } from './ways.ts'
import { heightOfStack } from './zones/stackSide.ts'

/** Above the ground, m: that of the rack or the stack drawn there, so that it falls off it; elsewhere it lies on the ground. */
export function dropHeightM(site: SiteModel, at: Vec): number {
  const under = [...site.placed.values()].find(({ kind, outlineM }) => (kind === 'rack' || kind === 'stack') && outlineM.length >= 6 && polygonContains(pointsOf(outlineM), at))
  if (under === undefined) return 0
  if (under.kind === 'stack') return heightOfStack(site, under).heightM
  return site.supports.find(({ itemId }) => itemId === under.id)?.saddleM ?? 0
}
