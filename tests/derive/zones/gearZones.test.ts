import { describe, expect, it } from 'vitest'
import { zonesAt } from '../../../src/derive/zones.ts'
import type { Zone } from '../../../src/derive/zones.ts'
import { rollOffM } from '../../../src/derive/zones/rackRollOff.ts'
import type { SiteModel } from '../../../src/derive/types.ts'
import { phases, type Phase } from '../../../src/scene/parts.ts'
import { free, item, onRun } from '../../helpers/documents.ts'
import { ftM, machineAt0, siteOf, withFigures } from '../../checks/yardCase.ts'
import { boxOf } from './zoneBox.ts'

const all = (site: SiteModel, id: string, phase: Phase): Zone[] => zonesAt(site, { phase, joint: 1 }).filter((one) => one.id === id)
const classes = (site: SiteModel, id: string): string[] => phases.map((phase) => all(site, id, phase)[0]?.zoneClass ?? '')

describe('carriage and jaws (Z-04)', () => {
  it('is the machine, its carriage travel on the carriage side, and 3 ft', () => {
    // 3.35 × 1.9 m, travel 0.3 m to the infeed: from −(1.675 + 0.9144 + 0.3) to 1.675 + 0.9144, ±(0.95 + 0.9144).
    const [zone] = all(siteOf({}, machineAt0()), 'Z-04', 'fuse')
    const box = boxOf(zone!)
    expect([box.minXM, box.maxXM, box.maxYM]).toEqual([expect.closeTo(-2.8894, 9), expect.closeTo(2.5894, 9), expect.closeTo(1.8644, 9)])
    expect(zone!.mayEnter).toEqual(['operator'])
  })

  it('is RED while fusing, AMBER in set-up, load and pull', () => {
    expect(classes(siteOf({}, machineAt0()), 'Z-04')).toEqual(['AMBER', '', 'AMBER', 'RED', 'AMBER', '', '', ''])
  })

  it('names sizes nobody gave', () => {
    const [zone] = all(siteOf({}, withFigures('machine', 'machine:1', onRun(0), { lengthM: null })), 'Z-04', 'fuse')
    expect(zone!.missing.map(({ recordId, path }) => `${recordId} ${path}`)).toEqual(['machine:1 figures.lengthM.value'])
  })
})

describe('loader swing (Z-07)', () => {
  it('is half a stick and the reach, and 3 ft, about the loader', () => {
    // 50 ft stick at 14 ft reach: √(25² + 14²) = 28.65 ft, and 3.
    const site = siteOf({ job: { stickLengthM: 50 * ftM } }, withFigures('loader', 'loader:1', free(30, 20), { reachM: 14 * ftM }))
    const box = boxOf(all(site, 'Z-07', 'load')[0]!)
    expect(box.maxXM - 30).toBeCloseTo((Math.hypot(25, 14) + 3) * ftM, 6)
    expect(20 - box.minYM).toBeCloseTo((Math.hypot(25, 14) + 3) * ftM, 6)
  })

  it('is RED in set-up, offload, load, move and tie-in', () => {
    expect(classes(siteOf({}, item('loader', 'loader:1', free(30, 20))), 'Z-07')).toEqual(['RED', 'RED', 'RED', '', '', 'RED', '', 'RED'])
  })

  it('names stick length and reach nobody gave, at the largest usual', () => {
    const [zone] = all(siteOf({ job: { stickLengthM: null } }, withFigures('loader', 'loader:1', free(0, 20), { reachM: null })), 'Z-07', 'load')
    expect(zone!.missing.map(({ path }) => path)).toEqual(['stickLengthM', 'figures.reachM.value'])
    // 50 ft stick, 4.27 m (14 ft) reach.
    expect(boxOf(zone!).maxXM).toBeCloseTo(Math.hypot(7.62, 4.27) + 0.9144, 6)
  })
})

describe('roll-off', () => {
  it('runs h over resistance less slope, and nowhere stops from half the resistance on', () => {
    // 30 in on grass 0.05: level 0.762/0.05 = 15.24 m; 1 % down 0.762/0.04 = 19.05 m; 1 % up 12.7 m; 2.5 % is half of 0.05.
    const at = (fallRatio: number) => rollOffM({ heightM: 0.762, fallRatio, resistanceRatio: 0.05 })
    expect([at(0).reachM, at(0.01).reachM, at(-0.01).reachM]).toEqual([expect.closeTo(15.24, 9), expect.closeTo(19.05, 9), expect.closeTo(12.7, 9)])
    expect([at(0.024).isStopped, at(0.025).isStopped]).toEqual([true, false])
    // On concrete (0.01) a pipe from 30 in runs 76 m: farther than is drawn, taken as not stopped.
    expect(rollOffM({ heightM: 0.762, fallRatio: 0, resistanceRatio: 0.01 })).toEqual({ reachM: 30, isStopped: false })
  })
})

describe('roll-off beside the rack (Z-02)', () => {
  const rack = (over: Record<string, unknown>) => item('rack', 'rack:1', onRun(-6), { openSide: 'R', height: { rule: 'aboveGround', saddleM: 0.762 }, ...over })
  const up = { stopsLeft: true, stopsRight: true }

  it('with stops up is 10 ft beyond the open side and 6 ft past each end', () => {
    // Beams 7.112 m apart, 3.048 m long, 0.3 m of it on the closed side: open edge at 2.748 m, 3.048 m beyond it.
    const [zone, ...others] = all(siteOf({}, rack(up)), 'Z-02', 'load')
    const box = boxOf(zone!)
    expect([box.minXM, box.maxXM]).toEqual([expect.closeTo(-6 - 3.556 - 1.8288, 9), expect.closeTo(-6 + 3.556 + 1.8288, 9)])
    expect([box.minYM, box.maxYM]).toEqual([expect.closeTo(-2.748 - 3.048, 9), expect.closeTo(-0.3, 9)])
    expect([zone!.missing, others]).toEqual([[], []])
  })

  it('is RED while loading and AMBER else; RED throughout where a stop is down', () => {
    expect(classes(siteOf({}, rack(up)), 'Z-02')).toEqual(['AMBER', 'AMBER', 'RED', 'AMBER', 'AMBER', 'AMBER', 'AMBER', 'AMBER'])
    expect(classes(siteOf({}, rack({ ...up, stopsLeft: false })), 'Z-02')).toEqual(phases.map(() => 'RED'))
  })

  it('reaches as far as a pipe rolls where a stop is down', () => {
    // Left, closed side, grass, level: 0.762 m over 0.05 = 15.24 m from 0.3 m.
    expect(boxOf(all(siteOf({}, rack({ ...up, stopsLeft: false })), 'Z-02', 'load')[0]!).maxYM).toBeCloseTo(0.3 + 15.24, 9)
    // Ground falling 1 % to the left: 0.762 / 0.04.
    expect(boxOf(all(siteOf({ setUp: { crossFallRatio: -0.01 } }, rack({ ...up, stopsLeft: false })), 'Z-02', 'load')[0]!).maxYM).toBeCloseTo(0.3 + 19.05, 9)
  })

  it('judges 10 ft beside an open stop whatever the ground, and what lies beyond only when the ground is known', () => {
    const [certain, unknown, ...others] = all(siteOf({ setUp: { crossFallRatio: null }, run: { surfaces: [null] } }, rack({ ...up, stopsLeft: false })), 'Z-02', 'load')
    expect([certain!.missing, certain!.zoneClass, certain!.key]).toEqual([[], 'RED', 'Z-02@rack:1'])
    expect(boxOf(certain!).maxYM).toBeCloseTo(0.3 + 3.048, 9)
    expect(unknown!.missing.map(({ path }) => path)).toEqual(['surfaces', 'crossFallRatio'])
    expect(boxOf(unknown!).maxYM).toBeCloseTo(30.3, 9)
    expect(others).toEqual([])
  })

  it('names stops nobody has mentioned and takes nothing for granted', () => {
    const [zone, ...others] = all(siteOf({}, rack({ stopsLeft: null, stopsRight: null })), 'Z-02', 'load')
    expect(zone!.missing.map(({ path }) => path)).toEqual(['stopsLeft', 'stopsRight'])
    expect(others).toEqual([])
  })

  it('lets only the infeed hand in', () => {
    expect(all(siteOf({}, rack(up)), 'Z-02', 'load')[0]!.mayEnter).toEqual(['infeedHand'])
  })
})
