import { describe, expect, it } from 'vitest'
import { zonesAt } from '../../../src/derive/zones.ts'
import { clearSpot } from '../../../src/derive/clearSpot.ts'
import { defaultCrew } from '../../../src/derive/crewDefaults.ts'
import { depthIn, judging, zoneStagesOf } from '../../../src/derive/zoneStages.ts'
import type { ZoneChangeRecord } from '../../../src/scene/records/beside.ts'
import { phases } from '../../../src/scene/parts.ts'
import { free, item, onRun } from '../../helpers/documents.ts'
import { boxM, ftM, machineAt0, rackAtInfeed, rollersAt, siteOf, withFigures } from '../../checks/yardCase.ts'
import { boxOf } from './zoneBox.ts'

const change = (over: Partial<ZoneChangeRecord>): ZoneChangeRecord => ({ id: 'zoneChange:1', kind: 'zoneChange', zoneKey: 'Z-04@machine:1', marginM: null, points: null, zoneClass: null, phases: null, reason: 'site rule', ...over })
const carriageOf = (over: Partial<ZoneChangeRecord>, phase: (typeof phases)[number] = 'fuse') => zonesAt(siteOf({}, machineAt0(), change(over)), { phase, joint: 1 }).find(({ id }) => id === 'Z-04')

describe('zones changed by hand', () => {
  it('take another class and say why', () => {
    const zone = carriageOf({ zoneClass: 'AMBER' })!
    expect([zone.zoneClass, zone.changedBecause]).toEqual(['AMBER', 'site rule'])
    expect(carriageOf({}, 'fuse')!.zoneClass).toBe('RED')
  })

  it('live in other phases', () => {
    expect(carriageOf({ phases: ['rest'] }, 'fuse')).toBeUndefined()
    expect(carriageOf({ phases: ['rest'] }, 'rest')!.phases).toEqual(['rest'])
  })

  it('grow by a margin all round', () => {
    const [before, after] = [boxOf(carriageOf({})!), boxOf(carriageOf({ marginM: 1 })!)]
    expect([after.maxXM - before.maxXM, after.maxYM - before.maxYM, before.minXM - after.minXM]).toEqual([expect.closeTo(1, 6), expect.closeTo(1, 6), expect.closeTo(1, 6)])
  })

  it('take an outline drawn instead', () => {
    expect(boxOf(carriageOf({ points: boxM(1, 2, 3, 5) })!)).toEqual({ minXM: 1, maxXM: 2, minYM: 3, maxYM: 5 })
  })

  it('leave other zones alone', () => {
    expect(carriageOf({ zoneKey: 'Z-04@machine:2', zoneClass: 'BLUE' })!.zoneClass).toBe('RED')
  })
})

describe('zones drawn by hand', () => {
  it('live in their phases with their class and sentence', () => {
    const site = siteOf({}, item('zone', 'zone:1', boxM(0, 4, 0, 3), { phases: ['pull'], zoneClass: 'BLUE', sentence: 'Kept for the ambulance.', name: 'lane' }))
    expect(zonesAt(site, { phase: 'fuse', joint: 1 }).some(({ id }) => id === 'hand')).toBe(false)
    const zone = zonesAt(site, { phase: 'pull', joint: 1 }).find(({ id }) => id === 'hand')!
    expect([zone.key, zone.zoneClass, zone.sentence.en, zone.name.en]).toEqual(['hand@zone:1', 'BLUE', 'Kept for the ambulance.', 'lane'])
  })
})

describe('overhead line (Z-16)', () => {
  const line = (voltageV: number | null, lowestHeightM: number | null = 9) => zonesAt(siteOf({}, withFigures('overheadLine', 'overheadLine:1', [{ xM: 0, yM: 40 }, { xM: 100, yM: 40 }], { voltageV, lowestHeightM })), { phase: 'rest', joint: 1 }).find(({ id }) => id === 'Z-16')!
  const reachFt = (voltageV: number | null): number => (boxOf(line(voltageV)).maxYM - 40) / ftM

  it('keeps the larger of both rules to each side, upper bounds inclusive', () => {
    // 29 CFR 1926.1408 Table A: to 50 kV 10 ft, 200 15, 350 20, 500 25, 750 35, 1,000 45. 1926.600(a)(6), from memory: 10 ft + 0.4 in per kV over 50:
    // at 200 kV 15 ft, 350 kV 20 ft, 500 kV 25 ft, 750 kV 33.33 ft, 1,000 kV 41.67 ft: nowhere larger.
    const kv = [50, 50.001, 200, 200.001, 350, 350.001, 500, 500.001, 750, 750.001, 1000]
    const expected = [10, 15, 15, 20, 20, 25, 25, 35, 35, 45, 45]
    kv.forEach((voltageKv, i) => expect(reachFt(voltageKv * 1000), `${voltageKv} kV`).toBeCloseTo(expected[i]!, 6))
  })

  it('is RED in every phase, for gear, with its source', () => {
    const zone = line(12_000)
    expect([zone.phases, zone.keepsOut, zone.source.class]).toEqual([phases, 'gear', 'published'])
    expect(zone.source.cite).toContain('1926.1408')
  })

  it('takes the 20 ft of the rules where the voltage is not known, and names what is', () => {
    // 29 CFR 1926.1408: 20 ft until the voltage is known.
    expect(reachFt(null)).toBeCloseTo(20, 6)
    expect(line(null, null).missing.map(({ path }) => path)).toEqual(['figures.voltageV.value', 'figures.lowestHeightM.value'])
  })
})

describe('how deep a place lies in a zone', () => {
  const square = { rings: [boxM(0, 10, 0, 10), boxM(5, 15, 0, 10)] }

  it('is its distance from the outline; nothing on the edge or outside', () => {
    expect(depthIn(square, { xM: 2, yM: 5 })).toBeCloseTo(2, 9)
    expect(depthIn(square, { xM: 0, yM: 5 })).toBe(0)
    expect(depthIn(square, { xM: -1, yM: 5 })).toBe(0)
  })

  it('adds rings up', () => {
    // In both squares: 4 m from the far edge of the first, 1 m from the near edge of the second.
    expect(depthIn(square, { xM: 6, yM: 5 })).toBeCloseTo(4, 9)
    expect(depthIn(square, { xM: 14, yM: 5 })).toBeCloseTo(1, 9)
  })
})

describe('default crew spots', () => {
  const stops = { stopsLeft: true, stopsRight: true }
  const yard = (...records: Parameters<typeof siteOf>[1][]) => siteOf({}, machineAt0(), rackAtInfeed(stops), ...rollersAt(11 * ftM, 320 * ftM, 11 * ftM), withFigures('puller', 'puller:1', onRun(100), {}, { guardedCab: true }), ...records)

  it('stand where the task wants them on an open yard, to a quarter of a metre', () => {
    const spots = Object.fromEntries(defaultCrew(yard()).map((spot) => [spot.role, spot]))
    // Operator 3 ft from a machine 1.9 m wide on the rack's closed side (left): −(0.95 + 0.9144).
    expect([spots.operator!.runningM, spots.operator!.offsetM]).toEqual([0, expect.closeTo(-1.8644, 3)])
    // Exit hand down-string of half a machine 3.35 m long, 3 ft and 6 in: 1.675 + 0.9144 + 0.1524; 5 ft off.
    expect([spots.exitHand!.runningM, spots.exitHand!.offsetM]).toEqual([expect.closeTo(2.7418, 3), expect.closeTo(-1.524, 3)])
    // 18 ft 6 in off.
    expect(spots.noseSpotter!.offsetM).toBeCloseTo(-5.6388, 3)
    expect(spots.pullerOperator).toMatchObject({ runningM: 100, offsetM: 0, phases: ['pull'] })
  })

  it('lie in no live zone that shuts them out, with loader, truck and obstacles about', () => {
    const site = yard(withFigures('loader', 'loader:1', free(-8, -12), {}), item('offload', 'offload:1', free(-10, -30)), item('building', 'building:1', boxM(1, 6, 1.5, 6)))
    const spots = defaultCrew(site)
    expect(spots.map(({ role }) => role)).toEqual(['operator', 'infeedHand', 'exitHand', 'loaderOperator', 'spotter', 'driver', 'noseSpotter', 'pullerOperator'])
    for (const { role, runningM, offsetM, phases: used } of spots) {
      for (const { stage, zones } of zoneStagesOf(site)) {
        if (!used.includes(stage.phase)) continue
        const shutIn = zones.filter((zone) => zone.zoneClass === 'RED' && judging(zone) && !zone.mayEnter.includes(role) && depthIn(zone, site.atRunning(runningM, offsetM)) > 0.001)
        expect(shutIn.map(({ key }) => key), `${role} in ${stage.phase}`).toEqual([])
      }
    }
  })

  it('leave out a puller operator whose cab has no guard', () => {
    const site = siteOf({}, machineAt0(), withFigures('puller', 'puller:1', onRun(100), {}, { guardedCab: false }))
    expect(defaultCrew(site).some(({ role }) => role === 'pullerOperator')).toBe(false)
  })

  it('find nothing where everything is shut', () => {
    const site = siteOf({}, item('zone', 'zone:1', boxM(-200, 300, -200, 200)))
    const zones = zonesAt(site, { phase: 'pull', joint: 1 })
    expect(clearSpot(site, { runningM: 0, offsetM: 3 }, zones)).toBeNull()
  })
})
