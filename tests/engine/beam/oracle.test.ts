import { describe, expect, it } from 'vitest'
import { solveContactBeam } from '../../../src/engine/beam/solveContactBeam.ts'
import { beamFamilies } from '../../helpers/beamCases.ts'
import { certify } from '../../helpers/beamCertificate.ts'
import { solveByLattice } from '../../helpers/beamOracle.ts'
import { runBeamSoak } from '../../helpers/beamSoak.ts'

const section = { bendingStiffnessNm2: 1e5, lineLoadNPerM: 180 }

describe('seeded hard cases', () => {
  it('100 cases of every kind are proven and agree with the lattice oracle', () => {
    const report = runBeamSoak({ seed: 1, count: 100 })
    expect(report.failures).toEqual([])
    // all but those with a piece too short for the lattice, most of the crowded ones
    expect(report.oracleCount).toBeGreaterThan(90)
    expect(report.mostPasses).toBeLessThan(400)
    expect(Object.keys(beamFamilies)).toHaveLength(16)
  })

  it('400 more are proven by their certificate and a warm start', () => {
    expect(runBeamSoak({ seed: 2, count: 400, oracleEvery: 1000 }).failures).toEqual([])
  })
})

describe('the oracle itself', () => {
  it('knows the two-span beam: 3/8, 5/4, 3/8', () => {
    const answer = solveByLattice({ lengthM: 12, section, supports: [0, 6, 12].map((xM) => ({ xM, levelM: 0 })) }, 1)!
    const shares = answer.reactionsN.map((force) => force / (180 * 6))
    expect(shares[0]).toBeCloseTo(0.375, 8)
    expect(shares[1]).toBeCloseTo(1.25, 8)
  })

  it('lets a low stand go', () => {
    const answer = solveByLattice({ lengthM: 12, section, supports: [{ xM: 0, levelM: 0 }, { xM: 6, levelM: -2 }, { xM: 12, levelM: 0 }] }, 1)!
    expect(answer.reactionsN[1]).toBeCloseTo(0, 6)
    // 5·180·12⁴/(384·1e5) = 0.486
    expect(answer.levelM[6]).toBeCloseTo(-0.486, 6)
  })
})

describe('the certificate itself', () => {
  const input = { lengthM: 12, section, supports: [0, 6, 12].map((xM) => ({ xM, levelM: 0 })) }
  const result = solveContactBeam(input)

  it('passes a right answer', () => {
    expect(Math.max(...Object.values(certify(input, result)))).toBeLessThan(1e-9)
  })

  it('sees a force that is off, a stand that stands in the pipe and a sag that is short', () => {
    const offForce = { ...result, supports: result.supports.map((s, i) => (i === 1 ? { ...s, reactionN: s.reactionN * 1.001 } : s)) }
    expect(certify(input, offForce).shearRatio).toBeGreaterThan(1e-4)
    expect(certify(input, offForce).forceRatio).toBeGreaterThan(1e-4)
    const higher = { ...input, supports: input.supports.map((s, i) => (i === 1 ? { ...s, levelM: 0.001 } : s)) }
    expect(certify(higher, result).penetrationM).toBeCloseTo(0.001, 9)
    const shortSag = { ...result, sags: result.sags.map((s) => ({ ...s, sagM: s.sagM * 0.9 })) }
    expect(certify(input, shortSag).extremeM).toBeGreaterThan(1e-5)
    const withGround = { ...input, ground: { xM: [0], levelM: [-0.001] } }
    expect(certify(withGround, result).penetrationM).toBeGreaterThan(1e-3)
  })
})
