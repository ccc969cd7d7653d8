import { describe, expect, it } from 'vitest'
import { imageBoxes, LEAST_LETTERING_PX, pagePx, SCREEN_ENLARGEMENT } from '../../src/sheet/page.ts'

const boxes = Object.entries(imageBoxes)

describe('the page', () => {
  it('is Letter landscape at 144 px an inch, and 7 pt is 14 px', () => {
    // 11 × 144 = 1584, 8.5 × 144 = 1224; 7/72 in × 144 = 14
    expect(pagePx).toEqual({ widthPx: 1584, heightPx: 1224 })
    expect(LEAST_LETTERING_PX).toBeCloseTo(14, 12)
  })
  it.each(boxes)('%s lies inside the quarter inch that printers leave white', (_name, { x0, y0, x1, y1 }) => {
    expect(x0).toBeGreaterThanOrEqual(36)
    expect(y0).toBeGreaterThanOrEqual(36)
    expect(x1).toBeLessThanOrEqual(1584 - 36)
    expect(y1).toBeLessThanOrEqual(1224 - 36)
    expect(x1 - x0 > 0 && y1 - y0 > 0).toBe(true)
  })
  it('has no two boxes that overlap', () => {
    for (const [name, a] of boxes) for (const [other, b] of boxes) {
      if (name >= other) continue
      expect(a.x1 <= b.x0 || b.x1 <= a.x0 || a.y1 <= b.y0 || b.y1 <= a.y0, `${name} and ${other}`).toBe(true)
    }
  })
  it('gives plan, tape and side view one width, so that they share the scale along the tape', () => {
    const { plan, tape, section } = imageBoxes
    for (const box of [tape, section]) expect([box.x0, box.x1]).toEqual([plan.x0, plan.x1])
  })
  it('enlarges the screen until its smallest letter, 11 px, is 7 pt', () => expect(11 * SCREEN_ENLARGEMENT).toBeGreaterThanOrEqual(14))
})
