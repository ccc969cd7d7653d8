import { describe, expect, it } from 'vitest'
import { wayOut } from '../../../src/checks/list/wayOut.ts'
import { drawnWayOut, waysOut } from '../../../src/derive/people/egress.ts'
import { spotsOf } from '../../../src/derive/people/spots.ts'
import { item, free, onRun } from '../../helpers/documents.ts'
import { boxM, findingsOf, ftM, levelsOf, siteOf } from '../yardCase.ts'

const WAY_M = 3 * ftM
// Yard x −20 to 120 m, y −15 to 15 m; the string lies along x from −12.2 m to 85.2 m while fusing, the last joint.
const yard = item('boundary', 'boundary:1', boxM(-20, 120, -15, 15))
const spot = (xM: number, yM: number, phases = ['fuse'], role = 'exitHand', id = 'crew:1') => item('crew', id, free(xM, yM), { role, phases })
const muster = (xM: number, yM: number, id = 'muster:1') => item('muster', id, free(xM, yM))
const fence = (id: string, ...points: [number, number][]) => item('fence', id, points.map(([xM, yM]) => ({ xM, yM })))
const allRound = (id: string, x0: number, x1: number, y0: number, y1: number) => fence(id, [x0, y0], [x1, y0], [x1, y1], [x0, y1], [x0, y0])
const keys = (...records: Parameters<typeof siteOf>[1][]) => findingsOf(wayOut, siteOf({}, ...records)).map(({ key, level }) => `${level} ${key}`)

describe('ways out', () => {
  it('are met where a muster point lies on the same side of the string', () => {
    expect(keys(yard, spot(30, 5), muster(60, 10))).toEqual(['met way-out'])
  })

  it('ask where the string lies between, though one can walk off the yard', () => {
    // Round the ends of the string the yard is open: x −20 to −12.2 m and beyond 85.2 m. A fence across each end closes that.
    const ends = [fence('fence:1', [-12.2, -15], [-12.2, 15]), fence('fence:2', [86, -15], [86, 15])]
    expect(keys(yard, ...ends, spot(30, 5), muster(60, -10))).toEqual(['CHECK way-out@cut-off'])
    // Without the fences there is a way round the end.
    expect(keys(yard, spot(30, 5), muster(60, -10))).toEqual(['met way-out'])
  })

  it('lead over a marked crossing while the string lies still, not while it is pulled', () => {
    const ends = [fence('fence:1', [-12.2, -15], [-12.2, 15]), fence('fence:2', [86, -15], [86, 15])]
    const crossing = (widthM: number) => item('walkway', 'walkway:1', [{ xM: 40, yM: -4 }, { xM: 40, yM: 4 }], { isCrossing: true, figures: { widthM: { value: widthM, basis: 'measured' } } })
    const leads = (widthM: number, phase: string) => waysOut(siteOf({}, yard, ...ends, spot(30, 5, [phase]), muster(60, -10), crossing(widthM)), WAY_M).map((way) => way.leads)
    expect(leads(1.2, 'fuse')).toEqual(['muster'])
    expect(leads(1.2, 'pull')).toEqual(['edge'])
    // A crossing narrower than 3 ft is none.
    expect(leads(0.9, 'fuse')).toEqual(['edge'])
  })

  it('are a FIX where a spot is shut in, until a gate opens at once', () => {
    const gate = (keptOpen: boolean | null, widthM = 1.2) => item('gate', 'gate:1', free(35, 11), { keptOpen, figures: { widthM: { value: widthM, basis: 'measured' } } })
    const pen = allRound('fence:1', 25, 45, 3, 11)
    expect(keys(yard, pen, spot(30, 5), muster(60, 13))).toEqual(['FIX way-out@crew:1:shut'])
    expect(keys(yard, pen, gate(null), spot(30, 5), muster(60, 13))).toEqual(['FIX way-out@crew:1:shut'])
    expect(keys(yard, pen, gate(true), spot(30, 5), muster(60, 13))).toEqual(['met way-out'])
    expect(keys(yard, pen, gate(true, 0.9), spot(30, 5), muster(60, 13))).toEqual(['FIX way-out@crew:1:shut'])
  })

  it('pass a gap of 3 ft and not one of 2 ft 11 in', () => {
    // Two buildings across the whole side with a gap between them at x = 50 m.
    const leads = (gapM: number) => waysOut(siteOf({}, yard, item('building', 'building:1', boxM(48, 50, 0.2, 8)), item('building', 'building:2', boxM(48, 50, 8 + gapM, 16)), fence('fence:1', [-12.2, -15], [-12.2, 15]), fence('fence:2', [-12.2, 14.9], [48, 14.9]), spot(30, 5), muster(70, 10)), WAY_M).map((way) => way.leads)
    expect(leads(3 * ftM)).toEqual(['muster'])
    expect(leads((2 + 11 / 12) * ftM)).not.toEqual(['muster'])
  })

  it('ask for a muster point where none is drawn', () => {
    expect(keys(yard, spot(30, 5))).toEqual(['CHECK way-out@no-muster'])
  })

  it('take a muster point off the yard where the edge is open, and say nothing of who stands outside', () => {
    expect(keys(yard, spot(30, 5), muster(60, 40))).toEqual(['met way-out'])
    expect(keys(yard, spot(30, 25), muster(60, 10))).toEqual([])
  })

  it('want two ways off the machine pad', () => {
    const machine = item('machine', 'machine:1', onRun(0))
    const operator = spot(0, 2.5, ['fuse'], 'operator')
    expect(levelsOf(wayOut, siteOf({}, yard, machine, operator, muster(60, 10)))).toEqual(['met'])
    // Buildings close the infeed end: x −8 to −5 m from the line to the edge, and y 9 to 15 m over the pad; 30 ft = 9.14 m.
    const [one] = findingsOf(wayOut, siteOf({}, yard, machine, operator, muster(60, 10), item('building', 'building:1', boxM(-8, -5, 0.2, 15)), item('building', 'building:2', boxM(-5, 1, 9, 15))))
    expect([one!.level, one!.key]).toEqual(['CHECK', 'way-out@pad'])
  })

  it('are drawn as the shortest way round what stands between', () => {
    // A building from x 40 to 50 m, y 2 to 8 m, between (30, 5) and (60, 5). Round its far side the way is widened by
    // 1.5 ft = 0.457 m: up to y = 8.457 m at x 40 and 50 m. 2 · √(10² + 3.457²) + 10 = 31.16 m, a hair more at the round corners.
    const site = siteOf({}, yard, item('building', 'building:1', boxM(40, 50, 1, 8)), spot(30, 5), muster(60, 5))
    const way = drawnWayOut(site, spotsOf(site)[0]!, 'fuse', WAY_M)!
    const lengthM = way.slice(1).reduce((sum, at, i) => sum + Math.hypot(at.xM - way[i]!.xM, at.yM - way[i]!.yM), 0)
    expect(lengthM).toBeGreaterThan(31.1)
    expect(lengthM).toBeLessThan(31.4)
  })
})
