import { describe, expect, it } from 'vitest'
import { truckload, withSpares } from '../../../src/engine/haul/truckload.ts'

const lb = 0.45359237

describe('a truckload', () => {
  it('of 36 in DR 17 in 50 ft sticks of 4,927 lb is five, 21 loads for 101 sticks (common practice, no source)', () => {
    // 8.5 ft / 3 ft = 2 beside each other; three rows are 3·(1 + 2·0.866) = 8.2 ft high: 2 + 1 + 2.
    expect(truckload({ odM: 0.9144, stickMassKg: 4927 * lb, sticks: 101 })).toEqual({ sticksPerLoad: 5, loads: 21, endedBy: 'room', rows: 3, perRow: 2 })
  })
  it('ends by mass where the pipe is heavy for its size', () => {
    // 24 in DR 7, some 95 kg/m · 15.24 m: room for 4 + 3 + 4 + 3, mass for 14.
    expect(truckload({ odM: 0.6096, stickMassKg: 2900, sticks: 10 })).toMatchObject({ sticksPerLoad: 7, loads: 2, endedBy: 'mass' })
  })
  it('holds one at least, and no load is needed for no stick', () => {
    expect(truckload({ odM: 3, stickMassKg: 90_000, sticks: 2 })).toMatchObject({ sticksPerLoad: 1, loads: 2 })
    expect(truckload({ odM: 0.3, stickMassKg: 200, sticks: 0 }).loads).toBe(0)
  })
  it('refuses a pipe without mass by name', () => expect(() => truckload({ odM: 0.3, stickMassKg: 0, sticks: 1 })).toThrow('stickMassKg'))
})

describe('spares', () => {
  it('are two stands and one ground roller in ten, and none of what is not placed', () => {
    expect([withSpares('stand', 5), withSpares('roller', 25), withSpares('roller', 30), withSpares('stand', 0), withSpares('machine', 1)]).toEqual([7, 28, 33, 0, 1])
  })
})
