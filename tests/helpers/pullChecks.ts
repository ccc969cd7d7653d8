/** What each `check` of shared/cases/pull-cases.json computes: N for a force, a plain number for a factor. Inputs are read by name. */
import { solvePull } from '../../src/engine/pull/solvePull.ts'
import { footM, poundForceN, poundPerFootNPerM } from '../../src/units/factors.ts'
import { at, cornered, pull } from '../engine/pull/pathBuilders.ts'

export interface PullCaseInput {
  lengthFt?: number
  lengthM?: number
  lbPerFt?: number
  newtonPerM?: number
  friction?: number
  guideFriction?: number
  guideFactorPer90?: number
  quarterTurns?: number
}

const num = (value: number | undefined): number => {
  if (value === undefined) throw new Error('the case lacks a number its check needs')
  return value
}
const lengthOf = (input: PullCaseInput): number => input.lengthM ?? num(input.lengthFt) * footM
const lineLoadOf = (input: PullCaseInput): number => input.newtonPerM ?? num(input.lbPerFt) * poundPerFootNPerM
// 'a factor of 1.6 for each quarter turn' is a friction of ln 1.6 over π/2
const guideOf = (input: PullCaseInput): number => input.guideFriction ?? Math.log(num(input.guideFactorPer90)) / (Math.PI / 2)

const checks: Readonly<Record<string, (input: PullCaseInput) => number>> = {
  straightDrag: (input) => {
    const lengthM = lengthOf(input)
    const vertices = [at(0, 0), at(2 * lengthM, 0)]
    return solvePull(pull({ vertices, lineLoadNPerM: lineLoadOf(input), stringLengthM: lengthM, legs: [{ frictionRatio: num(input.friction) }] })).largest.forceN
  },
  bendFactor: (input) => {
    const path = cornered(10, num(input.quarterTurns), num(input.guideFriction))
    // a pull of 1000 N on a tail without weight to speak of
    return solvePull(pull({ ...path, lineLoadNPerM: 1e-6, stringLengthM: 5, tailLoadN: 1000 })).heads[0]!.forceN / 1000
  },
  dragThenBends: (input) => {
    const lengthM = lengthOf(input)
    const path = cornered(lengthM, num(input.quarterTurns), guideOf(input))
    const legs = path.legs.map((leg, i) => (i === 0 ? { frictionRatio: num(input.friction) } : leg))
    return solvePull(pull({ ...path, legs, lineLoadNPerM: lineLoadOf(input), stringLengthM: lengthM })).heads[0]!.forceN
  },
}

/** Our value for a row, in the unit of the row. */
export function pullCheck(check: string, input: PullCaseInput, unit: string): number {
  const of = checks[check]
  if (of === undefined) throw new Error(`unknown check ${check}`)
  const value = of(input)
  return unit === 'lb' ? value / poundForceN : value
}
