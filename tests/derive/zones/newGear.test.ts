import { describe, expect, it } from 'vitest'
import { zonesAt, type Zone } from '../../../src/derive/zones.ts'
import { stackHeightM } from '../../../src/derive/zones/stackSide.ts'
import type { SiteModel } from '../../../src/derive/types.ts'
import type { YardRecord } from '../../../src/scene/document.ts'
import { phases, type Phase } from '../../../src/scene/parts.ts'
import { free, item, onRun } from '../../helpers/documents.ts'
import { boxM, ftM, inM, machineAt0, rackAtInfeed, rollersAt, siteOf, withFigures } from '../../checks/yardCase.ts'
import { boxOf } from './zoneBox.ts'

const all = (site: SiteModel, id: string, phase: Phase, joint = 1): Zone[] => zonesAt(site, { phase, joint }).filter((one) => one.id === id)
const one = (site: SiteModel, id: string, phase: Phase, joint = 1): Zone => all(site, id, phase, joint)[0]!
const classes = (site: SiteModel, id: string): string => phases.map((phase) => all(site, id, phase)[0]?.zoneClass.slice(0, 1) ?? '-').join('')
/** Box in feet, rounded to a hundredth. */
const feetOf = (zone: Zone): number[] => {
  const { minXM, maxXM, minYM, maxYM } = boxOf(zone)
  return [minXM, maxXM, minYM, maxYM].map((valueM) => Math.round((valueM / ftM) * 100) / 100)
}
const walk = (closed: string | null, widthM: number | null = 1.5): YardRecord => withFigures('walkway', 'walkway:1', [{ xM: 0, yM: 20 }, { xM: 40, yM: 20 }], { widthM }, { access: closed })

describe('beside the truck (Z-01)', () => {
  const trailer = (over: Record<string, unknown> = {}, loadHeightM: number | null = 8 * ftM) => siteOf({}, withFigures('trailer', 'trailer:1', free(0, 0), { lengthM: 40 * ftM, widthM: 8 * ftM, loadHeightM }, { isLoaded: true, ...over }))
  it('is as wide as the load is high and 10 ft, and 10 ft past each end', () => {
    // 40/2 + 10 = 30 ft; 8/2 + 8 + 10 = 22 ft.
    expect(feetOf(one(trailer(), 'Z-01', 'offload'))).toEqual([-30, 30, -22, 22])
    expect(classes(trailer(), 'Z-01')).toBe('-R------')
  })
  it('is gone from an empty trailer, and asks for what nobody has said', () => {
    expect(all(trailer({ isLoaded: false }), 'Z-01', 'offload')).toEqual([])
    expect(one(trailer({ isLoaded: null }, null), 'Z-01', 'offload').missing.map(({ path }) => path)).toEqual(['figures.loadHeightM.value', 'isLoaded'])
    // 13 ft 6 in of load at most: 4 + 13.5 + 10.
    expect(feetOf(one(trailer({}, null), 'Z-01', 'offload'))[3]).toBe(27.5)
  })
})

describe('hot plate (Z-05) and facer (Z-06)', () => {
  it('hold 3 ft round the holder and on the way to the jaws', () => {
    const site = siteOf({}, machineAt0(), withFigures('plateHolder', 'plateHolder:1', free(0, 3), { lengthM: 1, widthM: 0.6 }))
    const box = boxOf(one(site, 'Z-05', 'fuse'))
    // 3 + 0.3 + 0.9144 on one side, 0.9144 past the joint on the other; 0.5 + 0.9144 along.
    expect([box.maxYM, box.minYM, box.maxXM]).toEqual([expect.closeTo(4.2144, 6), expect.closeTo(-0.9144, 2), expect.closeTo(1.4144, 6)])
    expect(classes(site, 'Z-05')).toBe('---AA---')
  })
  it('hold the swing of the facer: half the machine, the pipe and 3 ft', () => {
    const site = siteOf({}, machineAt0())
    // 0.95 + 0.27305 + 0.9144 = 2.13745 m across.
    expect(boxOf(one(site, 'Z-06', 'fuse')).maxYM).toBeCloseTo(2.13745, 6)
    expect([classes(site, 'Z-06'), one(site, 'Z-06', 'fuse').mayEnter]).toEqual(['---R----', ['operator']])
  })
})

describe('under a lifted pipe (Z-08)', () => {
  it('is the stick across the forks, the height it hangs at, and at least 10 ft past its ends', () => {
    const site = siteOf({}, withFigures('loader', 'loader:1', free(0, 0), { lengthM: 3.6, reachM: 1.2, topHeightM: 2 }))
    // Stick 3 m ahead: 3 ± (0.1365 + 2); 20 ft and 10 ft aside.
    const box = boxOf(one(site, 'Z-08', 'load'))
    expect([box.minXM, box.maxXM]).toEqual([expect.closeTo(3 - 2.136525, 6), expect.closeTo(3 + 2.136525, 6)])
    expect(box.maxYM / ftM).toBeCloseTo(30, 6)
    expect(classes(site, 'Z-08')).toBe('RRR--R-R')
  })
  it('is beside a nose carried in a sling while it is pulled, for nobody but the one who leads it', () => {
    const site = siteOf({ job: { noseHold: 'slung' } }, machineAt0(), ...rollersAt(10, 90, 3))
    const zone = one(site, 'Z-08', 'pull')
    expect([zone.zoneClass, zone.mayEnter]).toEqual(['AMBER', ['loaderOperator', 'noseSpotter']])
    // Last roller behind the nose of one stick, 40 ft: at 10 m.
    expect(boxOf(zone).minXM).toBeCloseTo(10, 6)
    expect(all(siteOf({ job: { noseHold: 'free' } }, machineAt0()), 'Z-08', 'pull')).toEqual([])
  })
})

describe('rollers beside the string (Z-12)', () => {
  it('widen it to 6 ft, 3 ft before and behind', () => {
    const site = siteOf({}, machineAt0(), item('roller', 'roller:1', onRun(20)))
    const [ring] = one(site, 'Z-12', 'move').rings
    const at = (xM: number) => Math.max(...ring!.filter((point) => Math.abs(point.xM - xM) < 1e-6).map(({ yM }) => yM))
    // 10.75 in pipe: 0.136525 + 1.8288 and 0.136525 + 0.9144.
    expect(at(20 - 0.9144)).toBeCloseTo(1.965325, 6)
    expect(Math.max(...ring!.filter(({ xM }) => xM > 21 && xM < 300).map(({ yM }) => yM))).toBeCloseTo(1.050925, 6)
  })
})

describe('run-away line (Z-13)', () => {
  it('is not there on level ground', () => expect(phases.flatMap((phase) => all(siteOf({}, machineAt0()), 'Z-13', phase))).toEqual([]))
  it('starts at 1 % without a hold-back, and lies ahead of the nose on a fall to the exit', () => {
    // The legs of the table of zones: fuse A, pull R, move R, rest A, tie-in A.
    const falls = (fallRatio: number, ...more: YardRecord[]) => siteOf({ setUp: { fallRatio, crossFallRatio: 0 }, run: { surfaces: ['grass'] } }, machineAt0(), ...more)
    expect(classes(falls(0.01), 'Z-13')).toBe('---ARRAA')
    expect(classes(falls(0.0099), 'Z-13')).toBe('--------')
    const zone = one(falls(0.01), 'Z-13', 'rest')
    // Nose of the finished string on, widening 1 in 10 over the 60 m it is followed.
    const box = boxOf(zone)
    expect(box.maxXM - box.minXM).toBeCloseTo(60, 6)
    expect(box.maxYM).toBeCloseTo(3.048 + 6, 6)
    expect(zone.mayEnter).toEqual([])
    expect(all(falls(0.01, item('anchor', 'anchor:1', onRun(-5))), 'Z-13', 'rest')).toEqual([])
  })
  it('ends at a positive stop', () => {
    const site = siteOf({ setUp: { fallRatio: 0.02, crossFallRatio: 0 } }, machineAt0(), item('barrier', 'barrier:1', [{ xM: 110, yM: -5 }, { xM: 110, yM: 5 }], { stopsPipe: true }))
    const { maxXM } = boxOf(one(site, 'Z-13', 'rest'))
    expect(maxXM).toBeGreaterThanOrEqual(110)
    expect(maxXM).toBeLessThanOrEqual(112)
  })
  it('lies over machine and infeed where the string hangs uphill', () => {
    const box = boxOf(one(siteOf({ setUp: { fallRatio: -0.02, crossFallRatio: 0 } }, machineAt0()), 'Z-13', 'pull'))
    expect([box.maxXM, box.minXM]).toEqual([expect.closeTo(0, 6), expect.closeTo(-60 - 40 * ftM, 6)])
  })
  it('asks where the fall is not known, and is drawn to both ends', () => {
    const zones = all(siteOf({ setUp: { fallRatio: null } }, machineAt0()), 'Z-13', 'pull')
    expect(zones.map(({ missing }) => missing.map(({ path }) => path))).toEqual([['fallRatio'], ['fallRatio']])
  })
})

describe('pipe stack (Z-14)', () => {
  const stack = (over: Record<string, unknown> = {}, rowCount: number | null = 3, crossFallRatio = 0) => siteOf({ setUp: { fallRatio: 0, crossFallRatio } }, withFigures('stack', 'stack:1', onRun(10, { offsetM: 10 }), { lengthM: 12, widthM: 2, rowCount }, { chocked: true, ...over }))
  it('is one and a half times its height to each side', () => {
    // Three rows of 10.75 in in each other's hollows: 0.27305 (1 + 2 · 0.8660254) = 0.745986 m.
    expect(stackHeightM(3, 10.75 * inM)).toBeCloseTo(0.745986, 5)
    const box = boxOf(one(stack(), 'Z-14', 'offload'))
    expect(box.maxYM - box.minYM).toBeCloseTo(2 + 3 * 0.745986, 4)
    expect(classes(stack(), 'Z-14')).toBe('ARAAAAAA')
  })
  it('reaches as far as a pipe rolls where no chock holds it, farther on the low side', () => {
    // Grass: c = 0.05 low. Level: 0.745986 / 0.05 = 14.92 m to each side; 1 % to the right: /0.04 = 18.65 right, /0.06 = 12.43 left.
    const level = boxOf(one(stack({ chocked: false }), 'Z-14', 'rest'))
    const fallen = boxOf(one(stack({ chocked: false }, 3, 0.01), 'Z-14', 'rest'))
    expect(level.maxYM).toBeCloseTo(-10 + 1 + 0.745986 / 0.05, 3)
    expect([fallen.minYM, fallen.maxYM]).toEqual([expect.closeTo(-11 - 0.745986 / 0.04, 3), expect.closeTo(-9 + 0.745986 / 0.06, 3)])
  })
  it('keeps what is certain apart from what somebody must say first', () => {
    const [still, rolls] = all(stack({ chocked: null }), 'Z-14', 'rest')
    expect([still!.missing, rolls!.missing.map(({ path }) => path)]).toEqual([[], ['chocked']])
    expect(one(stack({}, null), 'Z-14', 'rest').missing.map(({ path }) => path)).toEqual(['figures.rowCount.value'])
  })
})

describe('trench edge (Z-15)', () => {
  const trench = (figures: Record<string, number | null>) => siteOf({}, withFigures('trench', 'trench:1', [{ xM: 0, yM: 0 }, { xM: 50, yM: 0 }], { widthM: 4 * ftM, depthM: 8 * ftM, ...figures }))
  it('keeps pipe and people 2 ft off the edge, machines as far as it is deep', () => {
    // 29 CFR 1926.651(j)(2): 2 ft. Half of 4 ft and 2 ft: 4 ft; half of 4 ft and 8 ft: 10 ft.
    const [people, machines] = all(trench({}), 'Z-15', 'pull')
    expect([feetOf(people!)[3], people!.zoneClass, people!.keepsOut]).toEqual([4, 'AMBER', 'people'])
    expect([feetOf(machines!)[3], machines!.zoneClass, machines!.keepsOut]).toEqual([10, 'RED', 'gear'])
    expect(people!.source.cite).toContain('1926.651(j)(2)')
  })
  it('draws machines back 20 ft while nobody knows the depth, the deepest without an engineer', () => {
    const [, machines] = all(trench({ depthM: null }), 'Z-15', 'rest')
    expect([feetOf(machines!)[3], machines!.missing.map(({ path }) => path)]).toEqual([22, ['figures.depthM.value']])
  })
})

describe('ways of the public (Z-17, Z-18, Z-19)', () => {
  it('are BLUE in every phase while open, gone when closed or diverted, dashed when nobody has said', () => {
    expect(classes(siteOf({}, walk('open')), 'Z-17')).toBe('BBBBBBBB')
    expect(classes(siteOf({}, walk('closed')), 'Z-17')).toBe('--------')
    expect(classes(siteOf({}, walk('diverted')), 'Z-17')).toBe('--------')
    expect(one(siteOf({}, walk(null)), 'Z-17', 'pull').missing.map(({ path }) => path)).toEqual(['access'])
  })
  it('hold 2 ft beside live traffic; a closed lane is the crew’s', () => {
    const lane = (closed: boolean | null) => siteOf({}, withFigures('trafficLane', 'trafficLane:1', [{ xM: 0, yM: 0 }, { xM: 60, yM: 0 }], { widthM: 12 * ftM }, { closed }))
    // Half of 12 ft and 2 ft.
    expect([feetOf(one(lane(false), 'Z-18', 'pull'))[3], classes(lane(false), 'Z-18'), classes(lane(true), 'Z-18')]).toEqual([8, 'BBBBBBBB', '--------'])
    expect(one(lane(null), 'Z-18', 'pull').missing.map(({ path }) => path)).toEqual(['closed'])
  })
  it('keep 20 ft for the ambulance where nobody gave a width', () => {
    // International Fire Code 503.2.1: 20 ft.
    const lane = (widthM: number | null) => siteOf({}, withFigures('emergencyLane', 'emergencyLane:1', [{ xM: 0, yM: 0 }, { xM: 60, yM: 0 }], { widthM }))
    expect([feetOf(one(lane(null), 'Z-19', 'load'))[3], feetOf(one(lane(24 * ftM), 'Z-19', 'load'))[3]]).toEqual([10, 12])
    expect(one(lane(null), 'Z-19', 'load').missing).toHaveLength(1)
  })
})

describe('fuel and generator (Z-20)', () => {
  it('hold 25 ft without ignition round fuel and 3 ft round a running engine', () => {
    const fuel = siteOf({}, withFigures('fuel', 'fuel:1', free(0, 0), { lengthM: 1.2, widthM: 0.9 }))
    // 25 ft and half the diagonal of 1.2 × 0.9 m, 0.75 m.
    expect(boxOf(one(fuel, 'Z-20', 'rest')).maxXM).toBeCloseTo(7.62 + 0.75, 6)
    expect(one(fuel, 'Z-20', 'rest').keepsOut).toBe('gear')
    const engine = (isRunning: boolean | null) => siteOf({}, withFigures('generator', 'generator:1', free(0, 0), { lengthM: 1.8, widthM: 1 }, { isRunning }))
    expect(boxOf(one(engine(true), 'Z-20', 'fuse')).maxXM).toBeCloseTo(0.9 + 0.9144, 6)
    expect([classes(engine(true), 'Z-20'), classes(engine(false), 'Z-20')]).toEqual(['AAAAAAAA', '--------'])
    expect(one(engine(null), 'Z-20', 'fuse').missing.map(({ path }) => path)).toEqual(['isRunning'])
  })
})

describe('string at rest (Z-21)', () => {
  it('is 6 ft beside it, and 1.25 times its growth and 3 ft past its ends', () => {
    const site = siteOf({ job: { temperatureSwingC: { value: 60 / 1.8, basis: 'measured' } } }, machineAt0())
    const box = boxOf(one(site, 'Z-21', 'rest'))
    // 319 ft 5 7/8 in; PPI Handbook ch. 3, from memory: 8e-5 in/in/°F · 60 °F · 319.49 ft = 1.5336 ft; · 1.25 + 3 = 4.917 ft.
    expect(box.maxXM / ftM).toBeCloseTo(319.49 + 4.917, 2)
    expect(box.minXM / ftM).toBeCloseTo(-4.917, 2)
    expect(box.maxYM).toBeCloseTo(0.136525 + 1.8288, 6)
    expect(classes(site, 'Z-21')).toBe('---A--AA')
  })
  it('asks for the swing, and is drawn with 50 °C of it', () => {
    const zone = one(siteOf({}, machineAt0()), 'Z-21', 'rest')
    expect(zone.missing.map(({ path }) => path)).toEqual(['temperatureSwingC.value'])
    // 8e-5 · 90 °F · 319.49 · 1.25 + 3.
    expect(boxOf(zone).maxXM / ftM).toBeCloseTo(319.49 + 2.8754 + 3, 2)
  })
})

describe('line under test (Z-23)', () => {
  const tested = (test: 'none' | 'water' | null, awayM: number | null) => siteOf({ job: { test, testStandOffM: { value: awayM, basis: 'jobRule' } } }, machineAt0())
  it('is the whole line and its ends by the distance of the engineer, at the tie-in', () => {
    const box = boxOf(one(tested('water', 10), 'Z-23', 'tieIn'))
    expect([box.minXM, box.maxYM]).toEqual([expect.closeTo(-10, 6), expect.closeTo(10.136525, 6)])
    expect(classes(tested('water', 10), 'Z-23')).toBe('-------R')
  })
  it('is not there where nothing is tested, and never silent where nobody has said', () => {
    expect(all(tested('none', null), 'Z-23', 'tieIn')).toEqual([])
    expect(one(tested(null, null), 'Z-23', 'tieIn').missing.map(({ path }) => path)).toEqual(['test'])
    expect(one(tested('water', null), 'Z-23', 'tieIn').missing.map(({ path }) => path)).toEqual(['testStandOffM.value'])
  })
})

describe('places of work (Z-22, Z-24, Z-25, Z-26, Z-27)', () => {
  it('hold 10 ft round a cut', () => {
    const site = siteOf({}, withFigures('cuttingPlace', 'cuttingPlace:1', free(0, 0), { lengthM: 2.4, widthM: 1.2 }))
    const box = boxOf(one(site, 'Z-22', 'tieIn'))
    expect([box.maxXM, box.maxYM, classes(site, 'Z-22')]).toEqual([expect.closeTo(4.248, 6), expect.closeTo(3.648, 6), '-------A'])
  })
  it('hold tent, guy lines and 3 ft', () => {
    const site = siteOf({}, withFigures('shelter', 'shelter:1', free(0, 0), { lengthM: 4.5, widthM: 4, guyM: 1.4 }))
    expect([boxOf(one(site, 'Z-24', 'fuse')).maxXM, classes(site, 'Z-24')]).toEqual([expect.closeTo(2.25 + 1.4 + 0.9144, 6), 'A--A--A-'])
  })
  it('hold 10 ft without ignition round a vent, asking for today’s reading', () => {
    const zone = one(siteOf({}, item('vent', 'vent:1', free(0, 0))), 'Z-25', 'rest')
    expect([boxOf(zone).maxXM, zone.zoneClass, zone.keepsOut, zone.missing.map(({ path }) => path)]).toEqual([expect.closeTo(3.048, 6), 'RED', 'gear', ['isClear']])
  })
  it('hold 6 ft from water, for whoever wears a vest', () => {
    const zone = one(siteOf({}, item('water', 'water:1', boxM(0, 10, 0, 10))), 'Z-26', 'rest')
    expect([boxOf(zone).maxXM, zone.zoneClass, zone.entering[0]!.condition!.en]).toEqual([expect.closeTo(11.8288, 4), 'AMBER', 'with a life vest, zipped'])
  })
  it('hold 3 ft round the end of a stick from the near beam to the joint', () => {
    const zone = one(siteOf({}, machineAt0(), rackAtInfeed({ stopsLeft: true, stopsRight: true })), 'Z-27', 'load')
    expect([boxOf(zone).maxXM, boxOf(zone).maxYM, zone.zoneClass]).toEqual([expect.closeTo(0.9144, 6), expect.closeTo(0.136525 + 0.9144, 6), 'RED'])
  })
})

describe('behind the pull head (Z-28)', () => {
  it('is the fan of the rope on the side of the pipe', () => {
    const site = siteOf({}, machineAt0(), withFigures('puller', 'puller:1', onRun(100), { ropeLengthM: 6 }, { guardedCab: true, pullerKind: 'tractor' }))
    const box = boxOf(one(site, 'Z-28', 'pull'))
    // Nose of the pull of joint 1 from 40 ft: a fan 6 m back, 10 ft and 6 tan 15° = 1.6077 m to each side.
    expect([box.minXM, box.maxYM]).toEqual([expect.closeTo(40 * ftM - 6, 6), expect.closeTo(3.048 + 1.607695, 5)])
    expect(classes(site, 'Z-28')).toBe('----R---')
  })
})
