import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { inchM, poundForceN } from '../../src/units/factors.ts'
import { formatOffset, formatQuantity, formatRunning } from '../../src/units/format.ts'
import type { FormatOptions, UnitSystem } from '../../src/units/format.ts'
import { parseLength, parseQuantity } from '../../src/units/parse.ts'
import { quantityKinds } from '../../src/units/quantity.ts'
import type { QuantityKind } from '../../src/units/quantity.ts'

// One seed, so that a failing run can be repeated.
fc.configureGlobal({ seed: 20_261 })

const options = fc.record({
  system: fc.constantFrom<UnitSystem>('feetInches', 'metric'),
  language: fc.constantFrom<'en' | 'es'>('en', 'es'),
  style: fc.constantFrom<'long' | 'tape'>('long', 'tape'),
})

/** Largest value tried, in SI, and whether the kind may be negative. */
const ranges: Record<QuantityKind, { most: number; signed: boolean }> = {
  length: { most: 90_000, signed: true }, shortLength: { most: 20, signed: true }, height: { most: 20, signed: true },
  force: { most: 1e7, signed: false }, mass: { most: 1e6, signed: false }, moment: { most: 1e7, signed: true }, stress: { most: 1e9, signed: false }, pressure: { most: 1e8, signed: false },
  lineLoad: { most: 1e4, signed: false }, temperature: { most: 200, signed: true }, temperatureChange: { most: 100, signed: true }, ratio: { most: 50, signed: false }, percent: { most: 5, signed: false }, angle: { most: 1.5, signed: true },
  slope: { most: 1, signed: true }, count: { most: 5000, signed: false }, voltage: { most: 1e6, signed: false }, area: { most: 1e5, signed: false }, pistonArea: { most: 0.1, signed: false }, duration: { most: 4e6, signed: false }, speed: { most: 60, signed: false },
}

/** Half the step a text is rounded to, in SI: the larger of half a unit in the third digit and half the finest step. */
function roundingOf(kind: QuantityKind, value: number, system: UnitSystem): number {
  const size = Math.abs(value)
  const isFeet = system === 'feetInches'
  if (kind === 'length' && !isFeet) return 0.005
  if (kind === 'shortLength' || kind === 'height' || kind === 'length') return isFeet ? inchM / 32 : size >= 10 ? 0.005 : 0.0005
  // min to 0.1 below 2 h, then h to 0.1
  if (kind === 'duration') return Math.max(0.005 * size, size >= 7170 ? 180 : size >= 119.5 ? 3 : 0.5)
  const halfStep: Partial<Record<QuantityKind, number>> = { temperature: isFeet ? 0.5 / 1.8 : 0.5, temperatureChange: isFeet ? 0.5 / 1.8 : 0.5, angle: (0.05 * Math.PI) / 180, count: 0.5, speed: isFeet ? 0.05 * 0.44704 : 0.05 }
  const finest = { force: 0.5 * poundForceN, mass: isFeet ? 0.5 * 0.45359237 : 0.05, moment: 0.7, stress: isFeet ? 3500 : 500, pressure: isFeet ? 3500 : 500, lineLoad: 0.1, percent: 0.0005, slope: 0.0005, ratio: 0.005, voltage: 0.5, area: 0.005, pistonArea: 5e-7 }
  return halfStep[kind] ?? Math.max(0.005 * size, finest[kind as keyof typeof finest])
}

describe('every text shown reads back as the value it showed', () => {
  it.each(quantityKinds)('%s', (kind) => {
    const { most, signed } = ranges[kind]
    // Half the values small, so that the short forms are met as often as the long ones.
    const value = fc.oneof(fc.double({ min: signed ? -most : 0, max: most, noNaN: true }), fc.double({ min: signed ? -most / 500 : 0, max: most / 500, noNaN: true }))
    fc.assert(fc.property(value, options, (si, format) => {
      const text = formatQuantity({ kind, value: si }, format)
      const back = parseQuantity(text, kind, format.system, { allowNegative: true })
      if (!back.ok) throw new Error(`"${text}" gave ${JSON.stringify(back)}`)
      expect(Math.abs(back.value - si), `"${text}" for ${si} read as ${back.value}`).toBeLessThanOrEqual(roundingOf(kind, si, format.system) * (1 + 1e-9) + 1e-12)
      // What was read is shown the same again, so that leaving a field never drifts.
      expect(formatQuantity({ kind, value: back.value }, format)).toBe(text)
    }), { numRuns: 500 })
  })

  it('holds for running distances and offsets with their side words', () => {
    fc.assert(fc.property(fc.double({ min: -500, max: 500, noNaN: true }), options, (valueM, format: FormatOptions) => {
      const field = format.system === 'metric' ? 'm' as const : 'feetInches' as const
      const running = parseLength(formatRunning(valueM, format), { fieldUnit: field, allowNegative: true })
      const offset = parseLength(formatOffset(valueM / 100, format), { fieldUnit: field, allowNegative: true })
      if (!running.ok || !offset.ok) throw new Error(`${formatRunning(valueM, format)} or ${formatOffset(valueM / 100, format)} was not read`)
      expect(Math.abs(running.valueM - valueM)).toBeLessThanOrEqual(roundingOf('length', valueM, format.system) + 1e-9)
      expect(Math.abs(offset.valueM - valueM / 100)).toBeLessThanOrEqual(roundingOf('shortLength', valueM / 100, format.system) + 1e-9)
    }))
  })
})

describe('whatever is typed', () => {
  it('never throws and never reads a number that is not finite', () => {
    const piece = fc.constantFrom('12', '6', "'", '"', '-', ' ', '½', '1/2', 'ft', 'in', 'm', 'mm', ',', '.', 'R', 'exit', '3,81', '1,234', '°', '%', 'e', '’', '/')
    fc.assert(fc.property(fc.oneof(fc.string({ maxLength: 80 }), fc.array(piece, { maxLength: 9 }).map((parts) => parts.join(''))), fc.constantFrom(...quantityKinds), options, (text, kind, { system }) => {
      const read = parseQuantity(text, kind, system, { allowNegative: true })
      if (read.ok) expect(Number.isFinite(read.value)).toBe(true)
      else if (read.reason === 'ask') expect(read.choices.length).toBeGreaterThan(1)
      else expect(read.detail.en && read.detail.es && read.example).toBeTruthy()
    }), { numRuns: 3000 })
  })
})
