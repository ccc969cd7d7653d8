/**
 * Closed forms for first guesses and as test values. Every finding comes from the contact beam, never from these.
 * Derivations: docs/formulas/contact-beam.md, "Closed forms".
 */

export interface BendingPipe {
  /** EI, > 0. */
  bendingStiffnessNm2: number
  /** w, > 0. */
  lineLoadNPerM: number
}

/** Turn of the last of many evenly spaced level stands under an overhang of one spacing, over wS³/EI: 5/(24√3) = 5√3/72. */
export const OVERHANG_ROOT_FACTOR = 5 / (24 * Math.sqrt(3))

/**
 * Droop of a free nose one spacing past the last of many evenly spaced level stands, over wS⁴/EI: ⅛ of the cantilever
 * and the turn of its root, 0.2453, some 94 times the sag between the stands (1/384).
 */
export const NOSE_DROOP_MANY_SPANS_FACTOR = 1 / 8 + OVERHANG_ROOT_FACTOR

/** The same past jaws that hold the pipe level: the cantilever's 1/8. Root rotation of the jaws comes on top. */
export const NOSE_DROOP_JAWS_FACTOR = 1 / 8

/** What holds the pipe behind the last stand. */
export type NoseRoot = 'manySpans' | 'closedJaws'

const droopFactor = (root: NoseRoot): number => (root === 'manySpans' ? NOSE_DROOP_MANY_SPANS_FACTOR : NOSE_DROOP_JAWS_FACTOR)

function requirePositive(name: string, value: number): void {
  if (!(value > 0) || !Number.isFinite(value)) throw new RangeError(`${name} must be a finite number above 0, got ${value}`)
}

function requirePipe({ bendingStiffnessNm2, lineLoadNPerM }: BendingPipe): void {
  requirePositive('bendingStiffnessNm2', bendingStiffnessNm2)
  requirePositive('lineLoadNPerM', lineLoadNPerM)
}

/**
 * Free length from the last level saddle, heightM above flat ground, to the touchdown: L₀ = (72 EI h / w)^¼.
 *
 * Model:  Euler–Bernoulli, small slope; level at the saddle (two or more stands on the jaw line behind it), tangent and
 *         without moment at the touchdown. On evenly sloping ground take h from the ground line.
 * Valid:  L₀ ≫ h (slope at most 16/9·h/L₀ ≤ 0.1).       Fails: RangeError for anything not above 0.
 * Source: derived; docs/formulas/contact-beam.md.
 */
export function freeLayDownLengthM(input: BendingPipe & { heightM: number }): number {
  requirePipe(input)
  requirePositive('heightM', input.heightM)
  const { bendingStiffnessNm2: EI, lineLoadNPerM: w, heightM: h } = input
  return (72 * EI * h / w) ** 0.25
}

/**
 * Height of the pipe over the ground within a free lay-down: h(4ξ³ − 3ξ⁴), ξ = distance back from touchdown ÷ L₀.
 *
 * Input: distanceM from the touchdown toward the saddle, held to 0 … lengthM. Output: ≥ 0; 74, 31 and 5 % of h at ¾, ½ and ¼.
 * Source: derived; docs/formulas/contact-beam.md.
 */
export function layDownHeightM(input: { distanceM: number; lengthM: number; heightM: number }): number {
  requirePositive('lengthM', input.lengthM)
  const xi = Math.min(1, Math.max(0, input.distanceM / input.lengthM))
  return input.heightM * xi ** 3 * (4 - 3 * xi)
}

/**
 * Moment at the last level saddle of a free lay-down, −w L₀²/6 (hogging), and the force of the ground at the touchdown, w L₀/3.
 * Source: derived; docs/formulas/contact-beam.md.
 */
export function layDownEndForces(input: { lineLoadNPerM: number; lengthM: number }): { saddleMomentNm: number; touchdownForceN: number } {
  const { lineLoadNPerM: w, lengthM: L } = input
  requirePositive('lineLoadNPerM', w)
  requirePositive('lengthM', L)
  return { saddleMomentNm: (-w * L * L) / 6, touchdownForceN: (w * L) / 3 }
}

/**
 * Droop of the free nose just before it reaches the next stand, down positive.
 *
 * Model:  level stands at even spacing S with many spans behind (0.2453 w S⁴/EI), or jaws that hold it level (0.125).
 * Valid:  the nose is free; it does not say whether the droop reaches the ground first.
 * Source: derived; docs/formulas/contact-beam.md.
 */
export function noseDroopM(input: BendingPipe & { spacingM: number; root: NoseRoot }): number {
  requirePipe(input)
  requirePositive('spacingM', input.spacingM)
  const { bendingStiffnessNm2: EI, lineLoadNPerM: w, spacingM: S } = input
  return (droopFactor(input.root) * w * S ** 4) / EI
}

/**
 * Largest even stand spacing at which a free nose droops no more than `droopM`: S = (δ EI / (0.2453 w))^¼ with many spans behind.
 * Source: derived; docs/formulas/contact-beam.md.
 */
export function noseLandingSpacingM(input: BendingPipe & { droopM: number; root: NoseRoot }): number {
  requirePipe(input)
  requirePositive('droopM', input.droopM)
  const { bendingStiffnessNm2: EI, lineLoadNPerM: w, droopM } = input
  return ((droopM * EI) / (droopFactor(input.root) * w)) ** 0.25
}
