/** What each `check` of shared/cases/beam-cases.json computes, in the unit of its row. Spans of 7.3 m, w 190 N/m, EI 1.3e5 N·m². */
import { solveContactBeam } from '../../../src/engine/beam/solveContactBeam.ts'
import type { ContactBeamInput, ContactBeamResult, SlopeClamp } from '../../../src/engine/beam/types.ts'

const L = 7.3
const w = 190
const EI = 1.3e5
const section = { bendingStiffnessNm2: EI, lineLoadNPerM: w }

const force = w * L
const moment = w * L * L
const level = (w * L ** 4) / EI
const slope = (w * L ** 3) / EI

export function solved(input: Omit<ContactBeamInput, 'section'>): ContactBeamResult {
  const result = solveContactBeam({ section, ...input })
  if (result.status !== 'ok') throw new Error(`${result.status}: ${result.reason}`)
  return result
}

const atZero = (...xs: readonly number[]): { xM: number; levelM: number }[] => xs.map((xM) => ({ xM, levelM: 0 }))

/** Moment extreme inside a span from three points of the parabola: M = M(a) + S t − w t²/2. */
function spanMoment(result: ContactBeamResult, fromM: number, toM: number): { momentNm: number; atM: number } {
  const middleM = (fromM + toM) / 2
  const { momentNm, shearN } = result.at(middleM)
  // M′ = shear − w t = 0
  return { momentNm: momentNm + (shearN * shearN) / (2 * w), atM: middleM + shearN / w }
}

function equalSpans(spans: number, quantity: string): number[] {
  const supports = atZero(...Array.from({ length: spans + 1 }, (_, i) => i * L))
  const result = solved({ lengthM: spans * L, supports })
  const spanList = Array.from({ length: spans }, (_, i) => i)
  switch (quantity) {
    case 'reactions':
      return result.supports.map((s) => s.reactionN / force)
    case 'supportMoments':
      return supports.map(({ xM }) => -result.at(xM).momentNm / moment)
    case 'spanMoments':
      return spanList.map((i) => spanMoment(result, i * L, (i + 1) * L).momentNm / moment)
    case 'spanMomentPlaces':
      return spanList.map((i) => spanMoment(result, i * L, (i + 1) * L).atM / L - i)
    case 'sags':
      return result.sags.map((s) => s.sagM / level)
    case 'largestSag':
      return [Math.max(...result.sags.map((s) => s.sagM)) / level]
    case 'sagPlaces':
      return result.sags.map((s, i) => s.atM / L - i)
    case 'slopes':
      return spanList.map((i) => -result.at(i * L).slopeRatio / slope)
  }
  throw new Error(`unknown quantity ${quantity}`)
}

const clamp = (xM: number): SlopeClamp => ({ xM, levelM: 0, slopeRatio: 0 })

const singles: Readonly<Record<string, () => ContactBeamResult>> = {
  simple: () => solved({ lengthM: L, supports: atZero(0, L) }),
  propped: () => solved({ lengthM: L, supports: atZero(L), clamps: [clamp(0)] }),
  fixed: () => solved({ lengthM: L, supports: [], clamps: [clamp(0), clamp(L)] }),
  cantilever: () => solved({ lengthM: L, supports: [], clamps: [clamp(0)] }),
}

function single(name: string, quantity: string): number[] {
  const result = singles[name]!()
  const sag = result.sags[0]
  switch (quantity) {
    case 'reactions':
      return [...result.clamps.map((c) => c.forceN / force), ...result.supports.map((s) => s.reactionN / force)]
    case 'maxMoment':
      return [result.maxMoment.momentNm / moment]
    case 'fixedMoment':
      return [result.clamps[0]!.momentRightNm / moment]
    case 'spanMoment':
      return [spanMoment(result, 0, L).momentNm / moment]
    case 'spanMomentPlace':
      return [1 - spanMoment(result, 0, L).atM / L]
    case 'sag':
      return [sag!.sagM / level]
    case 'sagPlace':
      return [1 - sag!.atM / L]
    case 'endSlope':
    case 'propSlope':
    case 'tipSlope':
      return [Math.abs(result.ends.slopeRatio[1]) / slope]
    case 'tipDrop':
      return [-result.ends.levelM[1] / level]
  }
  throw new Error(`unknown quantity ${quantity}`)
}

function overhang(share: number, quantity: string): number[] {
  const result = solved({ lengthM: L * (1 + share), supports: atZero(0, L) })
  switch (quantity) {
    case 'reactions':
      return result.supports.map((s) => s.reactionN / force)
    case 'spanMoment':
      return [spanMoment(result, 0, L).momentNm / moment]
    case 'supportMoment':
      return [result.at(L).momentNm / moment]
    case 'tipDrop':
      return [-result.ends.levelM[1] / level]
  }
  throw new Error(`unknown quantity ${quantity}`)
}

function doubleOverhang(share: number, quantity: string): number[] {
  const result = solved({ startM: -share * L, lengthM: L * (1 + 2 * share), supports: atZero(0, L) })
  switch (quantity) {
    case 'supportMoment':
      return [result.at(0).momentNm / moment]
    case 'middleMoment':
      return [result.at(L / 2).momentNm / moment]
    case 'middleSag':
      return [-result.at(L / 2).levelM / level]
    case 'tipDrop':
      return [-result.ends.levelM[0] / level]
  }
  throw new Error(`unknown quantity ${quantity}`)
}

/** Where two slings make the moments over them and between them equal, by halving. */
function equalMoment(): number[] {
  let low = 0.1
  let high = 0.3
  for (let i = 0; i < 60; i++) {
    const a = (low + high) / 2
    const result = solved({ lengthM: L, supports: atZero(a * L, (1 - a) * L) })
    if (result.at(L / 2).momentNm > -result.at(a * L).momentNm) low = a
    else high = a
  }
  return [(low + high) / 2]
}

function lifted(quantity: string): number[] {
  const heightM = 0.31
  const ground = { xM: [0], levelM: [0] }
  const isRoller = quantity.startsWith('roller')
  const xM = isRoller ? 40 : 0
  const result = solved({ lengthM: 80, supports: [{ xM, levelM: heightM }], ground })
  const edge = result.groundContacts[result.groundContacts.length - 1]!
  const length = edge.startM - xM
  switch (quantity) {
    case 'endLength':
      return [length / ((24 * EI * heightM) / w) ** 0.25]
    case 'rollerLength':
      return [length / ((72 * EI * heightM) / w) ** 0.25]
    case 'endForce':
    case 'rollerForce':
      return [result.supports[0]!.reactionN / (w * length)]
    case 'rollerMoment':
      return [result.at(xM).momentNm / (w * length * length)]
  }
  throw new Error(`unknown quantity ${quantity}`)
}

interface CheckInput {
  spans?: number
  case?: string
  overhang?: number
  quantity?: string
}

/** Our values for a row, in the unit of the row. */
export function beamCheck(check: string, input: CheckInput): number[] {
  const quantity = input.quantity ?? ''
  switch (check) {
    case 'equalSpans':
      return equalSpans(input.spans!, quantity)
    case 'single':
      return single(input.case!, quantity)
    case 'overhang':
      return overhang(input.overhang!, quantity)
    case 'doubleOverhang':
      return doubleOverhang(input.overhang!, quantity)
    case 'equalMoment':
      return equalMoment()
    case 'lifted':
      return lifted(quantity)
  }
  throw new Error(`unknown check ${check}`)
}
