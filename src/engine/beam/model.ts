import type { GroundLine } from './groundLine.ts'
import { groundUnder, profileLevelM, profilePiece } from './groundLine.ts'
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
  siteKind: Float64Array
  /** Site of each support in the order of the input; −1 where it is at or below the ground or rests in a clamp. */
  siteOfSupport: number[]
  /** Left to right. */
  clampX: number[]
  clampLevel: number[]
  clampSlope: number[]
  /** Place in the list of input clamps. */
  clampOrder: number[]
  ground: GroundLine | null
  /** Site at each corner of the ground, −1 at hollows and where a support or clamp stands. */
  cornerSite: number[]
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

/** Sites in columns of one allocation. */
interface SiteTable {
  count: number
  x: Float64Array
  level: Float64Array
  kind: Float64Array
}

function makeSites(capacity: number): SiteTable {
  const store = new Float64Array(3 * capacity)
  return { count: 0, x: store.subarray(0, capacity), level: store.subarray(capacity, 2 * capacity), kind: store.subarray(2 * capacity) }
}

function addSite(sites: SiteTable, x: number, level: number, kind: number): void {
  const i = sites.count++
  sites.x[i] = x
  sites.level[i] = level
  sites.kind[i] = kind
}

interface SupportContext {
  startM: number
  endM: number
  referenceM: number
  clamps: readonly SlopeClamp[]
  siteOfSupport: number[]
}

/** Supports that can carry, from left to right; or what is wrong with one. */
function carryingOrder(input: ContactBeamInput, clamps: readonly SlopeClamp[], tolerance: number): number[] | string {
  const { supports, ground } = input
  const order: number[] = []
  let isSorted = true
  let lastX = -Infinity
  let piece = 0
  for (let i = 0; i < supports.length; i++) {
    const s: PointSupport = supports[i]!
    const { xM, levelM } = s
    if (ground) {
      if (ground.xM.length > 1) piece = profilePiece(ground.xM, xM, piece)
      const groundM = profileLevelM(ground, xM, piece)
      if (s.twoWay && levelM < groundM - ON_GROUND_M) return `supports[${i}] may pull and lies below the ground`
      if (levelM <= groundM) continue
    }
    let isInClamp = false
    for (const clamp of clamps) {
      if (Math.abs(clamp.xM - xM) > tolerance) continue
      if (levelM > clamp.levelM + clamp.slopeRatio * (xM - clamp.xM) + ON_GROUND_M) return `supports[${i}] stands above the clamp at the same place`
      isInClamp = true
    }
    if (isInClamp) continue
    if (xM < lastX) isSorted = false
    lastX = xM
    order.push(i)
  }
  if (!isSorted) order.sort((a, b) => supports[a]!.xM - supports[b]!.xM)
  return order
}

/** Supports above ground, near ones joined. Fills siteOfSupport with places in the returned table. */
function supportSites(input: ContactBeamInput, context: SupportContext): SiteTable | string {
  const { startM, endM, referenceM, clamps, siteOfSupport } = context
  const tolerance = Math.max(input.mergeToleranceM ?? DEFAULT_MERGE_TOLERANCE_M, SAME_PLACE_M)
  const { supports } = input
  for (let i = 0; i < supports.length; i++) siteOfSupport.push(-1)
  const order = carryingOrder(input, clamps, tolerance)
  if (typeof order === 'string') return order
  const sites = makeSites(order.length)
  let groupX = -Infinity
  for (let k = 0; k < order.length; k++) {
    const i = order[k]!
    const s = supports[i]!
    const x = Math.min(Math.max(s.xM, startM), endM)
    const level = s.levelM - referenceM
    const top = sites.count - 1
    if (s.xM - groupX <= tolerance) {
      if (level > sites.level[top]!) {
        sites.level[top] = level
        sites.x[top] = x
      }
      if (s.twoWay) sites.kind[top] = TWO_WAY
    } else {
      groupX = s.xM
      addSite(sites, x, level, s.twoWay ? TWO_WAY : ONE_WAY)
    }
    siteOfSupport[i] = sites.count - 1
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

/** Support sites and ground corners in one sorted table; re-numbers siteOfSupport and fills cornerSite. */
function joinSites(
  sites: SiteTable,
  context: { ground: GroundLine; clampX: readonly number[]; siteOfSupport: number[]; cornerSite: number[] },
): SiteTable {
  const { ground, clampX, siteOfSupport, cornerSite } = context
  const { xM: corners, levelM, slopeRatio } = ground
  const last = slopeRatio.length
  const all = makeSites(sites.count + corners.length)
  const place: number[] = []
  let next = 0
  for (let k = 0; k <= last; k++) {
    const x = corners[k]!
    while (next < sites.count && sites.x[next]! <= x + SAME_PLACE_M) {
      place.push(all.count)
      addSite(all, sites.x[next]!, sites.level[next]!, sites.kind[next]!)
      next++
    }
    const isConvex = k === 0 || k === last || slopeRatio[k]! < slopeRatio[k - 1]!
    const isTaken = !isConvex || (next > 0 && Math.abs(sites.x[next - 1]! - x) <= SAME_PLACE_M) || isNear(clampX, x)
    cornerSite.push(isTaken ? -1 : all.count)
    if (!isTaken) addSite(all, x, levelM[k]!, GROUND_CORNER)
  }
  for (; next < sites.count; next++) {
    place.push(all.count)
    addSite(all, sites.x[next]!, sites.level[next]!, sites.kind[next]!)
  }
  for (let i = 0; i < siteOfSupport.length; i++) if (siteOfSupport[i]! >= 0) siteOfSupport[i] = place[siteOfSupport[i]!]!
  return all
}

function isNear(clampX: readonly number[], x: number): boolean {
  for (const clamp of clampX) if (Math.abs(clamp - x) <= SAME_PLACE_M) return true
  return false
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
  const siteOfSupport: number[] = []
  const own = supportSites(input, { startM, endM, referenceM, clamps, siteOfSupport })
  if (typeof own === 'string') return own
  const clampX = clamps.map((clamp) => Math.min(Math.max(clamp.xM, startM), endM))
  const cornerSite: number[] = []
  const sites = ground ? joinSites(own, { ground, clampX, siteOfSupport, cornerSite }) : own
  let twoWayCount = 0
  for (let i = 0; i < sites.count; i++) if (sites.kind[i] === TWO_WAY) twoWayCount++
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
    siteCount: sites.count,
    siteX: sites.x,
    siteLevel: sites.level,
    siteKind: sites.kind,
    siteOfSupport,
    clampX,
    clampLevel: clamps.map((clamp) => clamp.levelM - referenceM),
    clampSlope: clamps.map((clamp) => clamp.slopeRatio),
    clampOrder: clamps.length > 0 ? clamps.map((clamp) => input.clamps!.indexOf(clamp)) : [],
    ground,
    cornerSite,
    twoWayCount,
    meanLoad: (c * lengthM) / Math.max(1, own.count + clamps.length),
  }
}
