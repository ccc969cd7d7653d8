/** What is left of a yard across once the line and the parked strings lie in it. */
import type { ParkedString } from '../derive/strings.ts'
import type { SiteModel } from '../derive/types.ts'
import type { Vec } from '../geometry/vector.ts'
import { recordsOf } from '../scene/document.ts'
import type { GearBody } from './gearBodies.ts'
import { roomOf } from './room.ts'

export interface LeftBeside {
  /** Widest strip clear from end to end of what is parked, on either side; negative where rows reach out of the yard. */
  leftM: number
  /** From the outermost edge on one side to that on the other. */
  takenM: number
  /** Width of the yard where the strip is narrowest, and where along the run that is. */
  acrossM: number
  atM: number
}

/** Looked at across the run every so often; between two places a straight side of the yard changes evenly. */
const STEP_M = 2

/** Null without a boundary round the datum. The line takes what the pipe takes, and the machine beside it where it reaches farther. */
export function leftBeside(site: SiteModel, parked: readonly ParkedString[], machines: readonly GearBody[]): LeftBeside | null {
  const room = roomOf(site)
  const ring = recordsOf(site.document, 'boundary').find(({ id }) => id === room?.boundaryId)?.points
  const halfM = (site.pipe.odM ?? 0) / 2
  if (room === null || ring === undefined || parked.length === 0) return null
  const machineM = machines.flatMap(({ points }) => points.map(({ xM, yM }) => site.toRunning(xM, yM).offsetM))
  const rightM = Math.max(halfM, ...machineM, ...parked.map(({ offsetM }) => offsetM + halfM))
  const backM = Math.max(halfM, ...machineM.map((one) => -one), ...parked.map(({ offsetM }) => halfM - offsetM))
  const [fromM, toM] = [0, Math.min(room.aheadM, Math.max(...parked.map(({ toM: end }) => end)))]
  const count = Math.max(1, Math.ceil((toM - fromM) / STEP_M))
  let [right, left] = [{ clearM: Infinity, acrossM: 0, atM: 0 }, { clearM: Infinity, acrossM: 0, atM: 0 }]
  for (let i = 0; i <= count; i += 1) {
    // Short of the ends: on the boundary itself there is nothing to either side.
    const atM = fromM + ((toM - fromM) * Math.min(Math.max(i, 0.01), count - 0.01)) / count
    const [toRightM, toLeftM] = [reachM(site, ring, atM, 1), reachM(site, ring, atM, -1)]
    const acrossM = toRightM + toLeftM
    if (toRightM - rightM < right.clearM) right = { clearM: toRightM - rightM, acrossM, atM }
    if (toLeftM - backM < left.clearM) left = { clearM: toLeftM - backM, acrossM, atM }
  }
  const wider = right.clearM >= left.clearM ? right : left
  const isOut = Math.min(right.clearM, left.clearM) < 0
  const told = isOut ? (right.clearM < left.clearM ? right : left) : wider
  return { leftM: told.clearM, takenM: rightM + backM, acrossM: told.acrossM, atM: told.atM }
}

/** From the run out to the boundary, square to it; 0 where the run is outside. */
function reachM(site: SiteModel, ring: readonly Vec[], runningM: number, side: 1 | -1): number {
  const from = site.atRunning(runningM)
  // Right of the heading.
  const [ux, uy] = [side * Math.sin(from.headingRad), -side * Math.cos(from.headingRad)]
  let leastM = Infinity
  for (let i = 0; i < ring.length; i += 1) {
    const [a, b] = [ring[i]!, ring[(i + 1) % ring.length]!]
    const [ex, ey] = [b.xM - a.xM, b.yM - a.yM]
    const across = ux * ey - uy * ex
    if (across === 0) continue
    const alongM = ((a.xM - from.xM) * ey - (a.yM - from.yM) * ex) / across
    const share = ((a.xM - from.xM) * uy - (a.yM - from.yM) * ux) / across
    if (alongM >= 0 && share >= 0 && share <= 1) leastM = Math.min(leastM, alongM)
  }
  return leastM === Infinity ? 0 : leastM
}
