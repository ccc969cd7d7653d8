/*
 * A gas main on a road shoulder, the machine walking: 1,320 ft of 8 in IPS DR 11, 34 sticks strung past 11 driveways, a
 * sidewalk on the pole side, service drops over it.
 *
 * must be told                                          check           level
 * service drop of unknown height and voltage over boom  overhead-line   STOP
 * sidewalk inside the loader's swing                    public-way      STOP, set-up to move
 * 11 driveways under the strung pipe                    walk-crossings  CHECK, all named
 * a stick of 337 lb is not carried by hand              stick-carry     FIX without a loader, NOTE with one
 * first driveway is the emergency access                emergency-lane  FIX where the string cuts it without a plan
 * crew of two languages                                 hand-signals    CHECK
 * taper of a closed lane, 54 ft at 35 mph and 8 ft      lane-taper      CHECK with the figure
 * nose spacing of 10.1 ft                               the walking machine leaves the string where it lies: no nose arrives
 * qualified gas joiner, static: no findings (docs/limitations.md); the talk in Spanish is a setting of the talk
 */
import { describe, expect, it } from 'vitest'
import type { YardDocument } from '../../../src/scene/document.ts'
import { footM, mphMPerS, poundForceN } from '../../../src/units/factors.ts'
import { free, item, onRun } from '../../helpers/documents.ts'
import { driveway, laneSite } from '../walkCase.ts'
import { withFigures } from '../yardCase.ts'
import { about, levels, raised } from './raised.ts'

const drives = Array.from({ length: 11 }, (_, i) => driveway(i + 1, 60 + i * 115, 14 + i))
const loader = withFigures('loader', 'loader:1', onRun(98, { offsetM: -3 }), { topHeightM: 4, plateLoadN: 1800 * poundForceN })
const sidewalk = withFigures('walkway', 'walkway:1', [{ xM: -20, yM: 4 }, { xM: 420, yM: 4 }], { widthM: 1.2 }, { name: 'sidewalk', access: 'open' })
const drop = withFigures('overheadLine', 'overheadLine:1', [{ xM: 100, yM: -20 }, { xM: 100, yM: 20 }], { lowestHeightM: null, voltageV: null }, { name: 'service drop' })
const shoulder = (...records: Parameters<typeof laneSite>[1][]): YardDocument => laneSite({}, ...records).document

const street = shoulder(...drives, loader, sidewalk, drop)

describe('a gas main on a road shoulder', () => {
  it('a service drop nobody has measured stops the boom', () => {
    const stop = about(street, 'overhead-line', 'STOP', 'overheadLine:1')!
    expect([stop.isUnknown, stop.itemIds.includes('loader:1')]).toEqual([false, true])
  })
  it('measured at 16 ft and low voltage, a boom kept to 6 ft passes under it', () => {
    // 10 ft up to 50 kV (29 CFR 1926.1408 table A): 16 − 10 = 6 ft.
    const low = shoulder(withFigures('loader', 'loader:1', onRun(98, { offsetM: -3 }), { topHeightM: 5.9 * footM, plateLoadN: 8000 }), withFigures('overheadLine', 'overheadLine:1', [{ xM: 100, yM: -20 }, { xM: 100, yM: 20 }], { lowestHeightM: 16 * footM, voltageV: 240 }))
    expect(levels(low, 'overhead-line')).not.toContain('STOP')
  })
  it('an open sidewalk in the swing of the loader is stopped while sticks come in', () => {
    const stop = about(street, 'public-way', 'STOP', 'walkway:1')!
    expect(stop.phases).toEqual(expect.arrayContaining(['offload', 'load']))
    expect(levels(shoulder(withFigures('walkway', 'walkway:1', [{ xM: -20, yM: 40 }, { xM: 420, yM: 40 }], { widthM: 1.2 }, { access: 'open' }), loader), 'public-way')).not.toContain('STOP')
  })
  it('all 11 driveways under the strung pipe are told at once', () => {
    const blocked = about(street, 'walk-crossings', 'CHECK')!
    expect([blocked.measured!.value, blocked.itemIds.length]).toEqual([11, 11])
  })
  it('a stick of 337 lb is nobody’s to carry', () => {
    const [bare] = raised(shoulder(), 'stick-carry')
    // 8.43 lb/ft × 40 ft.
    expect([bare!.level, bare!.measured!.value! / poundForceN]).toEqual(['FIX', expect.closeTo(337, 0)])
    expect(levels(street, 'stick-carry')).toEqual(['NOTE'])
  })
  it('the string across the emergency access wants a plan to open it', () => {
    const access = (gapPlan: boolean) => levels(shoulder(withFigures('emergencyLane', 'emergencyLane:1', [{ xM: 60 * footM, yM: -20 }, { xM: 60 * footM, yM: 20 }], { widthM: 20 * footM, clearHeightM: 13.5 * footM }, { gapPlan })), 'emergency-lane-clear')
    expect([access(false), access(true)]).toEqual([['FIX'], ['NOTE']])
  })
  it('a crew that speaks two languages agrees on hand signals', () => {
    const crew = (id: number, language: 'en' | 'es') => item('crew', `crew:${id}`, free(-5 - id, 8), { role: 'spotter', phases: ['load'], language })
    expect(levels(shoulder(crew(1, 'en'), crew(2, 'es')), 'hand-signals')).toEqual(['CHECK'])
    expect(levels(shoulder(crew(1, 'en'), crew(2, 'en')), 'hand-signals')).not.toContain('CHECK')
  })
  it('a shoulder closed at 35 mph over 8 ft needs a taper of 54 ft', () => {
    const lane = withFigures('trafficLane', 'trafficLane:1', [{ xM: 0, yM: 6 }, { xM: 100, yM: 6 }], { widthM: 8 * footM, speedMPerS: 35 * mphMPerS }, { closed: true })
    const [taper] = raised(shoulder(lane), 'lane-taper')
    // L = W S² / 60 = 8 × 35² / 60 = 163 ft up to 40 mph; shoulder L/3 = 54 ft (MUTCD).
    const values = JSON.stringify(taper!.what.values)
    expect([taper!.level, [54.4 * footM, 163.3 * footM].some((lengthM) => values.includes(lengthM.toFixed(1).slice(0, 3)))]).toEqual(['CHECK', true])
  })
})
