/** Rows of docs/verification.md for the pipe in plan and for stands: our solver beside closed forms written out here. */
import { sideHoldRatio } from '../../src/engine/lateral/guideHold.ts'
import { solveSideForces } from '../../src/engine/lateral/solveSideForces.ts'
import { standingRatio } from '../../src/engine/lateral/tipping.ts'
import type { VerificationRow } from './verificationRows.ts'

const EI = 1.2e5
const FIRM_N = 1e9
const overhang = 'overhang held by two clamps, unit-load method, derived'
const statics = 'statics of a rigid body, derived'

interface Side {
  check: string
  quantity: string
  ours: readonly number[]
  theirs: readonly number[]
  unit: string
  source: string
}

/** A clamp pair s apart, the guide L past the outer one, d off the line. */
function propped(s: number, L: number, d: number): Side[] {
  const { guides, clampForcesN } = solveSideForces({ bendingStiffnessNm2: EI, clamps: [{ xM: 0, offsetM: 0 }, { xM: s, offsetM: 0 }], guides: [{ xM: s + L, offsetM: d, holdN: FIRM_N }], jointM: 0 })
  const force = (3 * EI * d) / (L * L * (L + s))
  const name = `guide ${d} m off, ${L} m past clamps ${s} m apart`
  return [
    { check: name, quantity: 'side force of a guide', ours: [guides[0]!.forceN], theirs: [force], unit: 'N', source: overhang },
    { check: name, quantity: 'side forces of the clamps', ours: clampForcesN, theirs: [(force * L) / s, (-force * (L + s)) / s], unit: 'N', source: overhang },
  ]
}

function betweenTwo(L: number, d: number): Side {
  const { guides } = solveSideForces({ bendingStiffnessNm2: EI, clamps: [{ xM: 0, offsetM: 0 }, { xM: 2 * L, offsetM: 0 }], guides: [{ xM: L, offsetM: d, holdN: FIRM_N }], jointM: 0 })
  return { check: `two spans of ${L} m, middle ${d} m off`, quantity: 'side force at mid-span', ours: [guides[0]!.forceN], theirs: [(6 * EI * d) / L ** 3], unit: 'N', source: 'simple beam with a load at its middle, 48 EI d/(2L)³, textbook, from memory' }
}

function full(s: number, L: number, holdN: number): Side {
  const { guides } = solveSideForces({ bendingStiffnessNm2: EI, clamps: [{ xM: 0, offsetM: 0 }, { xM: s, offsetM: 0 }], guides: [{ xM: s + L, offsetM: 1, holdN }], jointM: 0 })
  return { check: `guide that holds ${holdN} N, ${L} m past clamps ${s} m apart`, quantity: 'offset of the pipe at a full guide', ours: [guides[0]!.pipeOffsetM], theirs: [(holdN * (L ** 3 + s * L * L)) / (3 * EI)], unit: 'm', source: overhang }
}

const geometry = { vFlankRad: Math.PI / 6, cradleEdgeRad: Math.PI / 4, sideFrictionRatio: 0.3 }
const sides = (): Side[] => [
  ...propped(0.6, 5, 0.02), ...propped(0.9, 2.5, 0.006), betweenTwo(4, 0.01), betweenTwo(6.5, 0.05), full(0.6, 5, 20), full(0.9, 8, 7),
  { check: 'V of 30° flanks, cradle to 45°', quantity: 'hold of a V and of a cradle', ours: [sideHoldRatio('V', geometry), sideHoldRatio('cradle', geometry)], theirs: [1 / Math.sqrt(3), 1], unit: '', source: statics },
  { check: '300 N at 0.9 m against 2,500 N on a base of 0.6 m', quantity: 'safety against tipping', ours: [standingRatio({ pushN: 300, heightM: 0.9, loadN: 2000, standN: 500, baseM: 0.6 })], theirs: [750 / 270], unit: '', source: statics },
]

export const sideRows = (): VerificationRow[] =>
  sides().map((side) => ({ part: 'Pipe in plan, stands', ...side, allowed: side.theirs.map((value) => 1e-6 * Math.max(Math.abs(value), ...side.theirs.map(Math.abs))), basis: side.source.includes('from memory') ? 'from memory, confirm' : 'calculated' }))
