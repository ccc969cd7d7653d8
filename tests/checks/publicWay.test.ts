import { describe, expect, it } from 'vitest'
import { publicWay } from '../../src/checks/list/publicWay.ts'
import { item } from '../helpers/documents.ts'
import { boxM, findingsOf, levelsOf, siteOf, withFigures } from './yardCase.ts'

/** RED by hand while fusing, up to y = 40. */
const red = (over: Record<string, unknown> = {}) => item('zone', 'zone:1', boxM(0, 10, 30, 40), { phases: ['fuse'], zoneClass: 'RED', name: 'hot', ...over })
const walkway = (yM: number, access: string | null, widthM: number | null = 1.5) => withFigures('walkway', 'walkway:1', [{ xM: -20, yM }, { xM: 30, yM }], { widthM }, { access })

describe('public ways and zones', () => {
  it('stop where an open way lies in a live RED zone, and say that the width is a house rule', () => {
    const [open] = findingsOf(publicWay, siteOf({}, red(), walkway(38, 'open')))
    expect([open!.level, open!.phases]).toEqual(['STOP', ['fuse']])
    expect(open!.what.text.en).toContain('house rule')
    // A strip 1.5 m wide about a line inside the zone: it lies in by its half width at least.
    expect(open!.measured!.value).toBeCloseTo(-0.75, 9)
  })

  it('count a touch, and nothing a millimetre outside', () => {
    // Zone to y = 40, half width 0.75 m: the middle at 40.75 m just touches.
    expect(levelsOf(publicWay, siteOf({}, red(), walkway(40.75, 'open')))).toEqual(['STOP'])
    expect(levelsOf(publicWay, siteOf({}, red(), walkway(40.751, 'open')))).toEqual(['met'])
  })

  it('check a closed or diverted one', () => {
    expect(levelsOf(publicWay, siteOf({}, red(), walkway(38, 'closed')))).toEqual(['CHECK'])
    expect(levelsOf(publicWay, siteOf({}, red(), walkway(38, 'diverted')))).toEqual(['CHECK'])
  })

  it('ask where nobody has said whether it is open', () => {
    const [unknown] = findingsOf(publicWay, siteOf({}, red(), walkway(38, null)))
    expect([unknown!.level, unknown!.isUnknown, unknown!.missing[0]!.path]).toEqual(['CHECK', true, 'access'])
  })

  it('hold for roads by their traffic', () => {
    const road = (traffic: string | null) => withFigures('road', 'road:1', [{ xM: -20, yM: 38 }, { xM: 30, yM: 38 }], { widthM: 3.66 }, { traffic })
    expect(levelsOf(publicWay, siteOf({}, red(), road('open')))).toEqual(['STOP'])
    expect(levelsOf(publicWay, siteOf({}, red(), road('closed')))).toEqual(['CHECK'])
    expect(findingsOf(publicWay, siteOf({}, red(), road(null)))[0]!.missing[0]!.path).toBe('traffic')
  })

  it('mind no AMBER zone, no zone with a missing input', () => {
    expect(levelsOf(publicWay, siteOf({}, red({ zoneClass: 'AMBER' }), walkway(38, 'open')))).toEqual(['met'])
    const loader = (reachM: number | null) => withFigures('loader', 'loader:1', { at: 'free', xM: 5, yM: 60, headingRad: 0 }, { reachM })
    expect(levelsOf(publicWay, siteOf({}, loader(null), walkway(58, 'open')))).toEqual(['met'])
    expect(levelsOf(publicWay, siteOf({}, loader(1.2), walkway(58, 'open')))).toEqual(['STOP'])
  })

  it('see the nose of every pull', () => {
    // The string crosses x = 50 in one of its middle pulls; ahead of the nose is RED.
    const across = withFigures('walkway', 'walkway:1', [{ xM: 50, yM: -30 }, { xM: 50, yM: 30 }], { widthM: 1.5 }, { access: 'open' })
    const [found] = findingsOf(publicWay, siteOf({}, across))
    expect([found!.level, found!.phases]).toEqual(['STOP', expect.arrayContaining(['pull'])])
  })

  it('never pass a way without a width', () => {
    expect(levelsOf(publicWay, siteOf({}, red(), walkway(38, 'open', null)))).toEqual(['CHECK?'])
  })
})

describe('a walkway shut at stages', () => {
  // RED by hand in fuse over x 20 to 30 m, y 20 to 24 m; a footway 1.5 m wide runs through it at y = 22 m.
  const zone = item('zone', 'zone:shut', boxM(20, 30, 20, 24), { phases: ['fuse'], zoneClass: 'RED', name: 'hot' })
  const way = (closedPhases: string[]) => item('walkway', 'walkway:shut', [{ xM: 0, yM: 22 }, { xM: 60, yM: 22 }], { access: 'open', closedPhases })
  const marshal = (yM: number) => item('crew', 'crew:shut', { at: 'free', xM: 10, yM, headingRad: 0 }, { role: 'marshal', phases: ['fuse'] })
  const barrier = item('barrier', 'barrier:shut', [{ xM: 15, yM: 21 }, { xM: 15, yM: 23 }])
  const levels = (...records: Parameters<typeof siteOf>[1][]) => levelsOf(publicWay, siteOf({ job: { stickLengthM: null } }, zone, ...records))

  it('with a marshal’s spot and a barrier drawn is a CHECK, without either a STOP', () => {
    expect(levels(way(['fuse']), marshal(30), barrier)).toEqual(['CHECK'])
    expect(levels(way(['fuse']), barrier)).toEqual(['STOP'])
    expect(levels(way(['fuse']), marshal(30))).toEqual(['STOP'])
    expect(levels(way(['pull']), marshal(30), barrier)).toEqual(['STOP'])
  })
  it('has its marshal within 50 ft of its edge: 22.75 m and 15.24 m make 37.99 m', () => {
    expect(levels(way(['fuse']), marshal(37.9), barrier)).toEqual(['CHECK'])
    expect(levels(way(['fuse']), marshal(38.1), barrier)).toEqual(['STOP'])
  })
  it('that is the crew’s crossing is no public way', () => {
    expect(levels(item('walkway', 'walkway:shut', [{ xM: 0, yM: 22 }, { xM: 60, yM: 22 }], { isCrossing: true }))).toEqual([])
  })
})
