import { describe, expect, it } from 'vitest'
import { solvePullCase } from '../../src/headless/solvePull.ts'
import { poundForceN, psiPa, inchM } from '../../src/units/factors.ts'

/** The example of the contract. */
const example = {
  id: 'example',
  units: 'SI',
  pipe: { OD: 0.2731, DR: 17, rho: 955 },
  string_length: 80,
  path: [{ x: 0, y: 0, z: 0 }, { x: 60, y: 0, z: 0.4, radius: 12, mu_surface: 0.1, mu_guide: 0.2 }, { x: 60, y: 40, z: 0.4 }],
  legs: [{ mu: 0.1 }, { mu: 0.5 }],
  head_stations: [40, 80, 94],
  tail_load: 0,
  atl: { fy: 0.4, ft: 0.95, T: 24.1e6 },
}
interface PullAnswer {
  id: string
  status: string
  path_length: number
  weight: number
  F: number[]
  runaway: boolean[]
  unclamped: number[]
  F_max: number
  F_max_head: number
  bends: { vertex: number; radius: number; r_min: number | null; ok: boolean | null }[]
  r_min: number | null
  ATL: number | null
  utilisation: number | null
  safe: boolean | null
  problems: string[]
}
const solve = (over: object = {}): PullAnswer => solvePullCase({ ...example, ...over }) as PullAnswer

describe('raw case pull', () => {
  it('solves the example of the contract, checked by hand', () => {
    const answer = solve()
    // q = π·(OD − t)·t·ρ·g, t = OD/17 = 0.0160647: 121.4897 N/m
    const t = 0.2731 / 17
    const q = Math.PI * (0.2731 - t) * t * 955 * 9.80665
    const slopeM = Math.hypot(48, 0.4)
    expect(answer).toMatchObject({ id: 'example', status: 'ok', runaway: [false, false, false], safe: true, problems: [] })
    expect(answer.weight).toBeCloseTo(80 * q, 9)
    expect(answer.path_length).toBeCloseTo(slopeM + 6 * Math.PI + 28, 9)
    // head at 40: 40 m on the approach, 40 m up the leg
    expect(answer.F[0]).toBeCloseTo(q * 40 * 0.1 + (q * (0.1 * 48 + 0.4) * 40) / slopeM, 8)
    // head at 94: tail at 14; rest of leg 0, the arc with c = q·R·µs, then the rest at 0.5
    const atArc = (q * (0.1 * 48 + 0.4) * (slopeM - 14)) / slopeM
    const c = q * 12 * 0.1
    const pastArc = (atArc + c / 0.2) * Math.exp(0.1 * Math.PI) - c / 0.2
    expect(answer.F[2]).toBeCloseTo(pastArc + q * 0.5 * (94 - slopeM - 6 * Math.PI), 8)
    expect(answer.F_max_head).toBeCloseTo(answer.path_length, 9)
    expect(answer.ATL).toBeCloseTo(0.4 * 0.95 * 24.1e6 * Math.PI * 0.2731 ** 2 * (1 / 17 - 1 / 289), 6)
    expect(answer.utilisation).toBeCloseTo(answer.F_max / answer.ATL!, 12)
    expect(answer.bends).toEqual([{ vertex: 1, radius: 12, r_min: expect.closeTo(27 * 0.2731, 12), ok: true }])
  })

  it('the ATL is that of ASTM F1804 (from memory, confirm): 12 IPS DR 17, 3,500 psi, 12 h, 37,605 lb', () => {
    const answer = solve({ pipe: { OD: 12.75 * inchM, DR: 17, rho: 955 }, atl: { fy: 0.4, ft: 0.95, T: 3500 * psiPa } })
    expect(answer.ATL! / poundForceN / 37605).toBeCloseTo(1, 3)
  })

  it('a wall given in place of DR is the same pipe, without a step in the bend table', () => {
    const answer = solve({ pipe: { OD: 0.22, t: 0.02, rho: 955 } })
    expect(answer.r_min).toBeCloseTo(25 * 0.22, 9)
    expect(answer.weight).toBeCloseTo(solve({ pipe: { OD: 0.22, DR: 11, rho: 955 } }).weight, 9)
  })

  it('reports a run-away with its value and holds F at 0', () => {
    const path = [{ x: 0, y: 0, z: 0 }, { x: 100, y: 0, z: -20 }]
    // all 80 m on the slope: q·80·(0.1·cosα − sinα)
    const slope = solve({ path, legs: [{ mu: 0.1 }], head_stations: [90] })
    const q = slope.weight / 80
    expect(slope.F).toEqual([0])
    expect(slope.runaway).toEqual([true])
    expect(slope.unclamped[0]).toBeCloseTo((q * 80 * (0.1 * 100 - 20)) / Math.hypot(100, 20), 8)
    expect(slope.problems).toContain('run-away with the head at 90')
  })

  it('without head stations it takes the end of the path, without atl no utilisation', () => {
    const { head_stations: _h, atl: _a, ...rest } = example
    const answer = solvePullCase(rest) as PullAnswer
    expect(answer.F).toHaveLength(1)
    expect(answer).toMatchObject({ ATL: null, utilisation: null, safe: null })
  })

  it('above the bend table r_min is unknown, not fine', () => {
    expect(solve({ pipe: { OD: 0.5, DR: 50, rho: 955 } })).toMatchObject({ r_min: null, bends: [{ ok: null }] })
  })

  it('a path without any level is level', () => {
    const path = example.path.map(({ z: _z, ...point }) => point)
    expect(solve({ path }).path_length).toBeCloseTo(76 + 6 * Math.PI, 9)
  })

  it('overlapping bends are a problem in words', () => {
    const bend = { radius: 12, mu_surface: 0.1, mu_guide: 0.2 }
    const path = [{ x: 0, y: 0 }, { x: 60, y: 0, ...bend }, { x: 60, y: 10, ...bend }, { x: 90, y: 10 }]
    const answer = solve({ path, legs: [{ mu: 0.1 }, { mu: 0.1 }, { mu: 0.1 }], head_stations: [50] })
    expect(answer.problems[0]).toMatch(/^leg 1: its bends need 2[34][.\d]* m, it is 10 m long/)
    expect(JSON.stringify(answer)).not.toContain('null,null')
  })

  it.each<[string, object, string]>([
    ['an unknown field', { speed: 1 }, 'speed is not a known field'],
    ['an unknown field inside', { legs: [{ mu: 0.1, grade: 2 }, { mu: 0.5 }] }, 'legs[0].grade is not a known field'],
    ['no length', { string_length: 0 }, 'string_length is 0, must be above 0'],
    ['too few points', { path: [{ x: 0, y: 0, z: 0 }] }, 'path has 1 entries'],
    ['legs that do not match', { legs: [{ mu: 0.1 }] }, 'legs has 1 entries, a path of 3 points has 2'],
    ['a level on some only', { path: [{ x: 0, y: 0 }, ...example.path.slice(1)] }, 'path[0].z is missing'],
    ['a turn without radius', { path: [example.path[0], { x: 60, y: 0, z: 0, mu_guide: 0.2, mu_surface: 0.1 }, example.path[2]] }, 'path[1].radius is missing'],
    ['a turn without friction', { path: [example.path[0], { x: 60, y: 0, z: 0, radius: 12, mu_guide: 0.2 }, example.path[2]] }, 'path[1].mu_surface is missing'],
    ['a negative friction', { legs: [{ mu: -0.1 }, { mu: 0.5 }] }, 'legs[0].mu is -0.1'],
    ['a head beyond the end', { head_stations: [40, 95] }, 'head_stations[1] is 95, beyond'],
    ['both DR and t', { pipe: { OD: 0.2, DR: 11, t: 0.01, rho: 955 } }, 'pipe needs either DR or t'],
    ['a wall of half the pipe', { pipe: { OD: 0.2, t: 0.1, rho: 955 } }, 'pipe.t is 0.1'],
    ['other units', { units: 'US' }, 'units is "US", must be "SI"'],
    ['half an atl', { atl: { fy: 0.4, ft: 0.95 } }, 'atl.T is missing'],
  ])('refuses %s by name', (_name, over, message) => expect(() => solve(over)).toThrow(message))
})
