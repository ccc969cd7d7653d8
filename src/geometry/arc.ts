import { DOUBLE_BACK_RAD, STRAIGHT_TURN_RAD, TANGENT_FIT_RATIO } from './tolerance.ts'
import { type Pose, type Vec, add, along, between, crossM2, distanceM, dotM2, headingOf, subtract, toTheRight, wrapAngleRad } from './vector.ts'

/** A corner of a path; `radiusM` rounds it by an arc tangent to both legs, 0 leaves it sharp. Ends round nothing. */
export interface PathVertex extends Vec {
  readonly radiusM: number
}

/** A straight stretch, from `start` along `headingRad`. `leg` is the index of the leg between vertices leg and leg + 1. */
export interface StraightPiece {
  readonly kind: 'straight'
  readonly startM: number
  readonly lengthM: number
  readonly start: Vec
  readonly headingRad: number
  readonly leg: number
}

/** An arc round `centre` by `turnRad`, positive to the left; `bend` is the index into `Path.bends`. */
export interface ArcPiece {
  readonly kind: 'arc'
  readonly startM: number
  readonly lengthM: number
  readonly start: Vec
  readonly headingRad: number
  readonly centre: Vec
  readonly radiusM: number
  readonly turnRad: number
  readonly bend: number
}

export type PathPiece = StraightPiece | ArcPiece

/** A vertex at which the path turns. */
export interface Bend {
  /** Index of the vertex as given. */
  readonly vertex: number
  /** Positive to the left, in (−π, π]. */
  readonly turnRad: number
  readonly radiusM: number
  /** What was drawn: the asked radius, or the largest its legs leave room for. */
  readonly drawnRadiusM: number
  /** Length the asked arc takes of either leg, R·tan(|turn|/2). Infinity where the path doubles back. */
  readonly tangentM: number
  /** Whether the asked arc and its neighbours find room on the legs. */
  readonly isFitting: boolean
}

export interface Path {
  readonly lengthM: number
  readonly pieces: readonly PathPiece[]
  readonly bends: readonly Bend[]
  readonly start: Pose
  readonly end: Pose
}

/**
 * The path through `vertices` with tangent arcs at its corners.
 *
 * Vertices in one place with the one before are passed over. An arc that finds no room is drawn with the largest
 * radius that does (neighbours share a leg in proportion) and its bend says `isFitting: false`.
 * Degenerate input gives a path: no vertices, one place: length 0, heading +x.
 * Source: derived; tangent length R·tan(φ/2), arc length R·φ.
 */
export function pathFromVertices(vertices: readonly PathVertex[]): Path {
  const kept: { at: PathVertex; vertex: number }[] = []
  vertices.forEach((at, vertex) => {
    const last = kept.at(-1)
    if (!last || distanceM(last.at, at) > 0) kept.push({ at, vertex })
  })
  const legs = kept.slice(1).map(({ at, vertex }, i) => {
    const from = (kept[i] as { at: PathVertex }).at
    return { from, to: at, lengthM: distanceM(from, at), headingRad: headingOf(subtract(at, from)), leg: vertex - 1 }
  })
  const bends = cornersOf(kept, legs)
  return assemble(legs, bends, kept[0]?.at ?? { xM: 0, yM: 0 })
}

interface Leg {
  readonly from: Vec
  readonly to: Vec
  readonly lengthM: number
  readonly headingRad: number
  readonly leg: number
}

function cornersOf(kept: readonly { at: PathVertex; vertex: number }[], legs: readonly Leg[]): (Bend | null)[] {
  const asked = legs.slice(1).map((next, i) => {
    const leg = legs[i] as Leg
    const before = subtract(leg.to, leg.from)
    const after = subtract(next.to, next.from)
    const turnRad = Math.atan2(crossM2(before, after), dotM2(before, after))
    const { at, vertex } = kept[i + 1] as { at: PathVertex; vertex: number }
    if (Math.abs(turnRad) < STRAIGHT_TURN_RAD) return null
    const isDoublingBack = Math.PI - Math.abs(turnRad) < DOUBLE_BACK_RAD
    const tangentM = isDoublingBack ? Infinity : at.radiusM * Math.tan(Math.abs(turnRad) / 2)
    return { vertex, turnRad, radiusM: at.radiusM, tangentM }
  })
  const tangentAt = (corner: number): number => asked[corner]?.tangentM ?? 0
  // Share of the asked tangents for which leg i has room; corner i − 1 is at its start, corner i at its end.
  const room = legs.map((leg, i) => {
    const wantedM = tangentAt(i - 1) + tangentAt(i)
    return wantedM <= leg.lengthM * (1 + TANGENT_FIT_RATIO) ? 1 : leg.lengthM / wantedM
  })
  return asked.map((bend, i) => {
    if (!bend) return null
    const share = Math.min(room[i] ?? 1, room[i + 1] ?? 1)
    return { ...bend, drawnRadiusM: bend.tangentM === Infinity ? 0 : bend.radiusM * share, isFitting: share === 1 }
  })
}

function assemble(legs: readonly Leg[], corners: readonly (Bend | null)[], firstPlace: Vec): Path {
  const pieces: PathPiece[] = []
  const bends = corners.filter((bend) => bend !== null)
  const indexOf = new Map(bends.map((bend, i) => [bend, i]))
  let runningM = 0
  legs.forEach((leg, i) => {
    const before = corners[i - 1] ?? null
    const after = corners[i] ?? null
    const fromM = drawnTangentM(before)
    const straightM = Math.max(0, leg.lengthM - fromM - drawnTangentM(after))
    const start = between(leg.from, leg.to, Math.min(1, fromM / leg.lengthM))
    const { headingRad } = leg
    // A leg wholly taken by its arcs still gives its piece, of length 0, so that every leg has one.
    pieces.push({ kind: 'straight', startM: runningM, lengthM: straightM, start, headingRad, leg: leg.leg })
    runningM += straightM
    if (!after || after.drawnRadiusM === 0) return
    const radiusM = after.drawnRadiusM
    const arcStart = add(start, along(headingRad, straightM))
    const centre = add(arcStart, toTheRight(headingRad, after.turnRad > 0 ? -radiusM : radiusM))
    const lengthM = radiusM * Math.abs(after.turnRad)
    const { turnRad } = after
    pieces.push({ kind: 'arc', startM: runningM, lengthM, start: arcStart, headingRad, centre, radiusM, turnRad, bend: indexOf.get(after) as number })
    runningM += lengthM
  })
  const first = legs[0]
  const last = legs.at(-1)
  return {
    lengthM: runningM,
    pieces,
    bends,
    start: { ...(first ? first.from : firstPlace), headingRad: first?.headingRad ?? 0 },
    end: { ...(last ? last.to : firstPlace), headingRad: last?.headingRad ?? 0 },
  }
}

const drawnTangentM = (bend: Bend | null): number =>
  !bend || bend.drawnRadiusM === 0 ? 0 : bend.drawnRadiusM * Math.tan(Math.abs(bend.turnRad) / 2)

/** Place and direction at a running distance from the path's start; straight on beyond both ends. Cost O(log n). */
export function pointOnPath(path: Path, runningM: number): Pose {
  const { start, end } = path
  if (runningM <= 0) return { ...add(start, along(start.headingRad, runningM)), headingRad: start.headingRad }
  if (runningM >= path.lengthM) return { ...add(end, along(end.headingRad, runningM - path.lengthM)), headingRad: end.headingRad }
  let [low, high] = [0, path.pieces.length - 1]
  while (low < high) {
    const middle = (low + high + 1) >> 1
    if ((path.pieces[middle] as PathPiece).startM <= runningM) low = middle
    else high = middle - 1
  }
  const piece = path.pieces[low] as PathPiece
  return poseOnPiece(piece, runningM - piece.startM)
}

function poseOnPiece(piece: PathPiece, intoM: number): Pose {
  if (piece.kind === 'straight') return { ...add(piece.start, along(piece.headingRad, intoM)), headingRad: piece.headingRad }
  const headingRad = wrapAngleRad(piece.headingRad + (piece.turnRad * intoM) / piece.lengthM)
  return { ...add(piece.centre, toTheRight(headingRad, piece.turnRad > 0 ? piece.radiusM : -piece.radiusM)), headingRad }
}

/** The site point at a running distance and an offset, R (positive) to the right of travel. Reverse of `projectOnPath`. */
export function pointBesidePath(path: Path, place: { readonly runningM: number; readonly offsetM: number }): Vec {
  const pose = pointOnPath(path, place.runningM)
  return add(pose, toTheRight(pose.headingRad, place.offsetM))
}

/**
 * Nearest place of the path, extended straight beyond both ends, to a site point.
 *
 * `offsetM` is the distance, positive to the right of travel. Of several equally near places the one nearest the
 * path's start wins. Beside a sharp corner the nearest place is the corner itself, and `pointBesidePath` does not
 * lead back; everywhere else it does. Cost O(pieces).
 */
export function projectOnPath(path: Path, point: Vec): { runningM: number; offsetM: number } {
  let best = { runningM: 0, offsetM: Infinity, isEnd: true }
  const offer = (runningM: number, pose: Pose): void => {
    const toPoint = subtract(point, pose)
    const offsetM = distanceM(pose, point)
    // An end and the foot beside it are equally far to rounding (11 m aside, 1 µm on: 5e-14 m); the foot is the place.
    const isEnd = Math.abs(dotM2(toPoint, along(pose.headingRad, 1))) > 1e-12 * (1 + Math.abs(offsetM) + Math.abs(runningM))
    const gainM = Math.abs(best.offsetM) - offsetM
    const isTie = Math.abs(gainM) <= 1e-13 * (1 + offsetM)
    if (isTie ? best.isEnd && !isEnd : gainM > 0) {
      const isRight = crossM2(along(pose.headingRad, 1), toPoint) < 0
      best = { runningM, offsetM: isRight ? offsetM : -offsetM, isEnd }
    }
  }
  const beforeM = dotM2(subtract(point, path.start), along(path.start.headingRad, 1))
  offer(Math.min(0, beforeM), pointOnPath(path, Math.min(0, beforeM)))
  for (const piece of path.pieces) {
    const intoM = piece.kind === 'straight' ? intoStraightM(piece, point) : intoArcM(piece, point)
    offer(piece.startM + intoM, poseOnPiece(piece, intoM))
  }
  const afterM = dotM2(subtract(point, path.end), along(path.end.headingRad, 1))
  if (afterM > 0) offer(path.lengthM + afterM, pointOnPath(path, path.lengthM + afterM))
  return { runningM: best.runningM, offsetM: best.offsetM + 0 }
}

const intoStraightM = (piece: StraightPiece, point: Vec): number =>
  Math.min(piece.lengthM, Math.max(0, dotM2(subtract(point, piece.start), along(piece.headingRad, 1))))

function intoArcM(piece: ArcPiece, point: Vec): number {
  const spoke = subtract(piece.start, piece.centre)
  const toPoint = subtract(point, piece.centre)
  const sign = piece.turnRad > 0 ? 1 : -1
  const sweptRad = sign * Math.atan2(crossM2(spoke, toPoint), dotM2(spoke, toPoint))
  // Outside its sector an end of the arc is nearest, and the straights on both sides offer those.
  return sweptRad >= 0 && sweptRad <= Math.abs(piece.turnRad) ? piece.radiusM * sweptRad : 0
}

/**
 * The path as points: ends of every piece, and arcs at steps that keep the chord within `sagM` of the arc
 * (inside of it). For drawing and for swept strips; running distances come from `pointOnPath`.
 */
export function pathPoints(path: Path, sagM: number): Vec[] {
  const points: Vec[] = [{ xM: path.start.xM, yM: path.start.yM }]
  const push = (p: Vec): void => {
    const last = points.at(-1) as Vec
    if (distanceM(last, p) > 0) points.push({ xM: p.xM, yM: p.yM })
  }
  for (const piece of path.pieces) {
    if (piece.kind === 'arc') {
      const stepRad = 2 * Math.acos(Math.max(0, 1 - sagM / piece.radiusM))
      const steps = Math.min(4096, Math.max(1, Math.ceil(Math.abs(piece.turnRad) / Math.max(stepRad, 1e-6))))
      for (let i = 1; i < steps; i++) push(poseOnPiece(piece, (piece.lengthM * i) / steps))
    }
    push(poseOnPiece(piece, piece.lengthM))
  }
  return points
}
