/** The string dragged along the run, and where it would go by itself, joint by joint (docs/formulas/pull.md). */
import { USUAL_GUIDE_SPACING_M } from '../engine/bends/holdCurve.ts'
import { breakawayFactors, frictionOf } from '../engine/pipe/tables.ts'
import { forceAtHead, type StringOnTrack } from '../engine/pull/forces.ts'
import { reversedPull, withFrictionTimes } from '../engine/pull/solvePull.ts'
import { buildTrack, guideLoadN, type Track } from '../engine/pull/track.ts'
import type { HeadForce, PullInput, PullVertex } from '../engine/pull/types.ts'
import { add, along } from '../geometry/vector.ts'
import type { Surface } from '../scene/records/frame.ts'
import { groundStretchesOf, type GroundStretch } from './groundStretches.ts'
import type { MissingInput, RunBend, SiteModel } from './types.ts'
import type { BandPart } from './whatIf.ts'

/** The string when joint k is made and the jaws open: k + 1 sticks, first from one stick behind the datum, last from the datum. */
export interface JointPull {
  joint: number
  lengthM: number
  weightN: number
  /** Pull at the nose with high friction, the larger of start and end of the pull, before breakaway. */
  pullN: number
  /** The same at the start of a pull: breakaway raises the friction, not the weight down or up the slope. */
  startN: number
  /** What the pipe's stiffness at the bends adds to it, in the place where both together are largest; 0 on a straight run. */
  stiffnessN: number
  /** Both: what has to be there to start. */
  needN: number
  /** Force with which the string leaves by itself toward either end with low friction; 0 or less: it stays. */
  runAwayN: { exit: number; infeed: number }
  /** Weight down the slope without any friction: what a tether is designed for. */
  tetherN: { exit: number; infeed: number }
  /** Fall from tail to nose over length, positive = falls to the exit; the steeper of start and end. */
  gradeRatio: number
  /** Part of it pushes the part ahead though the whole stays. */
  isPushingItself: boolean
}

export interface StringPull {
  missing: readonly MissingInput[]
  joints: readonly JointPull[]
  ground: readonly GroundStretch[]
}

/** Joints solved; beyond this many they are spread evenly, first and last always among them. */
const MOST_JOINTS = 400
/** Factor on friction at the start of every pull: the high end of the table. */
export const breakawayFactor = breakawayFactors.high

/** Columns of the friction table by the end of their band. Without a what-if the pull reads the high one, the run-away the low one. */
const frictionColumn = { low: 'runAwayLow', likely: 'likely', high: 'pullHigh' } as const satisfies Record<BandPart, string>
type FrictionColumn = (typeof frictionColumn)[BandPart]
/** Breakaway at one end of its band; likely is the middle. */
const breakawayIn = (part: BandPart | undefined): number => (part === 'low' ? breakawayFactors.low : part === 'likely' ? (breakawayFactors.low + breakawayFactors.high) / 2 : breakawayFactor)

const pulls = new WeakMap<SiteModel, StringPull>()

/** Pulls of a site, worked out once. */
export function stringPullOf(site: SiteModel): StringPull {
  let made = pulls.get(site)
  if (made === undefined) pulls.set(site, (made = build(site)))
  return made
}

function build(site: SiteModel): StringPull {
  const missing: MissingInput[] = site.pipe.properties === null ? site.pipe.missing.filter(({ path }) => path === 'pipe') : []
  if (site.sticks.stickLengthM === null) missing.push(...site.sticks.missing.filter(({ path }) => path === 'stickLengthM'))
  if (site.setUp === null || site.run === null) missing.push({ recordId: site.layout.id, path: 'setUp', label: { en: 'datum and axis', es: 'origen y eje' } })
  if (missing.length > 0) return { missing, joints: [], ground: [] }
  const ways = waysOf(site)
  return { missing, joints: jointsOf(Math.max(1, site.sticks.stickCount - 1)).map((joint) => jointPull(site, ways, joint)), ground: ways.ground }
}

/** Joints first to last, or `MOST_JOINTS` of them spread evenly. */
function jointsOf(last: number): number[] {
  const count = Math.min(last, MOST_JOINTS)
  return Array.from({ length: count }, (_, i) => (count === 1 ? last : 1 + Math.round((i * (last - 1)) / (count - 1))))
}

/** The way of the string: dragged with high friction, and free to leave with low friction either way. */
export interface PullWays {
  pull: Track
  /** With friction times breakaway. */
  start: Track
  /** With the pipe's stiffness at its guides; null where the run has no bend. */
  stiff: Track | null
  /** Dragged back to the infeed with high friction, and with that times breakaway: what a carriage on the exit side has to do. */
  back: Track
  backStart: Track
  toExit: Track
  toInfeed: Track
  /** Running distance of the way's start, and slope length over plan length. */
  startM: number
  stretch: number
  lineLoadNPerM: number
  ground: readonly GroundStretch[]
  /** What drags at a running distance. */
  under: (runningM: number) => 'rollers' | { surface: Surface | null }
}

const waysBySite = new WeakMap<SiteModel, PullWays>()

/** Ways of a site whose pipe, stick length and run are known, worked out once. */
export function waysOf(site: SiteModel): PullWays {
  let ways = waysBySite.get(site)
  if (ways === undefined) waysBySite.set(site, (ways = buildWays(site)))
  return ways
}

function buildWays(site: SiteModel): PullWays {
  const { stickCount, stringLengthM } = site.sticks
  const lineLoadNPerM = site.pipe.properties!.lineLoadNPerM
  const ground = groundStretchesOf(site)
  const startM = 0 - stringLengthM(1)
  const nodes = nodesOf(site, ground, startM, stringLengthM(stickCount))
  const under: PullWays['under'] = (runningM) => ground.find(({ carriedFromM, carriedToM }) => runningM > carriedFromM && runningM < carriedToM) ?? 'rollers'
  const part = site.case.whatIf?.friction
  const high = inputOf(site, under, nodes, lineLoadNPerM, part === undefined ? 'pullHigh' : frictionColumn[part])
  const low = inputOf(site, under, nodes, lineLoadNPerM, part === undefined ? 'runAwayLow' : frictionColumn[part])
  const pull = buildTrack(high, -1, false)
  const flexuralRigidityNm2 = site.pipe.stiffnessNm2('pull')
  const hasBends = site.bends.some(({ radiusM, turnRad }) => radiusM !== null && turnRad !== 0)
  const starting = withFrictionTimes(high, breakawayIn(part))
  return {
    pull,
    start: buildTrack(starting, -1, false),
    stiff: hasBends && flexuralRigidityNm2 !== null ? buildTrack({ ...high, stiffness: { flexuralRigidityNm2, guideSpacingM: USUAL_GUIDE_SPACING_M } }, -1, true) : null,
    back: buildTrack(reversedPull(high), -1, false),
    backStart: buildTrack(reversedPull(starting), -1, false),
    toExit: buildTrack(low, -1, false),
    toInfeed: buildTrack(reversedPull(low), -1, false),
    startM,
    stretch: pull.lengthM / (nodes.at(-1)!.outM - startM),
    lineLoadNPerM, ground, under,
  }
}

/** Force on a guide of a bend of this radius, EI/(R·a); null where the stiffness is not known. */
export function guideLoadAtN(site: SiteModel, radiusM: number): number | null {
  const flexuralRigidityNm2 = site.pipe.stiffnessNm2('pull')
  return flexuralRigidityNm2 === null ? null : guideLoadN({ flexuralRigidityNm2, guideSpacingM: USUAL_GUIDE_SPACING_M }, radiusM)
}

/** The string of a way's track between tail and nose, and where its head stands on that track. */
export function stringOn(ways: PullWays, track: Track, tailM: number, noseM: number): { body: StringOnTrack; headM: number } {
  const stringLengthM = (noseM - tailM) * ways.stretch
  const isBack = track === ways.toInfeed || track === ways.back || track === ways.backStart
  const headM = isBack ? track.lengthM - (tailM - ways.startM) * ways.stretch : (noseM - ways.startM) * ways.stretch
  return { body: { track, stringLengthM, tailLoadN: 0, weightN: ways.lineLoadNPerM * stringLengthM }, headM }
}

function jointPull(site: SiteModel, ways: PullWays, joint: number): JointPull {
  const sticks = Math.min(joint + 1, Math.max(1, site.sticks.stickCount))
  const lengthM = site.sticks.stringLengthM(sticks)
  const ends = [lengthM - site.sticks.stringLengthM(1), lengthM].map((noseM) => {
    const position = positionOf(site, ways, noseM - lengthM, noseM)
    const stiffnessN = stiffnessAtN(ways, noseM - lengthM, noseM, position.pullN)
    return { ...position, stiffnessN, needN: position.startN + stiffnessN }
  })
  const hardest = ends.reduce((worst, one) => (one.needN > worst.needN ? one : worst))
  const most = (of: (end: PullPosition) => number): number => Math.max(...ends.map(of))
  return {
    joint, lengthM, weightN: ways.lineLoadNPerM * lengthM,
    pullN: most(({ pullN }) => pullN),
    startN: most(({ startN }) => startN),
    stiffnessN: hardest.stiffnessN, needN: hardest.needN,
    runAwayN: { exit: most(({ runAwayN }) => runAwayN.exit), infeed: most(({ runAwayN }) => runAwayN.infeed) },
    tetherN: { exit: most(({ tetherN }) => tetherN), infeed: most(({ tetherN }) => -tetherN) },
    gradeRatio: ends.reduce((steepest, { gradeRatio }) => (Math.abs(gradeRatio) > Math.abs(steepest) ? gradeRatio : steepest), 0),
    isPushingItself: ends.some(({ isPushingItself }) => isPushingItself),
  }
}

/** What bending the pipe into and out of the bends adds to the pull of one place, N; 0 where the run has none or the stiffness is not known. */
export function stiffnessAtN(ways: PullWays, tailM: number, noseM: number, pullN: number): number {
  if (ways.stiff === null) return 0
  const { body, headM } = stringOn(ways, ways.stiff, tailM, noseM)
  return forceAtHead(body, headM).forceN - pullN
}

export interface PullPosition {
  pullN: number
  startN: number
  runAwayN: { exit: number; infeed: number }
  /** Down to the exit positive. */
  tetherN: number
  gradeRatio: number
  isPushingItself: boolean
}

/** One place of the string, tail to nose, with high friction and both ways with low. */
export function positionOf(site: SiteModel, ways: PullWays, tailM: number, noseM: number): PullPosition {
  const headOn = (track: Track): HeadForce => {
    const { body, headM } = stringOn(ways, track, tailM, noseM)
    return forceAtHead(body, headM)
  }
  const [toExit, back] = [headOn(ways.toExit), headOn(ways.toInfeed)]
  const fallM = site.groundLevelAt(tailM) - site.groundLevelAt(noseM)
  return {
    pullN: headOn(ways.pull).forceN,
    startN: headOn(ways.start).forceN,
    runAwayN: { exit: -toExit.sumN, infeed: -back.sumN },
    tetherN: ways.lineLoadNPerM * fallM,
    gradeRatio: fallM / (noseM - tailM),
    isPushingItself: toExit.isPushingItself || back.isPushingItself,
  }
}

/** A corner of the path: a place on a straight, or a bend with the stretch of run it takes. */
interface Node {
  inM: number
  outM: number
  bend: RunBend | null
}

/** Ends, kinks of the ground, changes of what the pipe lies on, bends; nothing inside a bend, whose arc is level. */
function nodesOf(site: SiteModel, ground: readonly GroundStretch[], tailM: number, noseM: number): Node[] {
  const bends = site.bends.filter(({ fromM, turnRad }) => fromM < noseM && Math.abs(turnRad) > 0)
  const endM = bends.reduce((end, { toM }) => Math.max(end, toM), noseM)
  const places = [...site.ground.runningM, ...ground.flatMap(({ carriedFromM, carriedToM }) => [carriedFromM, carriedToM])]
  const inside = places.filter((at) => at > tailM && at < endM && !bends.some(({ fromM, toM }) => at >= fromM && at <= toM))
  const sorted = [...new Set([tailM, ...inside])].toSorted((a, b) => a - b).filter((at, i, all) => i === 0 || at - all[i - 1]! > 1e-6)
  const nodes: Node[] = [...sorted.map((at) => ({ inM: at, outM: at, bend: null })), ...bends.map((bend) => ({ inM: bend.fromM, outM: bend.toM, bend }))].toSorted((a, b) => a.inM - b.inM)
  // A bend that ends the way still needs a point behind it: the direction out of it.
  if (nodes.at(-1)!.bend !== null || endM - nodes.at(-1)!.outM > 1e-6) nodes.push({ inM: Math.max(endM, nodes.at(-1)!.outM + 0.01), outM: Math.max(endM, nodes.at(-1)!.outM + 0.01), bend: null })
  return nodes
}

function inputOf(site: SiteModel, under: PullWays['under'], nodes: readonly Node[], lineLoadNPerM: number, which: FrictionColumn): PullInput {
  const frictionAt = (runningM: number): number => {
    const on = under(runningM)
    return frictionOf(on === 'rollers' ? on : on.surface)[which]
  }
  const vertices = nodes.map(({ inM, outM, bend }): PullVertex => {
    const friction = frictionAt((inM + outM) / 2)
    const { xM, yM, headingRad } = site.atRunning(inM)
    const radiusM = bend === null || outM === inM ? 0 : (outM - inM) / Math.abs(bend.turnRad)
    const corner = radiusM === 0 ? { xM, yM } : add({ xM, yM }, along(headingRad, radiusM * Math.tan(Math.abs(bend!.turnRad) / 2)))
    return { ...corner, levelM: site.groundLevelAt((inM + outM) / 2), radiusM, surfaceFrictionRatio: friction, guideFrictionRatio: friction }
  })
  const legs = nodes.slice(1).map((node, i) => ({ frictionRatio: frictionAt((nodes[i]!.outM + node.inM) / 2) }))
  return { lineLoadNPerM, stringLengthM: 1, vertices, legs, minimumRadiusM: null, allowableLoadN: null }
}
