/** How a job is made in several strings where the yard is shorter than one. */
import { requireNumber } from '../outcome.ts'
import { madeLengthM } from './stickPlan.ts'

export interface StringSplitInput {
  /** Sticks of the whole job. */
  sticks: number
  stickLengthM: number
  jointLossM: number
  /** Longest string the yard has room for, rack, machine and pull lead taken off. */
  roomM: number
}

export interface StringSplit {
  /** Sticks of each string, in the order they are made; the longer ones first. */
  counts: readonly number[]
  /** Most sticks a string may have here. */
  mostSticks: number
  /** Joints made later, between two strings. */
  midJoints: number
}

/** A string this much longer than the room still counts as fitting: rounding of the arithmetic, not of the pipe. */
const ARITHMETIC_M = 1e-9

/** Sticks of a string of at most that length: largest n with n·S − (n − 1)·loss ≤ room, 0 where not even one fits. */
export function mostSticksIn({ stickLengthM, jointLossM, roomM }: Omit<StringSplitInput, 'sticks'>): number {
  requireNumber('stickLengthM', stickLengthM, { above: 0 })
  requireNumber('jointLossM', jointLossM, { atLeast: 0 })
  if (jointLossM >= stickLengthM) throw new RangeError(`jointLossM is ${jointLossM}, must be less than the stick`)
  if (!(roomM > 0)) return 0
  const guess = Math.max(0, Math.floor((roomM - jointLossM) / (stickLengthM - jointLossM)))
  return madeLengthM(guess + 1, stickLengthM, jointLossM) <= roomM + ARITHMETIC_M ? guess + 1 : guess
}

/** A count shared out as evenly as whole sticks allow, the larger shares first. */
export function evenShares(sticks: number, parts: number): number[] {
  requireNumber('parts', parts, { above: 0 })
  const least = Math.floor(sticks / parts)
  return Array.from({ length: parts }, (_, i) => least + (i < sticks - least * parts ? 1 : 0))
}

/**
 * Fewest strings that fit, as even as whole sticks allow.
 *
 * Model:  most sticks a string n as `mostSticksIn`; m = ⌈N/n⌉ strings with m − 1 joints between them. A joint between two
 *         strings loses what any joint loses, so the whole length stays that of one string.
 * Output: null where not even one stick fits.
 * Fails:  RangeError for lengths that are not positive, a loss of a whole stick or more, a count below 1.
 * Source: arithmetic; docs/formulas/strings.md.
 */
export function bestSplit(input: StringSplitInput): StringSplit | null {
  requireNumber('sticks', input.sticks, { atLeast: 1 })
  const mostSticks = mostSticksIn(input)
  if (mostSticks < 1) return null
  const parts = Math.ceil(input.sticks / mostSticks)
  return { counts: evenShares(input.sticks, parts), mostSticks, midJoints: parts - 1 }
}
