import { describe, expect, it } from 'vitest'
import file from '../../../shared/cases/pull-cases.json' with { type: 'json' }
import { solvePull } from '../../../src/engine/pull/solvePull.ts'
import { footM, poundForceN, poundPerFootNPerM } from '../../../src/units/factors.ts'
import { at, cornered, pull } from './pathBuilders.ts'

interface CaseInput {
  lengthFt?: number
  lengthM?: number
  lbPerFt?: number
  newtonPerM?: number
  friction?: number
  guideFriction?: number
  guideFactorPer90?: number
  quarterTurns?: number
}

interface CaseRow {
  id: string
  check: string
  input: CaseInput
  expected: number
  tolerance: { relative?: number; absolute?: number }
  unit: string
  source: string
  basis: string
}

const cases = file.cases as readonly CaseRow[]

const num = (value: number | undefined): number => {
  if (value === undefined) throw new Error('the case lacks a number its check needs')
  return value
}
const lengthOf = (input: CaseInput): number => input.lengthM ?? num(input.lengthFt) * footM
const lineLoadOf = (input: CaseInput): number => input.newtonPerM ?? num(input.lbPerFt) * poundPerFootNPerM
// 'a factor of 1.6 for each quarter turn' is a friction of ln 1.6 over π/2
const guideOf = (input: CaseInput): number => input.guideFriction ?? Math.log(num(input.guideFactorPer90)) / (Math.PI / 2)

const checks: Record<string, (input: CaseInput) => number> = {
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

describe('pull against its sources', () => {
  it.each(cases.map((row) => [row.id, row] as const))('%s', (_id, row) => {
    const value = checks[row.check]!(row.input)
    const ours = row.unit === 'lb' ? value / poundForceN : value
    const allowed = row.tolerance.absolute ?? num(row.tolerance.relative) * row.expected
    expect(Math.abs(ours - row.expected), `${ours} ${row.unit}`).toBeLessThanOrEqual(allowed)
  })

  it('names a source and a basis beside every case', () => {
    for (const { id, source, basis } of cases) {
      expect(source.length, id).toBeGreaterThan(5)
      expect(['read', 'from memory, confirm', 'published form, calculated value', 'calculated'], id).toContain(basis)
    }
  })
})
