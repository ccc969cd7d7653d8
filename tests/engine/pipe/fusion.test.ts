import { describe, expect, it } from 'vitest'
import { gaugePressurePa, jointFigures, singleHighPressure } from '../../../src/engine/pipe/fusion.ts'

describe('joint figures', () => {
  it('gives a soak by wall only from 14 in up', () => {
    expect(jointFigures({ odM: 12.75 * 0.0254, minimumWallM: 0.02 }).soakS).toBeNull()
    expect(jointFigures({ odM: 14 * 0.0254, minimumWallM: 0.0254 }).soakS).toBeCloseTo(270, 9) // 4.5 min
  })

  it('takes the band whose upper wall is not passed, and 30 s above the last', () => {
    expect(jointFigures({ odM: 0.5, minimumWallM: 0.36 * 0.0254 }).heaterOutS).toBe(8)
    expect(jointFigures({ odM: 0.5, minimumWallM: 0.361 * 0.0254 }).heaterOutS).toBe(10)
    expect(jointFigures({ odM: 1.6, minimumWallM: 5 * 0.0254 }).heaterOutS).toBe(30)
  })

  it('refuses a piston without area and a wall of nothing', () => {
    expect(() => gaugePressurePa({ forceN: 1, pistonAreaM2: 0, dragPa: 0 })).toThrow('pistonAreaM2')
    expect(() => singleHighPressure(0)).toThrow('wallM')
  })
})
