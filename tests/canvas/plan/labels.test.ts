import { describe, expect, it } from 'vitest'
import { detailAt, labelRanks, placeLabels, type BoxPx, type LabelPlace, type LabelRequest } from '../../../src/canvas/plan/labels.ts'
import { seededRandom } from '../../helpers/seededRandom.ts'

const band = { widthPx: 1000, heightPx: 500 }
const at = (x: number, y: number, half = 8): BoxPx => ({ x0: x - half, y0: y - half, x1: x + half, y1: y + half })
const label = (id: string, box: BoxPx, over: Partial<LabelRequest> = {}): LabelRequest => ({ id, box, widthPx: 60, heightPx: 14, rank: labelRanks.gear, ...over })
const placed = (requests: LabelRequest[], obstacles: BoxPx[] = []): Map<string, LabelPlace> => new Map(placeLabels(requests, obstacles, band).map((place) => [place.id, place]))
const overlap = (a: LabelPlace, b: LabelPlace): boolean => a.xPx < b.xPx + 60 && a.xPx + 60 > b.xPx && a.yPx < b.yPx + 14 && a.yPx + 14 > b.yPx

describe('labels kept apart', () => {
  it('stand to the right, and where that is taken to the left, below, above', () => {
    const box = at(500, 250)
    const sides = [at(560, 250, 20), at(440, 250, 20), { x0: 470, y0: 260, x1: 530, y1: 280 }]
    expect(placed([label('a', box)]).get('a')).toEqual({ id: 'a', xPx: 512, yPx: 243, stem: null })
    expect(placed([label('a', box)], sides.slice(0, 1)).get('a')?.xPx).toBe(428)
    expect(placed([label('a', box)], sides.slice(0, 2)).get('a')?.yPx).toBe(262)
    expect(placed([label('a', box)], sides).get('a')?.yPx).toBe(224)
  })

  it('with all four sides taken they stand 24 px out on a stem, and then not at all', () => {
    const box = at(500, 250)
    const ring = [{ x0: 509, y0: 240, x1: 520, y1: 260 }, { x0: 480, y0: 240, x1: 491, y1: 260 }, { x0: 470, y0: 259, x1: 530, y1: 268 }, { x0: 470, y0: 232, x1: 530, y1: 241 }]
    const got = placed([label('a', box)], ring).get('a')
    expect(got?.stem).not.toBeNull()
    expect(got?.xPx).toBe(532)
    expect(placed([label('a', box)], [{ x0: 300, y0: 100, x1: 700, y1: 400 }]).size).toBe(0)
  })

  it('the more important one keeps its place whatever the order given', () => {
    const requests = [label('gear', at(500, 250)), label('chosen', at(500, 250), { rank: labelRanks.chosen }), label('level', at(500, 250), { rank: labelRanks.level })]
    const got = placed(requests)
    expect(got.get('chosen')?.xPx).toBe(512)
    expect(got.get('gear')?.xPx).toBe(428)
    expect(placed(requests.toReversed())).toEqual(got)
  })

  it('the order is chosen, RED words, marks, zones, crew, gear, site, levels', () => {
    const { chosen, redZone, mark, zone, crew, gear, site, level } = labelRanks
    expect([chosen, redZone, mark, zone, crew, gear, site, level]).toEqual([chosen, redZone, mark, zone, crew, gear, site, level].toSorted((a, b) => a - b))
  })

  it('stays inside the sheet', () => {
    const got = placed([label('a', at(985, 250)), label('b', at(500, 4)), label('gone', at(1400, 250))])
    expect(got.get('a')?.xPx).toBe(913)
    expect(got.get('b')?.yPx).toBeGreaterThanOrEqual(2)
    expect(got.has('gone')).toBe(false)
  })

  it('stands where it is wished if nothing is there, and inside its own box if it may', () => {
    const area = { x0: 100, y0: 100, x1: 300, y1: 200 }
    expect(placed([label('a', area, { wished: { xPx: 150, yPx: 120 } })]).get('a')).toMatchObject({ xPx: 150, yPx: 120 })
    expect(placed([label('a', area, { mayStandInside: true })]).get('a')).toMatchObject({ xPx: 170, yPx: 143 })
  })

  it('its own thing is no obstacle, another of the same size is', () => {
    const box = at(500, 250, 30)
    expect(placed([label('a', box, { wished: { xPx: 480, yPx: 243 } })], [box]).get('a')?.xPx).toBe(480)
    expect(placed([label('a', box, { wished: { xPx: 480, yPx: 243 } })], [{ ...box }]).get('a')?.xPx).not.toBe(480)
  })

  it('no two cover each other in a seeded crowd', () => {
    const random = seededRandom(7)
    const requests = Array.from({ length: 200 }, (_, i) => label(`l${i}`, at(random() * 1000, random() * 500), { rank: i % 6 }))
    const places = placeLabels(requests, [], band)
    expect(places.length).toBeGreaterThan(60)
    for (const [i, a] of places.entries()) for (const b of places.slice(i + 1)) expect(overlap(a, b)).toBe(false)
  })
})

describe('detail by scale', () => {
  // px per ft below 2, 2 to 4, 4 to 8, beyond; 1 px/ft = 3.28 px/m
  it.each([[5, 'ticks'], [10, 'small'], [20, 'scale'], [40, 'full']] as const)('%d px/m shows %s', (pxPerM, detail) => {
    expect(detailAt(pxPerM)).toBe(detail)
  })
})
