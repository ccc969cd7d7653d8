/** How many sticks make a string, and what one fewer would give. */
import { inchM } from '../../units/factors.ts'
import { interpolate } from '../interpolate.ts'
import { known, missingAmong, requireNumber, uncovered } from '../outcome.ts'
import type { Outcome } from '../outcome.ts'
import { jointLossRows } from './tables.ts'

export interface StickPlanInput {
  /** Needed once installed. */
  neededLengthM: number | null
  /** Tie-in tails, pull-head cut-off, test joint: on top of the needed length. */
  tailsM: number | null
  stickLengthM: number | null
  /** Lost at each joint: facing of both ends and melt displaced. */
  jointLossM: number | null
  /** A count somebody decided; else it is worked out. */
  stickCount?: number | null
  otherStickLengthsM?: readonly number[]
}

export interface StickCount {
  stickLengthM: number
  sticks: number
  joints: number
  madeLengthM: number
  /** Made less wanted; negative = short. */
  overM: number
}

export interface StickPlan extends StickCount {
  wantedLengthM: number
  isShort: boolean
  /** What one stick fewer gives; null where there is only one. `shortM` is negative where it would still do. */
  oneFewer: { sticks: number; joints: number; madeLengthM: number; shortM: number } | null
  /** The same string from other stick lengths, in the order given. */
  alternatives: StickCount[]
}

/** A made length this much under the wanted one still counts as reaching it: rounding of the arithmetic, not of the pipe. */
const arithmeticToleranceM = 1e-9

/** N sticks of length S with N − 1 joints: N · S − (N − 1) · loss. */
export function madeLengthM(sticks: number, stickLengthM: number, jointLossM: number): number {
  return sticks * stickLengthM - (sticks - 1) * jointLossM
}

/** Length lost at a joint by outside diameter: house table, straight lines between sizes, the last line carried on. */
export function houseJointLossM(odM: number): number {
  requireNumber('odM', odM, { above: 0 })
  const odIn = odM / inchM
  const [firstSize, firstLoss] = jointLossRows[0]!
  const [lastSize, lastLoss] = jointLossRows.at(-1)!
  const [beforeSize, beforeLoss] = jointLossRows.at(-2)!
  if (odIn <= firstSize) return firstLoss * inchM
  if (odIn > lastSize) return (lastLoss + ((lastLoss - beforeLoss) / (lastSize - beforeSize)) * (odIn - lastSize)) * inchM
  return interpolate(jointLossRows, odIn)! * inchM
}

/** Smallest N with N·S − (N−1)·loss ≥ wanted, at least 1. */
function fewestSticks(wantedM: number, stickLengthM: number, jointLossM: number): number {
  const guess = Math.max(1, Math.ceil((wantedM - jointLossM) / (stickLengthM - jointLossM)) - 1)
  return madeLengthM(guess, stickLengthM, jointLossM) >= wantedM - arithmeticToleranceM ? guess : guess + 1
}

function countFor(wantedM: number, stickLengthM: number, jointLossM: number, stickCount: number | null): StickCount {
  const sticks = stickCount ?? fewestSticks(wantedM, stickLengthM, jointLossM)
  const made = madeLengthM(sticks, stickLengthM, jointLossM)
  return { stickLengthM, sticks, joints: sticks - 1, madeLengthM: made, overM: made - wantedM }
}

/**
 * Sticks, joints and made length of a string.
 *
 * Model:  smallest N with N·S − (N−1)·loss ≥ needed + tails, or the count given.
 * Output: 'missing' naming null inputs; 'uncovered' where a joint loses a whole stick.
 * Fails:  RangeError for a length that is not positive, a loss or tails below 0, a count that is not whole.
 * Source: arithmetic; the loss is common practice. docs/formulas/sticks.md.
 */
export function stickPlan(input: StickPlanInput): Outcome<StickPlan> {
  const { neededLengthM, tailsM, stickLengthM, jointLossM } = input
  if (neededLengthM === null || tailsM === null || stickLengthM === null || jointLossM === null) {
    return missingAmong({ neededLengthM, tailsM, stickLengthM, jointLossM })!
  }
  requireNumber('neededLengthM', neededLengthM, { above: 0 })
  requireNumber('tailsM', tailsM, { atLeast: 0 })
  requireNumber('stickLengthM', stickLengthM, { above: 0 })
  requireNumber('jointLossM', jointLossM, { atLeast: 0 })
  const stickCount = input.stickCount ?? null
  if (stickCount !== null && (!Number.isInteger(stickCount) || stickCount < 1)) throw new RangeError(`stickCount is ${stickCount}, must be a whole number of at least 1`)
  if (jointLossM >= stickLengthM) return uncovered('jointLossM', 'a joint cannot lose a whole stick', 'una junta no puede perder un tubo entero')
  const wantedM = neededLengthM + tailsM
  const count = countFor(wantedM, stickLengthM, jointLossM, stickCount)
  const fewer = count.sticks - 1
  const fewerMadeM = madeLengthM(fewer, stickLengthM, jointLossM)
  return known({
    ...count,
    wantedLengthM: wantedM,
    isShort: count.overM < -arithmeticToleranceM,
    oneFewer: fewer < 1 ? null : { sticks: fewer, joints: fewer - 1, madeLengthM: fewerMadeM, shortM: wantedM - fewerMadeM },
    alternatives: (input.otherStickLengthsM ?? []).filter((lengthM) => lengthM > jointLossM && lengthM !== stickLengthM).map((lengthM) => countFor(wantedM, lengthM, jointLossM, null)),
  })
}
