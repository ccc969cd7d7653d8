/** Room along the run between the ends of the yard. */
import type { SiteModel } from '../derive/types.ts'
import { containment } from '../geometry/polygon.ts'
import type { Vec } from '../geometry/vector.ts'
import { recordsOf } from '../scene/document.ts'
import { runLine } from './gearBodies.ts'

export interface Room {
  boundaryId: string
  /** From the datum to the boundary, down-string along the run and back along the axis. */
  aheadM: number
  backM: number
}

const rooms = new WeakMap<SiteModel, Room | null>()

/** Room on the run's middle line within the boundary the datum lies in; null where there is none, or no run. */
export function roomOf(site: SiteModel): Room | null {
  let room = rooms.get(site)
  if (room === undefined) rooms.set(site, (room = build(site)))
  return room
}

function build(site: SiteModel): Room | null {
  if (site.setUp === null || site.run === null) return null
  const { datum } = site.setUp
  const yard = recordsOf(site.document, 'boundary').find(({ points }) => containment(points, datum) !== 'outside')
  if (yard === undefined) return null
  // Farther than the yard is wide no straight run stays inside; a winding one is followed as far as its own bends and that.
  const spanM = yard.points.reduce((most, p) => Math.max(most, Math.hypot(p.xM - datum.xM, p.yM - datum.yM)), 0)
  const beyondBendsM = Math.max(0, ...site.bends.map(({ toM }) => toM))
  return { boundaryId: yard.id, aheadM: firstCrossingM(site, yard.points, beyondBendsM + 2 * spanM + 1), backM: -firstCrossingM(site, yard.points, -(spanM + 1)) }
}

/** Running distance at which the line from the datum first crosses the ring. */
function firstCrossingM(site: SiteModel, ring: readonly Vec[], towardM: number): number {
  const line = towardM > 0 ? runLine(site, 0, towardM) : runLine(site, towardM, 0).toReversed()
  for (let i = 0; i + 1 < line.length; i += 1) {
    const [a, b] = [line[i]!, line[i + 1]!]
    const share = ring.reduce((least, p, j) => Math.min(least, crossingShare(a, b, p, ring[(j + 1) % ring.length]!)), Infinity)
    if (share <= 1) return a.runningM + share * (b.runningM - a.runningM)
  }
  return towardM
}

/** Share of the way from a to b at which it crosses the segment p–q, Infinity where it does not. */
function crossingShare(a: Vec, b: Vec, p: Vec, q: Vec): number {
  const [dx, dy, ex, ey] = [b.xM - a.xM, b.yM - a.yM, q.xM - p.xM, q.yM - p.yM]
  const across = dx * ey - dy * ex
  if (across === 0) return Infinity
  const share = ((p.xM - a.xM) * ey - (p.yM - a.yM) * ex) / across
  const other = ((p.xM - a.xM) * dy - (p.yM - a.yM) * dx) / across
  return share >= 0 && share <= 1 && other >= 0 && other <= 1 ? share : Infinity
}
