import { solveContactBeam } from '../../src/engine/beam/solveContactBeam.ts'
import type { ContactBeamInput, ContactBeamResult } from '../../src/engine/beam/types.ts'
import { beamCase } from './beamCases.ts'
import type { Certificate } from './beamCertificate.ts'
import { certify } from './beamCertificate.ts'
import { latticeOf, solveByLattice } from './beamOracle.ts'

export interface BeamSoakOptions {
  seed: number
  count: number
  /** Every n-th case is also put to the lattice oracle; 1 by default. */
  oracleEvery?: number
}

export interface BeamSoakReport {
  count: number
  oracleCount: number
  /** One line a failure: seed, index, family, what was off. */
  failures: string[]
  /** Worst figure over all cases. */
  worst: Certificate
  longestMs: number
  mostPasses: number
  /** Largest disagreement with the oracle: levels over what its lattice allows, energy over the same. */
  oracleLevelShare: number
  oracleEnergyShare: number
}

/** Above these a solution is not proven. Balance and penetration as the engine promises; the rest by rounding. */
const LIMITS: Readonly<Record<keyof Certificate, number>> = {
  forceRatio: 1e-9,
  momentRatio: 1e-9,
  pullRatio: 1e-8,
  penetrationM: 1e-9,
  levelM: 1e-9,
  slopeM: 1e-8,
  momentMisfitRatio: 1e-8,
  shearRatio: 1e-8,
  complementarityM: 1e-12,
  extremeM: 1e-9,
  extremeMomentRatio: 1e-9,
}

/** Energy of bending and weight from the result alone, by four-point Gauss between all contacts: exact for the quartic. */
function energyJ(input: ContactBeamInput, result: ContactBeamResult): number {
  const { bendingStiffnessNm2: EI, lineLoadNPerM: q } = input.section
  const start = input.startM ?? 0
  const joins = [
    start,
    start + input.lengthM,
    ...input.supports.map((s) => s.xM),
    ...(input.clamps ?? []).map((c) => c.xM),
    ...result.groundContacts.flatMap((g) => [g.startM, g.endM]),
  ].sort((a, b) => a - b)
  const outer = Math.sqrt(3 / 7 + (2 / 7) * Math.sqrt(6 / 5))
  const inner = Math.sqrt(3 / 7 - (2 / 7) * Math.sqrt(6 / 5))
  const points = [
    [-outer, (18 - Math.sqrt(30)) / 36],
    [-inner, (18 + Math.sqrt(30)) / 36],
    [inner, (18 + Math.sqrt(30)) / 36],
    [outer, (18 - Math.sqrt(30)) / 36],
  ] as const
  let sum = 0
  for (let i = 1; i < joins.length; i++) {
    const a = joins[i - 1]!
    const half = (joins[i]! - a) / 2
    if (half <= 0) continue
    for (const [place, weight] of points) {
      const { levelM, momentNm } = result.at(a + half * (1 + place))
      sum += half * weight * ((momentNm * momentNm) / (2 * EI) + q * levelM)
    }
  }
  return sum
}

/** The oracle's matrix is useless with pieces shorter than this: stiffness goes with the inverse cube. */
const SHORTEST_PIECE_M = 5e-3

interface OracleShares {
  level: number
  energy: number
  reaction: number
}

/**
 * Disagreement with the lattice oracle over what its lattice explains. The oracle sees contact at lattice points only,
 * so it has a little less energy and lies a little lower: by about κ h²/8 where the ground is touched between points, a few times that at a free end beyond.
 */
function compareWithOracle(input: ContactBeamInput, result: ContactBeamResult): OracleShares | 'too fine' | null {
  const { bendingStiffnessNm2: EI, lineLoadNPerM: q } = input.section
  const maxStepM = Math.max(input.lengthM / 80, 0.25)
  const lattice = latticeOf(input, maxStepM)
  const shortest = Math.min(...lattice.slice(1).map((x, i) => x - lattice[i]!))
  if (shortest < SHORTEST_PIECE_M) return 'too fine'
  const oracle = solveByLattice(input, maxStepM)
  if (oracle === null) return null
  const weight = q * input.lengthM
  const k0 = input.bow ? Math.abs(input.bow.curvaturePerM) : 0
  const touchesBetween = result.groundContacts.some((g) => g.kind === 'interval' || !oracle.xM.some((x) => Math.abs(x - g.startM) < 1e-6))
  const h = oracle.stepM
  const curvature = Math.abs(result.maxMoment.momentNm) / EI + k0
  const latticeM = touchesBetween ? 4 * curvature * h * h + (q * h ** 4) / (384 * EI) : 0
  const roundingM = 5e-15 * (Math.min(input.lengthM, 12) / shortest) ** 3
  const levelLimit = turnsFreely(input, result) ? Infinity : 1e-6 + latticeM + roundingM
  let level = 0
  oracle.xM.forEach((x, i) => (level = Math.max(level, Math.abs(result.at(x).levelM - oracle.levelM[i]!))))
  const forces = [...result.supports.map((s, i) => [s.reactionN, oracle.reactionsN[i]!] as const), ...result.clamps.map((c, i) => [c.forceN, oracle.clampForcesN[i]!] as const)]
  const largest = Math.max(...forces.map(([ours]) => Math.abs(ours)), result.groundTotalN, weight * 1e-3)
  // Its stiffness matrix rounds levels to some 1e-16 m, which a short stiff piece turns into this force.
  const roundingN = (2e-14 * EI) / shortest ** 3
  const reactionLimit = (touchesBetween ? 0.1 : 1e-6) * largest + roundingN
  const reaction = Math.max(0, ...forces.map(([ours, theirs]) => Math.abs(ours - theirs)))
  // Ours is the true least energy: never below the oracle's, and above it by the work of closing the lattice's gaps at most.
  const gapJ = energyJ(input, result) - oracle.energyJ
  const highest = Math.max(...oracle.levelM.map(Math.abs))
  const roundingJ = 1e-7 * (weight + Math.abs(oracle.energyJ)) + roundingN * highest
  const energyLimit = gapJ < 0 ? roundingJ : 4 * weight * latticeM + roundingJ
  return { level: level / levelLimit, energy: Math.abs(gapJ) / energyLimit, reaction: reaction / reactionLimit }
}

/** Balanced on one contact the pipe may turn without work, so its levels are not settled by the problem. */
function turnsFreely(input: ContactBeamInput, result: ContactBeamResult): boolean {
  if (result.clamps.length > 0) return false
  const bears = (forceN: number): boolean => Math.abs(forceN) > 1e-9 * input.section.lineLoadNPerM * input.lengthM
  const places = [
    ...input.supports.filter((_, i) => bears(result.supports[i]!.reactionN)).map((s) => s.xM),
    ...result.groundContacts.filter((g) => bears(g.forceN)).flatMap((g) => [g.startM, g.endM]),
  ]
  return Math.max(...places) - Math.min(...places) <= 1e-6
}

/** One stand moved by half an inch, solved from the pattern before and from nothing: the same answer. */
function warmMisfitM(input: ContactBeamInput, before: ContactBeamResult, index: number): number {
  if (input.supports.length === 0) return 0
  const moved = index % input.supports.length
  const supports = input.supports.map((s, i) => (i === moved ? { ...s, levelM: s.levelM + (index % 2 === 0 ? 0.0127 : -0.0127) } : s))
  const cold = solveContactBeam({ ...input, supports })
  const warm = solveContactBeam({ ...input, supports, warmStart: before.pattern })
  if (cold.status !== warm.status) return Infinity
  if (cold.status !== 'ok' || turnsFreely(input, cold)) return 0
  const start = input.startM ?? 0
  let misfit = 0
  for (let i = 0; i <= 40; i++) {
    const x = start + (input.lengthM * i) / 40
    misfit = Math.max(misfit, Math.abs(cold.at(x).levelM - warm.at(x).levelM))
  }
  return misfit
}

/**
 * Random hard cases, each proven by its certificate, by a warm start that must agree, and by the lattice oracle.
 * The same seed and count give the same report save `longestMs`.
 */
export function runBeamSoak({ seed, count, oracleEvery = 1 }: BeamSoakOptions): BeamSoakReport {
  const worst = Object.fromEntries(Object.keys(LIMITS).map((key) => [key, 0])) as unknown as Certificate
  const report: BeamSoakReport = {
    count,
    oracleCount: 0,
    failures: [],
    worst,
    longestMs: 0,
    mostPasses: 0,
    oracleLevelShare: 0,
    oracleEnergyShare: 0,
  }
  for (let index = 0; index < count; index++) {
    const { family, input } = beamCase(seed, index)
    const fail = (what: string): void => void report.failures.push(`seed ${seed} case ${index} (${family}): ${what}`)
    const startMs = performance.now()
    const result = solveContactBeam(input)
    report.longestMs = Math.max(report.longestMs, performance.now() - startMs)
    report.mostPasses = Math.max(report.mostPasses, result.passes)
    if (result.status !== 'ok') {
      fail(`${result.status}: ${result.reason ?? ''} ${result.residual ?? ''}`)
      continue
    }
    const found = certify(input, result)
    for (const key of Object.keys(LIMITS) as (keyof Certificate)[]) {
      if (!(found[key] <= worst[key])) worst[key] = found[key]
      if (!(found[key] <= LIMITS[key])) fail(`${key} = ${found[key]}`)
    }
    const misfit = warmMisfitM(input, result, index)
    if (!(misfit <= 1e-8)) fail(`warm start differs by ${misfit} m`)
    if (index % oracleEvery !== 0) continue
    const shares = compareWithOracle(input, result)
    if (shares === null) {
      fail('the oracle found no answer')
      continue
    }
    if (shares === 'too fine') continue
    report.oracleCount++
    report.oracleLevelShare = Math.max(report.oracleLevelShare, shares.level)
    report.oracleEnergyShare = Math.max(report.oracleEnergyShare, shares.energy)
    for (const [name, share] of Object.entries(shares)) if (!(share <= 1)) fail(`${name} is ${share} times what the oracle's lattice explains`)
  }
  return report
}
