import { describe, expect, it } from 'vitest'
import { clockOf, fusionFiguresOf } from '../../src/derive/clock.ts'
import { mobilisingOf } from '../../src/derive/mobilising.ts'
import { deriveSite } from '../../src/derive/site.ts'
import type { MachineRecord } from '../../src/scene/kinds/machine.ts'
import { unknownFigure } from '../../src/scene/parts.ts'
import { jobUnsaid } from '../../src/scene/records/frame.ts'
import { inchM, psiPa } from '../../src/units/factors.ts'
import { dayOf, minutesOf, timeText } from '../../src/units/timeOfDay.ts'
import { fusionYard } from '../helpers/fusionYard.ts'

describe('the clock of a layout', () => {
  it('names the start that nobody gave and reckons from 7:00', () => {
    const clock = clockOf(deriveSite(fusionYard({ neededFt: 115 })))
    expect(clock.missing.map(({ path }) => path)).toEqual(['clock.startMin'])
    expect([clock.joints, clock.likely?.rows.length, clock.likely?.rows[0]?.loadMin]).toEqual([2, 2, 420])
  })
  it('is unknown without a pipe, and names it', () => {
    const clock = clockOf(deriveSite(fusionYard({ job: { pipe: null } })))
    expect([clock.steps, clock.likely, clock.missing.map(({ path }) => path)]).toEqual([null, null, ['pipe', 'clock.startMin']])
  })
  it('takes the times of the own procedure', () => {
    const procedure = { name: 'P', heaterC: unknownFigure(), soakS: unknownFigure(), openCloseS: unknownFigure(), coolS: { value: 3600, basis: 'jobRule' as const }, holdBeforePullS: unknownFigure(), interfacialPressurePa: unknownFigure(), beadM: unknownFigure() }
    const clock = clockOf(deriveSite(fusionYard({ job: { ...jobUnsaid(), procedure, clock: { startMin: 360, endMin: null, breaks: [] } } })))
    expect(clock.steps?.find(({ step }) => step === 'cool')).toMatchObject({ likelyS: 3600, source: 'procedure' })
    expect(clock.missing).toEqual([])
  })
  it('is longest for the slow round and shortest for the quick one', () => {
    const { low, likely, high } = clockOf(deriveSite(fusionYard({ neededFt: 300 })))
    const end = (of: typeof low): number => of!.rows.at(-1)!.cooledMin
    expect([end(low) < end(likely), end(likely) < end(high)]).toEqual([true, true])
  })
})

describe('the fusion card', () => {
  it('gives 12 in DR 17 its figures: wall 0.750 in, 75 psi on a face of 28.3 in² (PPI TR-33; ASTM F2620, times and bead from memory)', () => {
    const card = fusionFiguresOf(deriveSite(fusionYard()))!
    // Face π (12.75 − 0.75) 0.75 = 28.27 in²; 75 psi on it 2,121 lb.
    expect(card.forceN / (psiPa * inchM ** 2)).toBeCloseTo(75 * Math.PI * 12 * 0.75, 0)
    expect(card.coolS / 60).toBeCloseTo(8.25, 9)
    expect(card.hiLoM / inchM).toBeCloseTo(0.075, 9)
    expect(card.beadM / inchM).toBeCloseTo(0.25, 9)
    expect([card.heaterOutS, card.gaugePa, card.missing.map(({ path }) => path)]).toEqual([15, null, ['figures.pistonAreaM2.value']])
  })
  it('reads the gauge once the piston area is known', () => {
    const yard = fusionYard()
    const machine = yard.records['machine:1'] as MachineRecord
    const known = { records: { ...yard.records, 'machine:1': { ...machine, figures: { ...machine.figures, pistonAreaM2: { value: 9.4 * inchM ** 2, basis: 'plate' as const } } } } }
    // 2,121 lb ÷ 9.4 in² = 225.6 psi
    expect(fusionFiguresOf(deriveSite(known))!.gaugePa! / psiPa).toBeCloseTo((75 * Math.PI * 9) / 9.4, 6)
  })
  it('is empty without a pipe', () => expect(fusionFiguresOf(deriveSite(fusionYard({ job: { pipe: null } })))).toBeNull())
})

describe('what to bring', () => {
  it('counts what stands on the plan with spares, and trucks by room', () => {
    const list = mobilisingOf(deriveSite(fusionYard({ rollers: [60, 70], neededFt: 115 })))
    expect(list.rows.map(({ kind, placed, bring }) => [kind, placed, bring])).toEqual([['machine', 1, 1], ['rack', 1, 1], ['stand', 2, 4], ['roller', 2, 3]])
    // 8.5 ft takes 8 pipes of 12.75 in beside each other.
    expect([list.sticks, list.truck?.perRow, list.truck?.loads]).toEqual([3, 8, 1])
  })
  it('knows no mass and no trucks without a pipe', () => {
    expect(mobilisingOf(deriveSite(fusionYard({ job: { pipe: null } })))).toMatchObject({ stickMassKg: null, truck: null })
  })
})

describe('a time of day', () => {
  it('is written and read by the 24 h clock', () => {
    expect([timeText(425), timeText(1440 + 5), minutesOf('07:05'), minutesOf('24:00'), minutesOf('')]).toEqual(['07:05', '00:05', 425, null, null])
  })
})

describe('the day of a time', () => {
  it('goes on past midnight where work has no end', () => {
    // 42 h 35 min after the first midnight is 18:35 of the second day; 23:59.7 reads 00:00 of the next.
    expect([dayOf(0, 2555), timeText(2555)]).toEqual([1, '18:35'])
    expect([dayOf(0, 1439.7), timeText(1439.7)]).toEqual([1, '00:00'])
    expect(dayOf(2, 600)).toBe(2)
  })
})
