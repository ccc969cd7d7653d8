import { describe, expect, it } from 'vitest'
import { sideHoldRatio } from '../../../src/engine/lateral/guideHold.ts'
import { solveSideForces, type SideBeamInput, type SideGuide } from '../../../src/engine/lateral/solveSideForces.ts'
import { seededRandom } from '../../helpers/seededRandom.ts'

const EI = 1.2e5
const FIRM_N = 1e9
/** Clamps 0.1 and 0.7 m from the joint at 0. */
const clamps = [{ xM: 0.1, offsetM: 0 }, { xM: 0.7, offsetM: 0 }]
const solve = (guides: readonly SideGuide[], over: Partial<SideBeamInput> = {}) => solveSideForces({ bendingStiffnessNm2: EI, clamps, guides, jointM: 0, ...over })

describe('pipe in plan between guides', () => {
  it('one guide d off the line, L past the outer clamp: F = 3 EI d / (L² (L + s)) with clamps s apart', () => {
    // Propped overhang: a force F at L bends the pipe F·L³/(3 EI) and turns it at the outer clamp by F·L·s/(3 EI).
    // d = 0.02, L = 5, s = 0.6: 3 · 1.2e5 · 0.02 / (25 · 5.6) = 51.428571 N.
    const { guides, clampForcesN, joint } = solve([{ xM: 5.7, offsetM: 0.02, holdN: FIRM_N }])
    expect(guides[0]!.forceN).toBeCloseTo(51.428571428571, 6)
    // Outer clamp −F (L + s)/s = −480, inner F·L/s = 428.571.
    expect(clampForcesN[1]).toBeCloseTo(-480, 5)
    expect(clampForcesN[0]).toBeCloseTo(428.571428571, 5)
    // Inside the clamps the end stays straight: slope there −F·L·s/(6 EI) = −2.142857e-4, offset at the joint 0.1 times it the other way.
    expect(joint.slopeRatio).toBeCloseTo(-2.142857142857e-4, 10)
    expect(joint.offsetM).toBeCloseTo(2.142857142857e-5, 10)
  })
  it('two equal spans of L, the middle d off: 6 EI d / L³, half of it back at each end', () => {
    // 48 EI d / (2L)³ with L = 4, d = 0.01: 48 · 1.2e5 · 0.01 / 512 = 112.5 N.
    const { guides, clampForcesN } = solve([{ xM: 4, offsetM: 0.01, holdN: FIRM_N }], { clamps: [{ xM: 0, offsetM: 0 }, { xM: 8, offsetM: 0 }] })
    expect(guides[0]!.forceN).toBeCloseTo(112.5, 6)
    expect(clampForcesN.map((force) => Math.round(force * 1e6) / 1e6)).toEqual([-56.25, -56.25])
  })
  it('jaws out of line by d over s turn the whole pipe: no force where the guides stand on that line', () => {
    const { guides, clampForcesN } = solve([3, 6].map((xM) => ({ xM, offsetM: (xM - 0.1) * 0.01, holdN: FIRM_N })), { clamps: [{ xM: 0.1, offsetM: 0 }, { xM: 0.7, offsetM: 0.006 }] })
    for (const force of [...guides.map(({ forceN }) => forceN), ...clampForcesN]) expect(Math.abs(force)).toBeLessThan(1e-5)
  })
  it('a guide that holds less gives what it has, and the pipe lies F (L³ + s L²)/(3 EI) off', () => {
    // 20 N of the 51.4: 20 · (125 + 15) / 3.6e5 = 7.7778e-3 m.
    const { guides } = solve([{ xM: 5.7, offsetM: 0.02, holdN: 20 }])
    expect(guides[0]).toMatchObject({ forceN: 20, isFull: true })
    expect(guides[0]!.pipeOffsetM).toBeCloseTo(7.777777777e-3, 9)
  })
  it('a guide that holds nothing only rides along, and two at one place share by what they hold', () => {
    const alone = solve([{ xM: 5.7, offsetM: 0.02, holdN: FIRM_N }, { xM: 3, offsetM: 0.5, holdN: 0 }]).guides
    expect(alone[0]!.forceN).toBeCloseTo(51.428571428571, 6)
    expect(alone[1]).toMatchObject({ forceN: 0, isFull: false })
    expect(alone[1]!.pipeOffsetM).toBeGreaterThan(0)
    const shared = solve([{ xM: 5.7, offsetM: 0.02, holdN: 3e8 }, { xM: 5.71, offsetM: 0.02, holdN: 1e8 }]).guides
    expect(shared[0]!.forceN / shared[1]!.forceN).toBeCloseTo(3, 9)
  })
  it('settles a row of 24 rollers under stiff pipe, nearly all of them full', () => {
    // A 400 m string on rollers 4.1 m apart, up to 4 in off: turning many guides at once, or the first wrong one, went in circles here.
    const offsets = [0.03, -0.05, 0.02, 0.1, -0.08, 0]
    const row = Array.from({ length: 24 }, (_, i) => ({ xM: 3 + 4.1 * i, offsetM: offsets[i % 6]!, holdN: 300 + 40 * (i % 5) }))
    const { guides, isSettled, clampForcesN } = solve(row, { bendingStiffnessNm2: 1.1e6 })
    expect(isSettled).toBe(true)
    expect(guides.filter(({ isFull }) => isFull).length).toBeGreaterThan(8)
    const sum = [...clampForcesN, ...guides.map(({ forceN }) => forceN)].reduce((total, force) => total + force, 0)
    expect(Math.abs(sum)).toBeLessThan(1e-3)
  })
  it('refuses what is no number by its name, and a pipe without two clamps', () => {
    expect(() => solve([{ xM: NaN, offsetM: 0, holdN: 1 }])).toThrow('guides[0].xM')
    expect(() => solve([{ xM: 2, offsetM: 0, holdN: -1 }])).toThrow('guides[0].holdN')
    expect(() => solve([], { clamps: clamps.slice(0, 1) })).toThrow('clamps')
    expect(() => solve([], { bendingStiffnessNm2: 0 })).toThrow('bendingStiffnessNm2')
  })
})

/** Offset at a distance past the outer clamp for forces there: the closed form of an overhang held by two clamps s apart. */
const overhangOffsetM = (atM: number, loads: readonly { atM: number; forceN: number }[], s: number): number =>
  loads.reduce((sum, { atM: loadM, forceN }) => {
    const [near, far] = atM < loadM ? [atM, loadM] : [loadM, atM]
    return sum + (forceN * ((near * near * (3 * far - near)) / 6 + (s * atM * loadM) / 3)) / EI
  }, 0)

describe('laws on 300 seeded rows of guides, some too weak for their offset', () => {
  const random = seededRandom(20261125)
  const cases = Array.from({ length: 300 }, () => {
    const count = 1 + Math.floor(random() * 12)
    let xM = 0.7
    return Array.from({ length: count }, (): SideGuide => ({ xM: (xM += 0.4 + random() * 6), offsetM: (random() - 0.5) * 0.1, holdN: random() < 0.2 ? FIRM_N : random() * 400 }))
  })
  it('every answer is that of the closed form of the overhang, and every guide keeps its law', () => {
    let full = 0
    for (const guides of cases) {
      const result = solve(guides)
      expect(result.isSettled).toBe(true)
      const loads = result.guides.map(({ forceN }, i) => ({ atM: guides[i]!.xM - 0.7, forceN }))
      const largest = Math.max(1, ...result.clampForcesN.map(Math.abs), ...loads.map(({ forceN }) => Math.abs(forceN)))
      result.guides.forEach(({ forceN, isFull, pipeOffsetM }, i) => {
        const { xM, offsetM, holdN } = guides[i]!
        expect(Math.abs(forceN)).toBeLessThanOrEqual(holdN * (1 + 1e-6) + 1e-6)
        expect(pipeOffsetM).toBeCloseTo(overhangOffsetM(xM - 0.7, loads, 0.6), 6)
        if (!isFull) expect(pipeOffsetM).toBeCloseTo(offsetM, 9)
        else expect(Math.sign(forceN) * (offsetM - pipeOffsetM)).toBeGreaterThanOrEqual(-1e-9)
        full += isFull ? 1 : 0
      })
      const sum = [...result.clampForcesN, ...loads.map(({ forceN }) => forceN)].reduce((total, force) => total + force, 0)
      expect(Math.abs(sum) / largest).toBeLessThan(1e-6)
    }
    expect(full).toBeGreaterThan(300)
  })
  it('mirrored offsets give mirrored forces, and a shift of everything changes none', () => {
    for (const guides of cases.slice(0, 60)) {
      const base = solve(guides)
      const mirrored = solve(guides.map((guide) => ({ ...guide, offsetM: -guide.offsetM })))
      const shifted = solve(guides.map((guide) => ({ ...guide, xM: guide.xM + 100, offsetM: guide.offsetM + 3 })), { clamps: clamps.map(({ xM }) => ({ xM: xM + 100, offsetM: 3 })), jointM: 100 })
      const scale = Math.max(1, ...base.clampForcesN.map(Math.abs))
      base.clampForcesN.forEach((force, i) => {
        expect(Math.abs(force + mirrored.clampForcesN[i]!) / scale).toBeLessThan(1e-6)
        expect(Math.abs(force - shifted.clampForcesN[i]!) / scale).toBeLessThan(1e-5)
      })
    }
  })
})

describe('what a roller holds sideways', () => {
  const geometry = { vFlankRad: Math.PI / 6, cradleEdgeRad: Math.PI / 4, sideFrictionRatio: 0.3 }
  it('a V of 30° flanks holds tan 30° = 0.577 of its load, a cradle to 45° all of it, a flat roller its friction', () => {
    expect(['V', 'cradle', 'flat'].map((shape) => sideHoldRatio(shape as 'V', geometry))).toEqual([expect.closeTo(0.57735, 5), expect.closeTo(1, 12), 0.3])
  })
  it('a V about to be climbed bears on one flank only: its normal force has the load upright and the side force across', () => {
    // Normal force P on a flank at β: P cosβ = N, P sinβ = H. N = 1,000: P = 1,154.7, H = 577.35.
    const normalN = 1000 / Math.cos(geometry.vFlankRad)
    expect(normalN * Math.sin(geometry.vFlankRad)).toBeCloseTo(1000 * sideHoldRatio('V', geometry), 9)
  })
  it('refuses an upright flank by its field', () => expect(() => sideHoldRatio('V', { ...geometry, vFlankRad: Math.PI / 2 })).toThrow('vFlankRad'))
})
