import type { GroundLine } from './groundLine.ts'
import { groundUnder, profileLevelM } from './groundLine.ts'
import type { ContactBeamInput, PointSupport, SlopeClamp } from './types.ts'

/** What a place where the pipe may rest is. */
export const ONE_WAY = 0
export const TWO_WAY = 1
export const GROUND_CORNER = 2

/**
 * The case in the form the solver works with: everything divided by EI, levels less a reference, places sorted.
 * A *site* is a place of known x where the pipe may rest: a support above the ground, a convex corner of the
 * ground, or the ground under an end of the body.
 */
export interface BeamModel {
  startM: number
  endM: number
  lengthM: number
  stiffnessNm2: number
  lineLoadNPerM: number
  /** c = q / EI. */
  loadPerM3: number
  /** k₀. */
  bowPerM: number
  referenceM: number
  siteCount: number
  siteX: Float64Array
  siteLevel: Float64Array
  siteKind: Uint8Array
  /** Site of each support in the order of the input; −1 where it is at or below the ground or rests in a clamp. */
  siteOfSupport: Int32Array
  /** Left to right. */
  clampX: number[]
  clampLevel: number[]
  clampSlope: number[]
  /** Place in the list of input clamps. */
  clampOrder: number[]
  ground: GroundLine | null
  /** Site at each corner of the ground, −1 at hollows and where a support or clamp stands. */
  cornerSite: Int32Array
  twoWayCount: number
  meanLoad: number
}

export const DEFAULT_MERGE_TOLERANCE_M = 1e-6
/** Ground corners nearer to a support than this are the support's. */
const SAME_PLACE_M = 1e-9
/** A clamp this near the ground counts as lying on it. */
const ON_GROUND_M = 1e-9

function describe(value: unknown): string {
  return typeof value === 'number' ? String(value) : typeof value
}

function finiteProblem(name: string, value: unknown): string | null {
  return typeof value === 'number' && Number.isFinite(value) ? null : `${name} must be a finite number, got ${describe(value)}`
}

function listProblem(input: ContactBeamInput, startM: number, endM: number): string | null {
  const slackM = 1e-9 * Math.max(1, endM - startM)
  const onBody = (x: number): boolean => x >= startM - slackM && x <= endM + slackM
  for (let i = 0; i < input.supports.length; i++) {
    const s = input.supports[i]!
    if (!Number.isFinite(s.xM) || !Number.isFinite(s.levelM)) {
      return finiteProblem(`supports[${i}].xM`, s.xM) ?? finiteProblem(`supports[${i}].levelM`, s.levelM)
    }
    if (!onBody(s.xM)) return `supports[${i}].xM = ${s.xM} is off the pipe, which lies from ${startM} to ${endM}`
  }
  const clamps = input.clamps ?? []
  for (let i = 0; i < clamps.length; i++) {
    const clamp = clamps[i]!
    const problem =
      finiteProblem(`clamps[${i}].xM`, clamp.xM) ??
      finiteProblem(`clamps[${i}].levelM`, clamp.levelM) ??
      finiteProblem(`clamps[${i}].slopeRatio`, clamp.slopeRatio)
    if (problem) return problem
    if (!onBody(clamp.xM)) return `clamps[${i}].xM = ${clamp.xM} is off the pipe, which lies from ${startM} to ${endM}`
  }
  return null
}

function groundProblem(ground: ContactBeamInput['ground']): string | null {
  if (!ground) return null
  const { xM: xs, levelM: levels } = ground
  if (xs.length === 0) return 'ground has no points'
  if (xs.length !== levels.length) return `ground.xM has ${xs.length} values and ground.levelM ${levels.length}`
  for (let i = 0; i < xs.length; i++) {
    const x = xs[i]!
    if (!Number.isFinite(x) || !Number.isFinite(levels[i]!)) {
      return finiteProblem(`ground.xM[${i}]`, x) ?? finiteProblem(`ground.levelM[${i}]`, levels[i])
    }
    if (i > 0 && x <= xs[i - 1]!) return `ground.xM must increase: [${i}] = ${x} follows ${xs[i - 1]}`
  }
  return null
}

/** What is wrong with an input, naming the field, or null. */
export function inputProblem(input: ContactBeamInput): string | null {
  const { lengthM, startM = 0, section, mergeToleranceM = DEFAULT_MERGE_TOLERANCE_M, bow } = input
  const problem =
    finiteProblem('lengthM', lengthM) ??
    finiteProblem('startM', startM) ??
    finiteProblem('section.bendingStiffnessNm2', section.bendingStiffnessNm2) ??
    finiteProblem('section.lineLoadNPerM', section.lineLoadNPerM) ??
    finiteProblem('mergeToleranceM', mergeToleranceM) ??
    (bow ? (finiteProblem('bow.curvaturePerM', bow.curvaturePerM) ?? finiteProblem('bow.angleRad', bow.angleRad)) : null)
  if (problem) return problem
  if (lengthM <= 0) return `lengthM must be more than 0, got ${lengthM}`
  if (section.bendingStiffnessNm2 <= 0) return `section.bendingStiffnessNm2 must be more than 0, got ${section.bendingStiffnessNm2}`
  if (section.lineLoadNPerM <= 0) return `section.lineLoadNPerM must be more than 0, got ${section.lineLoadNPerM}`
  if (mergeToleranceM < 0) return `mergeToleranceM must not be negative, got ${mergeToleranceM}`
  if (input.supports.length === 0 && !input.clamps?.length && !input.ground) return 'nothing to hold the pipe up: no supports, clamps or ground'
  return listProblem(input, startM, startM + lengthM) ?? groundProblem(input.ground)
}

interface Site {
  x: number
  level: number
  kind: number
}

/** Supports above ground, near ones joined. Fills siteOfSupport with places in the returned list. */
function supportSites(
  input: ContactBeamInput,
  context: { startM: number; endM: number; referenceM: number; clamps: readonly SlopeClamp[]; siteOfSupport: Int32Array },
): Site[] | string {
  const { startM, endM, referenceM, clamps, siteOfSupport } = context
  const tolerance = input.mergeToleranceM ?? DEFAULT_MERGE_TOLERANCE_M
  const { supports, ground } = input
  const order: number[] = []
  let sorted = true
  for (let i = 0; i < supports.length; i++) {
    const s: PointSupport = supports[i]!
    siteOfSupport[i] = -1
    if (ground) {
      const g = profileLevelM(ground, s.xM)
      if (s.twoWay && s.levelM < g - ON_GROUND_M) return `supports[${i}] may pull and lies below the ground`
      if (s.levelM <= g) continue
    }
    let inClamp = false
    for (const clamp of clamps) {
      if (Math.abs(clamp.xM - s.xM) > Math.max(tolerance, SAME_PLACE_M)) continue
      if (s.levelM > clamp.levelM + clamp.slopeRatio * (s.xM - clamp.xM) + ON_GROUND_M) return `supports[${i}] stands above the clamp at the same place`
      inClamp = true
    }
    if (inClamp) continue
    if (order.length > 0 && s.xM < supports[order[order.length - 1]!]!.xM) sorted = false
    order.push(i)
  }
  if (!sorted) order.sort((a, b) => supports[a]!.xM - supports[b]!.xM)
  const sites: Site[] = []
  let groupX = -Infinity
  for (const i of order) {
    const s = supports[i]!
    const level = s.levelM - referenceM
    const top = sites[sites.length - 1]
    if (top && s.xM - groupX <= Math.max(tolerance, SAME_PLACE_M)) {
      if (level > top.level) {
        top.level = level
        top.x = Math.min(Math.max(s.xM, startM), endM)
      }
      if (s.twoWay) top.kind = TWO_WAY
    } else {
      groupX = s.xM
      sites.push({ x: Math.min(Math.max(s.xM, startM), endM), level, kind: s.twoWay ? TWO_WAY : ONE_WAY })
    }
    siteOfSupport[i] = sites.length - 1
  }
  return sites
}

function clampProblem(clamps: readonly SlopeClamp[], ground: GroundLine | null, referenceM: number): string | null {
  for (let i = 0; i < clamps.length; i++) {
    const clamp = clamps[i]!
    if (i > 0 && clamp.xM - clamps[i - 1]!.xM <= SAME_PLACE_M) return `two clamps at the same place, x = ${clamp.xM}`
    if (!ground) continue
    const last = ground.slopeRatio.length - 1
    let piece = 0
    while (piece < last && ground.xM[piece + 1]! <= clamp.xM) piece++
    const left = piece > 0 && clamp.xM <= ground.xM[piece]! + SAME_PLACE_M ? piece - 1 : piece
    const above = clamp.levelM - referenceM - (ground.levelM[piece]! + ground.slopeRatio[piece]! * (clamp.xM - ground.xM[piece]!))
    if (above < -ON_GROUND_M) return `the clamp at x = ${clamp.xM} lies below the ground`
    if (above > ON_GROUND_M) continue
    const pointsDown = clamp.xM < ground.xM[last + 1]! && clamp.slopeRatio < ground.slopeRatio[piece]! - 1e-12
    const pointsUp = clamp.xM > ground.xM[0]! && clamp.slopeRatio > ground.slopeRatio[left]! + 1e-12
    if (pointsDown || pointsUp) return `the clamp at x = ${clamp.xM} points into the ground`
  }
  return null
}

/** Support sites and ground corners in one sorted list; re-numbers siteOfSupport. */
function joinSites(
  sites: readonly Site[],
  context: { ground: GroundLine; clampX: readonly number[]; siteOfSupport: Int32Array; cornerSite: Int32Array },
): Site[] {
  const { ground, clampX, siteOfSupport, cornerSite } = context
  const all: Site[] = []
  const place = new Int32Array(sites.length)
  const last = ground.slopeRatio.length
  let next = 0
  for (let k = 0; k <= last; k++) {
    const x = ground.xM[k]!
    while (next < sites.length && sites[next]!.x <= x + SAME_PLACE_M) {
      place[next] = all.length
      all.push(sites[next++]!)
    }
    cornerSite[k] = -1
    const convex = k === 0 || k === last || ground.slopeRatio[k]! < ground.slopeRatio[k - 1]!
    if (!convex) continue
    if (next > 0 && Math.abs(sites[next - 1]!.x - x) <= SAME_PLACE_M) continue
    if (clampX.some((clamp) => Math.abs(clamp - x) <= SAME_PLACE_M)) continue
    cornerSite[k] = all.length
    all.push({ x, level: ground.levelM[k]!, kind: GROUND_CORNER })
  }
  while (next < sites.length) {
    place[next] = all.length
    all.push(sites[next++]!)
  }
  for (let i = 0; i < siteOfSupport.length; i++) if (siteOfSupport[i]! >= 0) siteOfSupport[i] = place[siteOfSupport[i]!]!
  return all
}

/** k₀; exactly 0 on its side, where the cosine of a rounded π/2 leaves dust. */
function effectiveBow(curvaturePerM: number, angleRad: number): number {
  const cosine = Math.cos(angleRad)
  return Math.abs(cosine) < 1e-12 ? 0 : curvaturePerM * cosine
}

/** The model of an input, or the reason why it is refused. Cost: O(n log n). */
export function buildModel(input: ContactBeamInput): BeamModel | string {
  const problem = inputProblem(input)
  if (problem) return problem
  const { lengthM, startM = 0, section, supports, bow } = input
  const endM = startM + lengthM
  const clamps = input.clamps?.length ? [...input.clamps].sort((a, b) => a.xM - b.xM) : []
  const referenceM = supports[0]?.levelM ?? clamps[0]?.levelM ?? input.ground?.levelM[0] ?? 0
  const ground = input.ground ? groundUnder(input.ground, startM, endM, referenceM) : null
  if (clamps.length > 0) {
    const refused = clampProblem(clamps, ground, referenceM)
    if (refused) return refused
  }
  const siteOfSupport = new Int32Array(supports.length)
  const own = supportSites(input, { startM, endM, referenceM, clamps, siteOfSupport })
  if (typeof own === 'string') return own
  const clampX = clamps.map((clamp) => Math.min(Math.max(clamp.xM, startM), endM))
  const cornerSite = new Int32Array(ground ? ground.xM.length : 0)
  const sites = ground ? joinSites(own, { ground, clampX, siteOfSupport, cornerSite }) : own
  const n = sites.length
  const siteX = new Float64Array(n)
  const siteLevel = new Float64Array(n)
  const siteKind = new Uint8Array(n)
  let twoWayCount = 0
  for (let i = 0; i < n; i++) {
    const site = sites[i]!
    siteX[i] = site.x
    siteLevel[i] = site.level
    siteKind[i] = site.kind
    if (site.kind === TWO_WAY) twoWayCount++
  }
  const c = section.lineLoadNPerM / section.bendingStiffnessNm2
  return {
    startM,
    endM,
    lengthM,
    stiffnessNm2: section.bendingStiffnessNm2,
    lineLoadNPerM: section.lineLoadNPerM,
    loadPerM3: c,
    bowPerM: bow ? effectiveBow(bow.curvaturePerM, bow.angleRad) : 0,
    referenceM,
    siteCount: n,
    siteX,
    siteLevel,
    siteKind,
    siteOfSupport,
    clampX,
    clampLevel: clamps.map((clamp) => clamp.levelM - referenceM),
    clampSlope: clamps.map((clamp) => clamp.slopeRatio),
    clampOrder: clamps.length > 0 ? clamps.map((clamp) => input.clamps!.indexOf(clamp)) : [],
    ground,
    cornerSite,
    twoWayCount,
    meanLoad: (c * lengthM) / Math.max(1, own.length + clamps.length),
  }
}
