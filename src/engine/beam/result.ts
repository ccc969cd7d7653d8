import type { Chain } from './chain.ts'
import { CLAMP_LEFT, GROUND_PIN, LIES_FROM, POINT, TOUCH } from './chain.ts'
import type { BeamModel } from './model.ts'
import { GROUND_CORNER } from './model.ts'
import type { BentShape, SagCursor } from './shape.ts'
import { curveOfShape, deepestBelowChord, extremesOf, pointOnShape, shapeOf } from './shape.ts'
import type { ClampResult, ContactBeamInput, ContactBeamResult, ContactBeamStatus, GroundContact, SpanSag, SupportResult } from './types.ts'
import { makeSpan } from './violation.ts'

/** Slope past which the small-slope beam errs by more than ½ % (slope²/2). */
export const SMALL_SLOPE_LIMIT_RATIO = 0.1
export const MARGINAL_LOAD_SHARE = 0.01
export const MARGINAL_GAP_M = 0.5e-3
/** A gap up to this is contact (the penetration we accept). */
const CLOSED_GAP_M = 1e-9

/** A result without a solution: lists empty, numbers NaN. */
export function emptyResult(status: ContactBeamStatus, reason: string, passes: number): ContactBeamResult {
  return {
    status,
    reason,
    passes,
    supports: [],
    clamps: [],
    groundContacts: [],
    groundTotalN: NaN,
    sags: [],
    ends: { levelM: [NaN, NaN], slopeRatio: [NaN, NaN] },
    maxMoment: { momentNm: NaN, atM: NaN },
    maxSlopeRatio: NaN,
    outOfSmallSlope: false,
    at: () => ({ levelM: NaN, slopeRatio: NaN, momentNm: NaN, shearN: NaN }),
    curve: () => ({ xM: new Float64Array(0), levelM: new Float64Array(0) }),
    pattern: { carrying: [], ground: [] },
  }
}

function groundContactsOf(chain: Chain, model: BeamModel): GroundContact[] {
  const contacts: GroundContact[] = []
  if (model.ground === null) return contacts
  const { kind, ref, x, reaction } = chain
  const EI = model.stiffnessNm2
  for (let j = 0; j < chain.count; j++) {
    const type = kind[j]!
    const isPoint = type === TOUCH || type === GROUND_PIN || (type === POINT && model.siteKind[ref[j]!] === GROUND_CORNER)
    if (isPoint) contacts.push({ startM: x[j]!, endM: x[j]!, kind: 'point', forceN: Math.max(0, EI * reaction[j]!) })
    else if (type === LIES_FROM) {
      const forceN = EI * (reaction[j]! + reaction[j + 1]!) + model.lineLoadNPerM * (x[j + 1]! - x[j]!)
      contacts.push({ startM: x[j]!, endM: x[j + 1]!, kind: 'interval', forceN })
    }
  }
  return contacts
}

interface Carried {
  /** Per site: force on the pipe over EI, NaN where the site is not in the chain. */
  reactionOfSite: Float64Array
  /** Supports sharing a site. */
  sharersOfSite: Uint16Array
}

function carriedBySites(chain: Chain, model: BeamModel): Carried {
  const reactionOfSite = new Float64Array(model.siteCount).fill(NaN)
  const sharersOfSite = new Uint16Array(model.siteCount)
  for (let j = 0; j < chain.count; j++) if (chain.kind[j] === POINT) reactionOfSite[chain.ref[j]!] = chain.reaction[j]!
  for (let i = 0; i < model.siteOfSupport.length; i++) if (model.siteOfSupport[i]! >= 0) sharersOfSite[model.siteOfSupport[i]!]!++
  return { reactionOfSite, sharersOfSite }
}

function supportsOf(input: ContactBeamInput, model: BeamModel, shape: BentShape, carried: Carried): SupportResult[] {
  const results: SupportResult[] = []
  const meanN = model.meanLoad * model.stiffnessNm2
  for (let i = 0; i < input.supports.length; i++) {
    const support = input.supports[i]!
    const site = model.siteOfSupport[i]!
    const force = site >= 0 ? carried.reactionOfSite[site]! : NaN
    let reactionN = 0
    let gapM = 0
    let lifted = false
    if (force === force) {
      const share = (force * model.stiffnessNm2) / carried.sharersOfSite[site]!
      reactionN = support.twoWay || share > 0 ? share : 0
    } else {
      const level = site >= 0 ? model.referenceM + model.siteLevel[site]! : support.levelM
      gapM = Math.max(0, pointOnShape(shape, model, support.xM).levelM - level)
      lifted = gapM > CLOSED_GAP_M
    }
    const marginal = lifted ? gapM < MARGINAL_GAP_M : Math.abs(reactionN) < MARGINAL_LOAD_SHARE * meanN
    results.push(support.id === undefined ? { reactionN, gapM, lifted, marginal } : { reactionN, gapM, lifted, marginal, id: support.id })
  }
  return results
}

function clampsOf(chain: Chain, model: BeamModel): ClampResult[] {
  const results: ClampResult[] = []
  const EI = model.stiffnessNm2
  for (let j = 0; j < chain.count; j++) {
    if (chain.kind[j] !== CLAMP_LEFT) continue
    const { reaction, curvature, x } = chain
    results[model.clampOrder[chain.ref[j]!]!] = {
      xM: x[j]!,
      forceN: EI * (reaction[j]! + reaction[j + 1]!),
      momentLeftNm: EI * (curvature[j]! - model.bowPerM),
      momentRightNm: EI * (curvature[j + 1]! - model.bowPerM),
    }
  }
  return results
}

function sagsOf(chain: Chain, model: BeamModel, shape: BentShape): SpanSag[] {
  const sags: SpanSag[] = []
  const cursor: SagCursor = { part: 0, span: makeSpan(), stretch: { from: 0, to: 0 } }
  let fromX = NaN
  let fromLevel = 0
  for (let j = 0; j < chain.count; j++) {
    const type = chain.kind[j]!
    const isSupport = type === POINT && model.siteKind[chain.ref[j]!] !== GROUND_CORNER
    if (!isSupport && type !== CLAMP_LEFT) continue
    const toX = chain.x[j]!
    const toLevel = chain.level[j]!
    if (fromX < toX) {
      const { sagM, atM } = deepestBelowChord(shape, cursor, { fromX, toX, fromLevel, toLevel })
      sags.push({ fromM: fromX, toM: toX, sagM, atM })
    }
    fromX = toX
    fromLevel = toLevel
  }
  return sags
}

/** The result of a settled chain. */
export function resultOf(
  input: ContactBeamInput,
  model: BeamModel,
  chain: Chain,
  outcome: { status: ContactBeamStatus; reason?: string; residual?: number; passes: number },
): ContactBeamResult {
  const shape = shapeOf(chain, model)
  const carried = carriedBySites(chain, model)
  const groundContacts = groundContactsOf(chain, model)
  const extremes = extremesOf(shape, model)
  const tail = pointOnShape(shape, model, model.startM)
  const nose = pointOnShape(shape, model, model.endM)
  let groundTotalN = 0
  for (const contact of groundContacts) groundTotalN += contact.forceN
  const carrying: boolean[] = []
  for (let i = 0; i < model.siteOfSupport.length; i++) {
    const site = model.siteOfSupport[i]!
    carrying.push(site >= 0 && carried.reactionOfSite[site] === carried.reactionOfSite[site])
  }
  return {
    ...outcome,
    supports: supportsOf(input, model, shape, carried),
    clamps: clampsOf(chain, model),
    groundContacts,
    groundTotalN,
    sags: sagsOf(chain, model, shape),
    ends: { levelM: [tail.levelM, nose.levelM], slopeRatio: [tail.slopeRatio, nose.slopeRatio] },
    maxMoment: { momentNm: extremes.momentNm, atM: extremes.momentAtM },
    maxSlopeRatio: extremes.slopeRatio,
    outOfSmallSlope: extremes.slopeRatio > SMALL_SLOPE_LIMIT_RATIO,
    at: (xM) => pointOnShape(shape, model, xM),
    curve: (stepM) => curveOfShape(shape, model, stepM),
    pattern: { carrying, ground: groundContacts.map(({ kind, startM, endM }) => ({ kind, startM, endM })) },
  }
}
