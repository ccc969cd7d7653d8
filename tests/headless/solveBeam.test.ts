import { describe, expect, it } from 'vitest'
import { solveBeamCase } from '../../src/headless/solveBeam.ts'

interface BeamLine {
  id?: string
  status: string
  reason?: string
  reactions: number[]
  gaps: number[]
  lifted: boolean[]
  clamps: { x: number; force: number; M_left: number; M_right: number }[]
  ground_contacts: { a: number; b: number; kind: string; force: number }[]
  ground_total: number
  sags: { xa: number; xb: number; sag: number; x: number }[]
  stations: { x: number; w: number; slope: number; M: number }[]
  end_slopes: number[]
  end_w: number[]
  M_absmax: number
  M_absmax_x: number
  M_at_max: number
  stress_absmax: number | null
}

const solve = (json: unknown): BeamLine => solveBeamCase(json) as BeamLine

/** The case of docs/headless.md. */
const sample = {
  id: 'jaws and two stands',
  units: 'SI',
  pipe: { OD: 0.2731, DR: 17, E: 538e6, rho: 955 },
  length: 12.19,
  clamps: [{ x: 0, w: 0.9, slope: 0 }],
  supports: [{ x: 6.1, h: 0.9 }, { x: 10, h: 0.88 }],
  ground: { x: [0, 12.19], h: [0, 0] },
  curvature: { kappa: 0.0167, angle_deg: 0 },
  stations: [0, 3, 6, 9, 12.19],
}

const direct = { pipe: { EI: 1e5, q: 180 }, length: 12, supports: [{ x: 0, h: 1 }, { x: 12, h: 1 }] }

describe('raw case beam', () => {
  it('has exactly the fields of the contract, and a few of our own', () => {
    const result = solve(sample)
    expect(Object.keys(result)).toEqual(
      expect.arrayContaining(['id', 'status', 'reactions', 'gaps', 'lifted', 'clamps', 'ground_contacts', 'ground_total', 'sags', 'stations', 'end_slopes', 'end_w', 'M_absmax', 'M_absmax_x', 'M_at_max', 'stress_absmax']),
    )
    expect(result).toMatchObject({ id: 'jaws and two stands', status: 'ok' })
    expect(result.stations.map((s) => s.x)).toEqual(sample.stations)
    expect(JSON.parse(JSON.stringify(result))).toEqual(result)
  })

  it('balances the weight of the given wall: q = π(OD − t)t ρ g', () => {
    const result = solve(sample)
    const t = 0.2731 / 17
    const weight = Math.PI * (0.2731 - t) * t * 955 * 9.80665 * 12.19
    const carried = result.reactions.reduce((sum, r) => sum + r, 0) + result.clamps[0]!.force + result.ground_total
    expect(carried / weight).toBeCloseTo(1, 10)
  })

  it('gives the simple beam: reactions qL/2, M = qL²/8, sag 5qL⁴/384EI, and no stress without a wall', () => {
    const result = solve({ ...direct, stations: [6] })
    expect(result.reactions).toEqual([expect.closeTo(1080, 8), expect.closeTo(1080, 8)])
    expect(result.M_absmax).toBeCloseTo(3240, 8)
    expect(result.M_absmax_x).toBeCloseTo(6, 8)
    expect(result.M_at_max).toBeCloseTo(3240, 8)
    expect(result.sags[0]).toMatchObject({ xa: 0, xb: 12, x: expect.closeTo(6, 8), sag: expect.closeTo((5 * 180 * 12 ** 4) / 384e5, 10) })
    expect(result.stations[0]).toMatchObject({ w: expect.closeTo(1 - 0.486, 10), M: expect.closeTo(3240, 8), slope: expect.closeTo(0, 12) })
    expect(result.stress_absmax).toBeNull()
  })

  it('stress is |M|·OD/2/I of the given wall', () => {
    const result = solve({ ...direct, pipe: { OD: 0.2, t: 0.02, E: 5e8, rho: 950, q_extra: 10 } })
    const I = (Math.PI / 64) * (0.2 ** 4 - 0.16 ** 4)
    expect(result.stress_absmax).toBeCloseTo((result.M_absmax * 0.1) / I, 3)
    const q = Math.PI * 0.18 * 0.02 * 950 * 9.80665 + 10
    expect(result.reactions[0]).toBeCloseTo(q * 6, 8)
  })

  it('a hogging moment is largest with its sign', () => {
    const result = solve({ ...direct, clamps: [{ x: 0, w: 1, slope: 0 }], supports: [] })
    expect(result.M_at_max).toBeCloseTo(-12_960, 6)
    expect(result.M_absmax).toBe(-result.M_at_max)
    expect(result.clamps[0]).toMatchObject({ x: 0, M_left: 0, M_right: expect.closeTo(-12_960, 6), force: expect.closeTo(2160, 8) })
  })

  it('says unstable where the pipe tips, and rests on the ground where there is some', () => {
    const one = { ...direct, supports: [{ x: 2, h: 0.4 }] }
    expect(solve(one).status).toBe('unstable')
    const rests = solve({ ...one, ground: { x: [0], h: [0] } })
    expect(rests.status).toBe('ok')
    expect(rests.ground_total).toBeGreaterThan(0)
    expect(rests.ground_contacts[0]).toMatchObject({ kind: 'interval', b: 12 })
  })

  it('supports at one place share, at or below ground carry nothing', () => {
    const result = solve({ ...direct, supports: [{ x: 2, h: 1 }, { x: 2, h: 0.9 }, { x: 10, h: 1 }, { x: 6, h: 0 }], ground: { x: [0], h: [0] } })
    expect(result.reactions[0]).toBe(result.reactions[1])
    expect(result.reactions[3]).toBe(0)
    expect(result.lifted).toEqual([false, false, false, true])
  })

  it('a null says the same as leaving the field out; a clamp without slope is level', () => {
    expect(solve({ ...direct, clamps: null, ground: null, curvature: null, stations: null })).toEqual(solve(direct))
    const clamped = { ...direct, supports: [] }
    expect(solve({ ...clamped, clamps: [{ x: 0, w: 0 }] })).toEqual(solve({ ...clamped, clamps: [{ x: 0, w: 0, slope: 0 }] }))
  })

  it.each([
    [{ length: 0 }, /length/],
    [{ length: '12' }, /length/],
    [{ length: null }, /length/],
    [{ lenght: 12 }, /lenght is not a known field/],
    [{ pipe: { EI: 1e5, q: 180, colour: 1 } }, /pipe\.colour is not a known field/],
    [{ pipe: { EI: 1e5 } }, /pipe needs both EI and q/],
    [{ pipe: { EI: 1e5, q: 180, rho: 955 } }, /pipe\.rho stands beside EI and q/],
    [{ pipe: { OD: 0.2, E: 5e8, rho: 955 } }, /either DR or t/],
    [{ pipe: { OD: 0.2, DR: 11, t: 0.02, E: 5e8, rho: 955 } }, /either DR or t/],
    [{ pipe: { DR: 11, E: 5e8, rho: 955 } }, /pipe\.OD is missing/],
    [{ pipe: { OD: 0.2, DR: 11, rho: 955 } }, /pipe\.E is missing/],
    [{ pipe: { OD: 0.2, DR: 11, E: 5e8 } }, /pipe\.rho is missing/],
    [{ pipe: { OD: 0.2, t: 0.1, E: 5e8, rho: 955 } }, /pipe\.t is 0\.1/],
    [{ pipe: { OD: 0.2, DR: 11, E: 5e8, rho: 955, q_extra: -1e6 } }, /pipe\.q_extra/],
    [{ supports: [{ x: 13, h: 1 }] }, /supports\[0\]\.x = 13 is off the pipe/],
    [{ supports: [{ x: 1, h: 1, w: 2 }] }, /supports\[0\]\.w is not a known field/],
    [{ supports: [] }, /nothing to hold/],
    [{ clamps: [{ x: -0.1, w: 0, slope: 0 }] }, /clamps\[0\]\.x/],
    [{ clamps: [1, 2, 3].map((x) => ({ x, w: 1, slope: 0 })) }, /clamps/],
    [{ ground: { x: [0, 1, 1], h: [0, 0, 0] } }, /ground\.x must increase/],
    [{ ground: { x: [0, 1], h: [0] } }, /ground\.x has 2 values and ground\.h 1/],
    [{ ground: { x: [], h: [] } }, /ground\.x/],
    [{ curvature: { kappa: 1, angle: 3 } }, /curvature\.angle is not a known field/],
    [{ stations: [12.5] }, /stations\[0\] is 12\.5, off the pipe/],
    [{ units: 'US' }, /units/],
  ] as const)('rejects %j by name', (change, reason) => {
    const result = solve({ id: 'bad', ...direct, ...change })
    expect(result).toMatchObject({ id: 'bad', status: 'rejected' })
    expect(result.reason).toMatch(reason)
  })

  it.each([null, 3, 'text', [], [1]])('rejects %j as no case', (json) => {
    expect(solve(json).status).toBe('rejected')
  })
})
