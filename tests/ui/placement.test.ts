import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { overlapPx2, placeTag, stringPath, type Box, type TagRequest } from '../../src/ui/tag/placement.ts'

const request = (over: Partial<TagRequest> = {}): TagRequest => ({
  band: { widthPx: 1072, heightPx: 456 }, tag: { widthPx: 252, heightPx: 174 },
  item: { xPx: 400, yPx: 140, widthPx: 20, heightPx: 20 }, axisYPx: 150, forbidden: [], gear: [], marginWidthPx: 0, ...over,
})
const boxOf = (from: TagRequest): Box => {
  const { xPx, yPx } = placeTag(from)
  return { xPx, yPx, ...from.tag }
}

describe('the tag of a chosen item', () => {
  it('hangs on free paper below the axis', () => {
    const place = placeTag(request())
    expect(place.where).toBe('below')
    expect(place.yPx).toBeGreaterThan(160)
    expect(place.coveredPx2).toBe(0)
  })

  it('goes above the axis where there is no room below', () => {
    expect(placeTag(request({ item: { xPx: 400, yPx: 330, widthPx: 20, heightPx: 20 }, axisYPx: 340 })).where).toBe('above')
  })

  it('steps aside for gear and never covers a RED zone', () => {
    const gear = [{ xPx: 380, yPx: 170, widthPx: 300, heightPx: 280 }]
    expect(overlapPx2(boxOf(request({ gear })), gear[0]!)).toBe(0)
    const forbidden = [{ xPx: 300, yPx: 160, widthPx: 500, heightPx: 300 }]
    expect(overlapPx2(boxOf(request({ forbidden })), forbidden[0]!)).toBe(0)
  })

  it('goes to the margin where the paper is full', () => {
    const forbidden = [{ xPx: 0, yPx: 0, widthPx: 1072, heightPx: 456 }]
    expect(placeTag(request({ forbidden, marginWidthPx: 280 })).where).toBe('margin')
  })

  it('never covers its own item and stays on the band, wherever the item is, as long as there is room for both', () => {
    const at = fc.record({ xPx: fc.integer({ min: 0, max: 1050 }), yPx: fc.integer({ min: 0, max: 430 }), axis: fc.boolean() })
    fc.assert(fc.property(at, ({ xPx, yPx, axis }) => {
      const item = { xPx, yPx, widthPx: 20, heightPx: 20 }
      const from = request({ item, axisYPx: axis ? yPx + 10 : null })
      const box = boxOf(from)
      // 174 high and 16 away on either side of a 20 px item fits a band of 456 wherever the item stands.
      expect(overlapPx2(box, item)).toBe(0)
      expect(box.xPx).toBeGreaterThanOrEqual(0)
      expect(box.yPx).toBeGreaterThanOrEqual(0)
      expect(box.xPx + box.widthPx).toBeLessThanOrEqual(1072)
      expect(box.yPx + box.heightPx).toBeLessThanOrEqual(456)
    }), { seed: 5303, numRuns: 300 })
  })

  it('is the same for the same sheet', () => {
    expect(placeTag(request())).toEqual(placeTag(request()))
  })
})

it('the string leaves the item at the edge that faces the tag', () => {
  const item = { xPx: 100, yPx: 100, widthPx: 20, heightPx: 20 }
  expect(stringPath(item, { xPx: 200, yPx: 200 })).toMatch(/^M110 120C/)
  expect(stringPath(item, { xPx: 200, yPx: 20 })).toMatch(/^M110 100C/)
})
