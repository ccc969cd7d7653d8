/**
 * Plain numbers as text: rounded, never −0, a decimal point in both languages (a site with two
 * languages must not have two decimal marks), groups of three set apart by a narrow space from
 * five digits on. parse.ts reads every text made here.
 */
export const minusSign = '\u2212'
export const thinSpace = '\u2009'
/** Between groups of three digits; does not break at the end of a line. */
export const groupSpace = '\u202f'

/** Rounds to a step (0.01, 1, 10 …), halves away from zero; +0 for −0. */
export function roundToStep(value: number, step: number): number {
  // Dividing by 1/step keeps decimal results short: 381 / 100 is 3.81, 381 × 0.01 is not.
  const scaled = step < 1 ? value * Math.round(1 / step) : value / step
  const whole = Math.sign(scaled) * Math.round(Math.abs(scaled))
  const rounded = step < 1 ? whole / Math.round(1 / step) : whole * step
  return rounded === 0 ? 0 : rounded
}

/** The step that leaves `digits` significant digits, never finer than `finest`. */
export function significantStep(value: number, digits: number, finest: number): number {
  if (value === 0) return finest
  const exponent = Math.floor(Math.log10(Math.abs(value))) - digits + 1
  return Math.max(10 ** exponent, finest)
}

/** A number already rounded, as text with up to `decimals` places, trailing zeros dropped unless kept. */
export function numberText(value: number, decimals: number, keepZeros = false): string {
  const fixed = Math.abs(value).toFixed(decimals)
  const trimmed = keepZeros || !fixed.includes('.') ? fixed : fixed.replace(/\.?0+$/, '')
  const [whole = '0', fraction] = trimmed.split('.')
  const grouped = whole.length >= 5 ? whole.replace(/\B(?=(\d{3})+$)/g, groupSpace) : whole
  const text = fraction === undefined ? grouped : `${grouped}.${fraction}`
  return value < 0 && Number(trimmed) !== 0 ? minusSign + text : text
}

/** Decimal places a step needs: 0.01 → 2, 10 → 0. */
export function decimalsOfStep(step: number): number {
  return step >= 1 ? 0 : Math.max(0, Math.ceil(-Math.log10(step) - 1e-9))
}

/** A number to at most `digits` significant digits, never finer than `finest`. */
export function significantText(value: number, digits: number, finest: number): string {
  const step = significantStep(value, digits, finest)
  const rounded = roundToStep(value, step)
  return numberText(rounded, decimalsOfStep(step))
}
