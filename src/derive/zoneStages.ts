/** Zones of all stages that matter for people: every phase, and where the joint counts the first, a middle and the last. */
import { distanceBetween } from '../geometry/distance.ts'
import { boundingBox, polygonContains, type Box } from '../geometry/polygon.ts'
import type { Vec } from '../geometry/vector.ts'
import { isAfterJoints, phases, type Phase } from '../scene/parts.ts'
import { zonesAt, type Zone } from './zones.ts'
import { FARTHEST_RUN_M } from './runAwayWay.ts'
import type { SiteModel, Stage } from './types.ts'

/** Of very short sticks not every pull is looked at. */
const MOST_REACHING = 8

export interface ZonesOfStage {
  stage: Stage
  zones: readonly Zone[]
}

const made = new WeakMap<SiteModel, readonly ZonesOfStage[]>()

/**
 * First, middle and last joint while sticks come in, and every pull from which a run-away string reaches the last nose, where
 * the nose spotter stands. Before that the first, after it the last.
 */
export function jointsOf(site: SiteModel, phase: Phase): number[] {
  const last = Math.max(1, site.sticks.stickCount - 1)
  if (phase === 'setUp' || phase === 'offload') return [1]
  if (isAfterJoints(phase)) return [last]
  return [...new Set([1, Math.ceil(last / 2), ...(phase === 'pull' ? reachingJoints(site, last) : []), last])].toSorted((a, b) => a - b)
}

/** Pulls whose nose stops nearer to the last nose than a run-away line is drawn; one more for a spot behind that nose. */
function reachingJoints({ sticks }: SiteModel, last: number): number[] {
  const count = sticks.stickLengthM === null ? 0 : Math.min(MOST_REACHING, Math.ceil(FARTHEST_RUN_M / sticks.stickLengthM) + 1)
  return Array.from({ length: count }, (_, i) => last - i).filter((joint) => joint >= 1)
}

/** Zones of each stage, worked out once a site. */
export function zoneStagesOf(site: SiteModel): readonly ZonesOfStage[] {
  let stages = made.get(site)
  if (stages === undefined) made.set(site, (stages = phases.flatMap((phase) => jointsOf(site, phase).map((joint) => ({ stage: { phase, joint }, zones: zonesAt(site, { phase, joint }) })))))
  return stages
}

const boxes = new WeakMap<readonly Vec[], Box>()

/** Upright box of a ring, worked out once: stages share their rings. */
export function boxOfRing(ring: readonly Vec[]): Box {
  let box = boxes.get(ring)
  if (box === undefined) boxes.set(ring, (box = boundingBox(ring) ?? { minXM: Infinity, minYM: Infinity, maxXM: -Infinity, maxYM: -Infinity }))
  return box
}

const isInBox = ({ minXM, minYM, maxXM, maxYM }: Box, { xM, yM }: Vec): boolean => xM >= minXM && xM <= maxXM && yM >= minYM && yM <= maxYM

/** Zones that judge people and ways: those with a missing input raise their own CHECK and nothing else. */
export const judging = ({ keepsOut, missing }: Zone): boolean => keepsOut === 'people' && missing.length === 0

/** How deep a point lies inside a zone, at least; 0 on its edge or outside. Rings of a zone add up. */
export function depthIn({ rings }: Pick<Zone, 'rings'>, point: Vec): number {
  return rings.reduce((deepest, ring) => (isInBox(boxOfRing(ring), point) && polygonContains(ring, point) ? Math.max(deepest, distanceBetween({ kind: 'point', point }, { kind: 'polyline', points: [...ring, ring[0]!] }).distanceM) : deepest), 0)
}
