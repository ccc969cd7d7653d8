/*
 * A header on a landfill: 760 ft of 18 IPS DR 17, 16 sticks of 50 ft, a side slope of 1 in 3, vents, exposed liner, wind.
 *
 * must be told                                        check          level
 * side-hill 1.2 times on soil                         side-hill      FIX
 * under 1 on liner                                    side-hill      STOP
 * wind of 35 mph                                      wind-chock     CHECK from 18 mph; FIX where that wind is asked for as a what-if
 * stakes through the liner                            liner-stakes   FIX
 * vent within 10 ft of generator or hot plate         no-ignition    FIX
 * roll-out downhill                                   rack-stops     FIX
 * growth at the end                                   growth-gap     NOTE
 * plates on soft ground, shavings and litter, the hourly log of the meter: no findings (docs/limitations.md)
 */
import { describe, expect, it } from 'vitest'
import { runChecks } from '../../../src/checks/runner.ts'
import { deriveSite } from '../../../src/derive/site.ts'
import type { YardDocument, YardRecord } from '../../../src/scene/document.ts'
import { footM, inchM, mphMPerS } from '../../../src/units/factors.ts'
import { documentOf, free, item, job, layout, onRun, run, setUp } from '../../helpers/documents.ts'
import { machineAt0, withFigures } from '../yardCase.ts'
import { about, levels, raised } from './raised.ts'

const hill = (surface: 'grass' | 'liner', crossFallRatio: number, ...records: readonly YardRecord[]): YardDocument => documentOf(
  layout(), job({ pipe: { system: 'IPS', size: '18', dr: 17, material: 'PE4710' }, stickLengthM: 50 * footM, neededLengthM: 760 * footM, jointLossM: { value: 1.5 * inchM, basis: 'measured' }, wallTemperatureC: { value: 23, basis: 'measured' }, temperatureSwingC: { value: 60 / 1.8, basis: 'measured' }, noseHold: 'slung', test: 'none' }),
  setUp({ fallRatio: 0, crossFallRatio }), run({ surfaces: [surface] }), machineAt0(), ...records,
)

describe('a header on a landfill', () => {
  it('on soil 1 in 3 holds 1.2 times where 1.5 are asked', () => {
    // Friction 0.4 × cos 18.4° ÷ sin 18.4° = 0.4 × 3 = 1.2 (w cosα μ = 9.35, w sinα = 7.8 lb/ft).
    const short = about(hill('grass', 1 / 3), 'side-hill', 'FIX')!
    expect(short.measured!.value).toBeCloseTo(1.2, 2)
  })
  it('on exposed liner it slides by itself', () => {
    // Friction 0.3 × 3 = 0.9.
    expect(about(hill('liner', 1 / 3), 'side-hill', 'STOP')!.measured!.value).toBeCloseTo(0.9, 2)
    expect(levels(hill('grass', 0), 'side-hill')).toEqual(['met'])
  })
  it('wind rolls it from 18 mph, so 35 mph is too much', () => {
    const document = hill('grass', 0)
    expect(Math.round(about(document, 'wind-chock', 'CHECK')!.measured!.value! / mphMPerS)).toBe(18)
    const windy = runChecks(deriveSite(document, { whatIf: { windMPerS: 35 * mphMPerS } })).findings.filter(({ checkId }) => checkId === 'wind-chock')
    expect(windy.map(({ level }) => level)).toContain('FIX')
  })
  it('no stake goes through the liner', () => {
    const stake = item('guide', 'guide:1', onRun(80, { offsetM: 1 }))
    expect([levels(hill('liner', 0, stake), 'liner-stakes'), levels(hill('grass', 0, stake), 'liner-stakes')]).toEqual([['FIX'], []])
  })
  it('generator and hot plate keep 10 ft from a vent', () => {
    const vent = item('vent', 'vent:1', free(30, 10), { isClear: false })
    const gear = (distanceM: number) => [item('generator', 'generator:1', free(30 + distanceM, 10)), item('plateHolder', 'plateHolder:1', free(30, 10 + distanceM), { onGrass: false })]
    expect(raised(hill('grass', 0, vent, ...gear(3)), 'no-ignition').filter(({ level }) => level === 'FIX').map(({ itemIds }) => itemIds[0]).toSorted()).toEqual(['generator:1', 'plateHolder:1'])
    expect(levels(hill('grass', 0, vent, ...gear(6)), 'no-ignition')).toEqual([])
  })
  it('what rolls off the rack on 1 in 3 does not stop', () => {
    const rack = withFigures('rack', 'rack:1', onRun(-8), { tiltRatio: 0.03 }, { stopsLeft: false, stopsRight: false })
    expect(levels(hill('grass', 1 / 3, rack), 'rack-stops')).toContain('FIX')
  })
  it('it grows by some 45 to 62 in at its end', () => {
    // 798 ft × 60 °F: 0.8 × 10⁻⁴ /°F and less.
    const inches = about(hill('grass', 0), 'growth-gap', 'NOTE')!.measured!.value! / inchM
    expect([inches > 40, inches < 65]).toEqual([true, true])
  })
})
