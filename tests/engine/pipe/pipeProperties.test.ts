import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { pipeProperties, ringAreaM2, ringInertiaM4 } from '../../../src/engine/pipe/pipeProperties.ts'
import type { PipeInput } from '../../../src/engine/pipe/pipeProperties.ts'
import { drsOf, sizesOf } from '../../../src/engine/pipe/tables.ts'
import { must } from './caseChecks.ts'

// One seed, so that a failing run can be repeated.
fc.configureGlobal({ seed: 20_261 })

const pipe = (over: Partial<PipeInput> = {}): PipeInput => ({ system: 'IPS', size: '12', dr: 17, material: 'PE4710', ...over })

describe('properties of a pipe', () => {
  it('weighs by the mean wall and is stiff by the minimum wall unless told otherwise', () => {
    const usual = must(pipeProperties(pipe()))
    const byMinimum = must(pipeProperties(pipe({ weightWall: 'minimum' })))
    const byMean = must(pipeProperties(pipe({ stiffnessWall: 'mean' })))
    expect(usual.weightWallM).toBeCloseTo(1.06 * 0.01905, 12) // 12.75 / 17 = 0.750 in = 19.05 mm
    expect(usual.stiffnessWallM).toBeCloseTo(0.01905, 12)
    expect(byMinimum.massKgPerM).toBeLessThan(usual.massKgPerM)
    expect(byMean.inertiaM4).toBeGreaterThan(usual.inertiaM4)
    expect(byMean.massKgPerM).toBe(usual.massKgPerM)
    expect(byMean.faceAreaM2).toBe(usual.faceAreaM2)
  })

  it('takes a measured wall where asked, and refuses one that is missing or too thick', () => {
    expect(must(pipeProperties(pipe({ stiffnessWall: 'given', givenWallM: 0.021 }))).stiffnessWallM).toBe(0.021)
    expect(() => pipeProperties(pipe({ weightWall: 'given' }))).toThrow('givenWallM')
    expect(() => pipeProperties(pipe({ weightWall: 'given', givenWallM: 0.2 }))).toThrow('givenWallM')
  })

  it('names every missing field, and says why a size or DR is not covered', () => {
    expect(pipeProperties(pipe({ size: null, material: null }))).toEqual({ status: 'missing', fields: ['size', 'material'] })
    expect(pipeProperties(pipe({ size: '13' }))).toMatchObject({ status: 'uncovered', field: 'size' })
    expect(pipeProperties(pipe({ dr: 3 }))).toMatchObject({ status: 'uncovered', field: 'dr' })
    expect(pipeProperties(pipe({ system: 'metric', size: '315', dr: 13.5 }))).toMatchObject({ status: 'uncovered', field: 'dr' })
    expect(() => pipeProperties(pipe({ densityKgPerM3: -1 }))).toThrow('densityKgPerM3')
  })

  it('keeps IPS, DIPS and metric apart: three pipes called 12 have three diameters', () => {
    expect(must(pipeProperties(pipe())).odM / 0.0254).toBeCloseTo(12.75, 9)
    expect(must(pipeProperties(pipe({ system: 'DIPS' }))).odM / 0.0254).toBeCloseTo(13.2, 9)
    expect(must(pipeProperties(pipe({ system: 'metric', size: '315' }))).odM).toBe(0.315)
  })

  it('says when a class stands for another designation', () => {
    expect(must(pipeProperties(pipe())).classNote).toBeNull()
    expect(must(pipeProperties(pipe({ material: 'PE100' }))).classNote!.en).toContain('PE4710')
    expect(must(pipeProperties(pipe({ material: 'PE80' }))).modulusClass).toBe('PE2XXX')
  })

  it('gives finite, ordered figures for every size and DR of the tables', () => {
    for (const system of ['IPS', 'DIPS', 'metric'] as const) {
      for (const { size } of sizesOf(system)) {
        for (const dr of drsOf(system, size)) {
          const p = must(pipeProperties(pipe({ system, size, dr })))
          expect(p.idM).toBeGreaterThan(0)
          expect(p.idM).toBeLessThan(p.odM)
          expect(p.meanWallM).toBeGreaterThan(p.minimumWallM)
          expect(p.sectionModulusM3 * (p.odM / 2)).toBeCloseTo(p.inertiaM4, 15)
        }
      }
    }
  })

  it('has ring formulas that agree with the difference of two circles', () => {
    fc.assert(fc.property(fc.double({ min: 0.05, max: 2, noNaN: true }), fc.double({ min: 0.01, max: 0.49, noNaN: true }), (odM, share) => {
      const wallM = share * odM
      const idM = odM - 2 * wallM
      expect(ringAreaM2(odM, wallM) / ((Math.PI / 4) * (odM ** 2 - idM ** 2))).toBeCloseTo(1, 9)
      // I = A (D² + d²) / 16
      expect(ringInertiaM4(odM, wallM) / ((ringAreaM2(odM, wallM) * (odM ** 2 + idM ** 2)) / 16)).toBeCloseTo(1, 9)
    }))
  })
})
