/**
 * Closed forms of spans under their own weight: first guesses and test values; nose and lay-down are in ../beam/closedForms.ts.
 * A finding always comes from the contact beam. Small slopes, even stiffness, supports that do not lift.
 */
import type { BendingPipe } from '../beam/closedForms.ts'
import { requireNumber } from '../outcome.ts'

/** Sag of a simple span: 5 w L⁴ / 384 EI. Source: textbook (AISC Table 3-23 case 1). */
export function simpleSpanSagM({ lineLoadNPerM: w, bendingStiffnessNm2: EI }: BendingPipe, spanM: number): number {
  return (5 * w * spanM ** 4) / (384 * EI)
}

/** Simple span that sags by y: (384 EI y / 5w)^¼, the inverse of `simpleSpanSagM`. */
export function simpleSpanForSagM({ lineLoadNPerM: w, bendingStiffnessNm2: EI }: BendingPipe, sagM: number): number {
  return ((384 * EI * sagM) / (5 * w)) ** 0.25
}

/** Sag of an inner span of many equal ones, both ends level: w S⁴ / 384 EI. Source: textbook, fixed-fixed beam. */
export function innerSpanSagM({ lineLoadNPerM: w, bendingStiffnessNm2: EI }: BendingPipe, spanM: number): number {
  return (w * spanM ** 4) / (384 * EI)
}

export interface EqualSpans {
  /** One a support, up positive. */
  reactionsN: number[]
  /** One a support; hogging is negative. */
  supportMomentsNm: number[]
  /** Largest sagging moment of each span. */
  spanMomentsNm: number[]
  /** Largest sag of each span below its chord, at least 0. */
  sagsM: number[]
}

/** Support moments of equal spans by the three-moment equation, in w L². Thomas elimination; ends are free to turn. */
function supportMomentRatios(spanCount: number): number[] {
  const ratios = new Array<number>(spanCount + 1).fill(0)
  const diagonal: number[] = []
  const right: number[] = []
  for (let index = 1; index < spanCount; index += 1) {
    const factor = index === 1 ? 0 : 1 / diagonal[index - 2]!
    diagonal.push(4 - factor)
    right.push(-0.5 - (index === 1 ? 0 : factor * right[index - 2]!))
  }
  for (let index = spanCount - 1; index >= 1; index -= 1) {
    ratios[index] = (right[index - 1]! - ratios[index + 1]!) / diagonal[index - 1]!
  }
  return ratios
}

/** Largest sag of one span of length 1 under w = EI = 1, from its end moments: the slope is bisected to zero. */
function spanSagRatio(momentLeft: number, momentRight: number): number {
  const shear = 0.5 + momentRight - momentLeft
  // w″ = M(x) = M₀ + V x − x²/2 with w up positive; the chord is zero at both ends.
  const slopeLeft = -(momentLeft / 2 + shear / 6 - 1 / 24)
  const levelAt = (x: number): number => slopeLeft * x + (momentLeft * x ** 2) / 2 + (shear * x ** 3) / 6 - x ** 4 / 24
  const slopeAt = (x: number): number => slopeLeft + momentLeft * x + (shear * x ** 2) / 2 - x ** 3 / 6
  // Between the two points where the moment is zero the slope only rises, so it has one zero there: the sag.
  const root = Math.sqrt(Math.max(0, shear ** 2 + 2 * momentLeft))
  let low = Math.max(0, shear - root)
  let high = Math.min(1, shear + root)
  for (let pass = 0; pass < 60; pass += 1) {
    const middle = (low + high) / 2
    if (slopeAt(middle) < 0) low = middle
    else high = middle
  }
  return Math.max(0, -levelAt((low + high) / 2))
}

/**
 * Equal spans of a continuous pipe under its own weight on level supports.
 *
 * Model:  three-moment equation, free ends over the outer supports. Cost O(n).
 * Input:  spanCount ≥ 1.
 * Fails:  RangeError for a count that is not whole or a length, weight or stiffness that is not positive.
 * Source: three-moment theorem; reactions and moments agree with the printed table of Civil Engineering Formulas, Table 2.1.
 */
export function equalSpans(beam: BendingPipe, input: { spanCount: number; spanM: number }): EqualSpans {
  const { lineLoadNPerM: w, bendingStiffnessNm2: EI } = beam
  const { spanCount, spanM: L } = input
  if (!Number.isInteger(spanCount) || spanCount < 1) throw new RangeError(`spanCount is ${spanCount}, must be a whole number of at least 1`)
  requireNumber('spanM', L, { above: 0 })
  requireNumber('lineLoadNPerM', w, { above: 0 })
  requireNumber('bendingStiffnessNm2', EI, { above: 0 })
  const ratios = supportMomentRatios(spanCount)
  const shears = ratios.slice(1).map((right, index) => 0.5 + right - ratios[index]!)
  return {
    reactionsN: ratios.map((_, index) => ((shears[index] ?? 0) + (index === 0 ? 0 : 1 - shears[index - 1]!)) * w * L),
    supportMomentsNm: ratios.map((ratio) => ratio * w * L ** 2),
    spanMomentsNm: shears.map((shear, index) => (ratios[index]! + shear ** 2 / 2) * w * L ** 2),
    sagsM: shears.map((_, index) => (spanSagRatio(ratios[index]!, ratios[index + 1]!) * w * L ** 4) / EI),
  }
}

/**
 * Where to hold a stick with two slings or beams so that the moment at them equals the moment between: 0.2071 of the
 * length from each end. Source: statics, wa²/2 = w(L² − 4a²)/8.
 */
export const equalMomentPickRatio = 1 / Math.sqrt(8) / (1 + 2 / Math.sqrt(8))
