/** Outlines that zones are made of. */
import { add, along, toTheRight, type Pose, type Vec } from '../../geometry/vector.ts'
import { kindOf } from '../../scene/kinds/index.ts'
import { isAfterJoints, type Figure } from '../../scene/parts.ts'
import type { MissingInput, PlacedItem, SiteModel, Stage } from '../types.ts'

/** Stations along the run no farther apart than this where it bends. */
const BEND_STEP_M = 1
const LARGEST_OD_M = 1.6

/**
 * Strip along the run, from one running distance to another, its half-width given at each station (m).
 * One ring, right side out and left side back. Straight stretches carry only their ends and the breaks asked for.
 */
export function stripAlong(site: Pick<SiteModel, 'atRunning' | 'bends'>, stations: readonly { runningM: number; halfWidthM: number }[]): Vec[] {
  const all = [...stations]
  for (const { fromM, toM } of site.bends) {
    for (let runningM = fromM; runningM <= toM; runningM += BEND_STEP_M) all.push({ runningM, halfWidthM: widthAt(stations, runningM) })
  }
  const [first, last] = [stations[0]!.runningM, stations.at(-1)!.runningM]
  const sorted = all.filter(({ runningM }) => runningM >= first && runningM <= last).sort((a, b) => a.runningM - b.runningM)
  const side = (sign: 1 | -1): Vec[] => sorted.map(({ runningM, halfWidthM }) => {
    const { xM, yM } = site.atRunning(runningM, sign * halfWidthM)
    return { xM, yM }
  })
  return [...side(1), ...side(-1).reverse()]
}

function widthAt(stations: readonly { runningM: number; halfWidthM: number }[], runningM: number): number {
  let [after, end] = [0, stations.length]
  while (after < end) {
    const middle = (after + end) >> 1
    if (stations[middle]!.runningM >= runningM) end = middle
    else after = middle + 1
  }
  if (after === stations.length) return stations.at(-1)!.halfWidthM
  if (after <= 0) return stations[Math.max(0, after)]!.halfWidthM
  const [a, b] = [stations[after - 1]!, stations[after]!]
  const share = b.runningM === a.runningM ? 1 : (runningM - a.runningM) / (b.runningM - a.runningM)
  return a.halfWidthM + share * (b.halfWidthM - a.halfWidthM)
}

/** Box in an item's frame: from…to along its heading, right…left across it (left positive). */
export function boxAt(pose: Pose, box: { fromM: number; toM: number; rightM: number; leftM: number }): Vec[] {
  const corner = (alongM: number, leftM: number): Vec => add(add(pose, along(pose.headingRad, alongM)), toTheRight(pose.headingRad, -leftM))
  return [corner(box.fromM, -box.rightM), corner(box.toM, -box.rightM), corner(box.toM, box.leftM), corner(box.fromM, box.leftM)]
}

/** Box round an item's own length and width, widened by a margin on every side. */
export function aroundItem(pose: Pose, size: { lengthM: number; widthM: number }, marginM: number): Vec[][] {
  const [half, side] = [size.lengthM / 2 + marginM, size.widthM / 2 + marginM]
  return [boxAt(pose, { fromM: -half, toM: half, rightM: side, leftM: side })]
}

/** Ring of 48 corners round a circle; the corners lie on it (drawing; distances to it are within 0.3 %). */
export function circleAt(centre: Vec, radiusM: number): Vec[] {
  return Array.from({ length: 48 }, (_, i) => add(centre, along((i * Math.PI) / 24, radiusM)))
}

/**
 * Where the nose lies at the start and the end of what moves in a stage: the pull of joint k draws it from k to k + 1
 * sticks, or it stands at the place the stage names.
 */
export function noseAt(site: SiteModel, stage: Stage): { fromM: number; toM: number } {
  const { sticks } = site
  const joints = Math.max(1, sticks.stickCount - 1)
  const k = Math.min(Math.max(1, stage.joint), joints)
  if (stage.phase === 'pull') {
    const [fromM, toM] = [sticks.stringLengthM(k), sticks.stringLengthM(k + 1)]
    if (stage.tipM === undefined) return { fromM, toM }
    const tipM = Math.min(Math.max(stage.tipM, fromM), toM)
    return { fromM: tipM, toM: tipM }
  }
  const reached = isAfterJoints(stage.phase) ? sticks.stickCount : k
  return { fromM: sticks.stringLengthM(reached), toM: sticks.stringLengthM(reached) }
}

/** Chords of a rounded end: the corners lie on the circle, so an outline is at most 0.5 % short between them. */
const CAP_STEPS = 12

/**
 * Everything within a radius of a line: one outline with round ends a leg. Outlines of neighbouring legs overlap.
 * For drawing and for who stands inside; clearances are decided by exact distance.
 */
export function aroundLine(points: readonly Vec[], radiusM: number): Vec[][] {
  const legs = points.slice(1).map((to, i) => [points[i]!, to] as const).filter(([a, b]) => a.xM !== b.xM || a.yM !== b.yM)
  if (legs.length === 0) return points[0] === undefined ? [] : [circleAt(points[0], radiusM)]
  return legs.map(([a, b]) => {
    const headingRad = Math.atan2(b.yM - a.yM, b.xM - a.xM)
    const cap = (centre: Vec, fromRad: number): Vec[] => Array.from({ length: CAP_STEPS + 1 }, (_, i) => add(centre, along(fromRad + (i * Math.PI) / CAP_STEPS, radiusM)))
    return [...cap(b, headingRad - Math.PI / 2), ...cap(a, headingRad + Math.PI / 2)]
  })
}

/** An outline widened by a margin: itself, and what lies within the margin of its edge. */
export function widened(ring: readonly Vec[], marginM: number): (readonly Vec[])[] {
  return ring.length === 0 ? [] : [ring, ...aroundLine([...ring, ring[0]!], marginM)]
}

/** Inputs of a zone along the pipe: its size and the stick length. */
export const pipeMissing = (site: SiteModel): MissingInput[] => [
  ...sizeMissing(site),
  ...(site.sticks.stickLengthM === null ? site.sticks.missing.filter(({ path }) => path === 'stickLengthM') : []),
]

/** A field of an item that nobody has filled in, named as its own field is. */
export function lacking(item: Pick<PlacedItem, 'id' | 'kind'>, path: string): MissingInput {
  const label = kindOf(item.kind)?.fields.find((field) => field.path === path)?.label ?? { en: path, es: path }
  return { recordId: item.id, path, label }
}

/** Figures of an item by name, the largest usual value where one is unknown, and what is missing. */
export function figuresOr<Name extends string>(item: PlacedItem, largest: Readonly<Record<Name, number>>): Record<Name, number> & { missing: MissingInput[] } {
  const { figures } = item.record as unknown as { figures: Readonly<Record<Name, Figure>> }
  const names = Object.keys(largest) as Name[]
  const values = Object.fromEntries(names.map((name) => [name, figures[name].value ?? largest[name]])) as Record<Name, number>
  return { ...values, missing: names.filter((name) => figures[name].value === null).map((name) => lacking(item, `figures.${name}.value`)) }
}

/** The pipe's size where nobody has given it. */
export const sizeMissing = (site: SiteModel): MissingInput[] => (site.pipe.odM === null ? site.pipe.missing.filter(({ path }) => path === 'pipe') : [])

/** Outside diameter, or the largest of the tables where nobody has given the pipe. */
export const odOf = (site: SiteModel): number => site.pipe.odM ?? LARGEST_OD_M
