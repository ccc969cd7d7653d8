import type { Chain } from './chain.ts'
import { CLAMP_LEFT, GROUND_PIN, LIES_FROM, POINT, TOUCH } from './chain.ts'
import type { BeamModel } from './model.ts'
import { GROUND_CORNER } from './model.ts'
import type { BentShape, SagCursor } from './shape.ts'
import { curveOfShape, deepestBelowChord, extremesOf, levelOnShape, partAt, pointOnShape, shapeOf } from './shape.ts'
import type { ClampResult, ContactBeamInput, ContactBeamResult, ContactBeamStatus, ContactPattern, GroundContact, SpanSag, SupportResult } from './types.ts'
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
  reactionOfSite: number[]
  /** Supports sharing a site. */
  sharersOfSite: number[]
}

function carriedBySites(chain: Chain, model: BeamModel): Carried {
  const reactionOfSite: number[] = []
  const sharersOfSite: number[] = []
  for (let i = 0; i < model.siteCount; i++) {
    reactionOfSite.push(NaN)
    sharersOfSite.push(0)
  }
  for (let j = 0; j < chain.count; j++) if (chain.kind[j] === POINT) reactionOfSite[chain.ref[j]!] = chain.reaction[j]!
  for (const site of model.siteOfSupport) if (site >= 0) sharersOfSite[site]!++
  return { reactionOfSite, sharersOfSite }
}

function supportsOf(input: ContactBeamInput, model: BeamModel, shape: BentShape, carried: Carried): SupportResult[] {
  const { supports } = input
  const { siteOfSupport, referenceM, siteLevel, stiffnessNm2 } = model
  const { reactionOfSite, sharersOfSite } = carried
  const marginalN = MARGINAL_LOAD_SHARE * model.meanLoad * stiffnessNm2
  const results: SupportResult[] = []
  let part = 0
  for (let i = 0; i < supports.length; i++) {
    const support = supports[i]!
    const site = siteOfSupport[i]!
    const force = site >= 0 ? reactionOfSite[site]! : NaN
    let reactionN = 0
    let gapM = 0
    let lifted = false
    if (force === force) {
      const share = (force * stiffnessNm2) / sharersOfSite[site]!
      reactionN = support.twoWay || share > 0 ? share : 0
    } else {
      const level = site >= 0 ? siteLevel[site]! : support.levelM - referenceM
      part = partAt(shape, support.xM, part)
      gapM = Math.max(0, levelOnShape(shape, part, Math.min(Math.max(support.xM, model.startM), model.endM)) - level)
      lifted = gapM > CLOSED_GAP_M
    }
    const marginal = lifted ? gapM < MARGINAL_GAP_M : Math.abs(reactionN) < marginalN
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
  const resting: ContactPattern['ground'][number][] = []
  for (const site of model.siteOfSupport) carrying.push(site >= 0 && carried.reactionOfSite[site] === carried.reactionOfSite[site])
  for (const { kind, startM, endM } of groundContacts) resting.push({ kind, startM, endM })
  const result: ContactBeamResult = {
    status: outcome.status,
    passes: outcome.passes,
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
    pattern: { carrying, ground: resting },
  }
  if (outcome.reason !== undefined) result.reason = outcome.reason
  if (outcome.residual !== undefined) result.residual = outcome.residual
  return result
}
