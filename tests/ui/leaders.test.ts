import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { legsCross, routeLeaders, type LeaderNote, type LeaderRequest } from '../../src/ui/findings/leaders.ts'

const band = { widthPx: 1072, heightPx: 456 }
const note = (number: number, noteYPx: number | null, place: { xPx: number; yPx: number } | null): LeaderNote => ({ key: `k${number}`, number, noteYPx, place })
const route = (notes: readonly LeaderNote[], over: Partial<LeaderRequest> = {}): ReturnType<typeof routeLeaders> => routeLeaders({ notes, band, marginXPx: band.widthPx, blocked: [], ...over })

describe('leaders from the margin', () => {
  it('run level for 19 px from the note, then straight to the place', () => {
    const { leaders, numbers } = route([note(1, 32, { xPx: 900, yPx: 284 })])
    expect(numbers).toEqual([])
    expect(leaders[0]!.points).toEqual([{ xPx: 1072, yPx: 32 }, { xPx: 1053, yPx: 32 }, { xPx: 900, yPx: 284 }])
  })

  it('go inwards from a margin at the left', () => {
    expect(route([note(1, 32, { xPx: 900, yPx: 284 })], { marginXPx: 0 }).leaders[0]!.points[1]).toEqual({ xPx: 19, yPx: 32 })
  })

  it('a later one that would cross an earlier one is left out and its number stands on a stem of 15 to 25 px', () => {
    const { leaders, numbers } = route([note(1, 32, { xPx: 900, yPx: 284 }), note(2, 150, { xPx: 950, yPx: 60 })])
    expect(leaders.map(({ number }) => number)).toEqual([1])
    expect(numbers.map(({ number }) => number)).toEqual([2])
    const { place, mark } = numbers[0]!
    const stemPx = Math.hypot(mark.xPx - place.xPx, mark.yPx - place.yPx)
    expect(stemPx).toBeGreaterThanOrEqual(15)
    expect(stemPx).toBeLessThanOrEqual(25)
  })

  it('never cross the tape: a note beside it or below, or one scrolled out of sight, gets a number instead', () => {
    const place = { xPx: 500, yPx: 200 }
    expect(route([note(1, 470, place)]).leaders).toEqual([])
    expect(route([note(1, null, place)]).numbers).toHaveLength(1)
  })

  it('leave out what lies off the sheet and what has no place', () => {
    expect(route([note(1, 30, { xPx: 2000, yPx: 100 }), note(2, 60, null)])).toEqual({ leaders: [], numbers: [] })
  })

  it('do not run through the tag', () => {
    const blocked = [{ xPx: 900, yPx: 100, widthPx: 100, heightPx: 100 }]
    expect(route([note(1, 150, { xPx: 500, yPx: 150 })], { blocked }).leaders).toEqual([])
    expect(route([note(1, 150, { xPx: 950, yPx: 150 })], { blocked }).leaders).toEqual([])
  })

  it('never cross each other, whatever the notes and places', () => {
    const any = fc.array(fc.record({ y: fc.integer({ min: 0, max: 456 }), xPx: fc.integer({ min: 0, max: 1072 }), yPx: fc.integer({ min: 0, max: 456 }) }), { maxLength: 14 })
    fc.assert(fc.property(any, (list) => {
      const { leaders, numbers } = route(list.map(({ y, xPx, yPx }, i) => note(i + 1, y, { xPx, yPx })))
      expect(leaders.length + numbers.length).toBe(list.length)
      for (const [i, one] of leaders.entries()) {
        for (const other of leaders.slice(i + 1)) {
          const [a, b] = [one.points, other.points]
          expect(a.slice(1).some((p, k) => b.slice(1).some((q, m) => legsCross(a[k]!, p, b[m]!, q)))).toBe(false)
        }
      }
    }), { seed: 5303, numRuns: 200 })
  })
})

it('two legs that touch count as crossing, parallel ones apart do not', () => {
  const p = (xPx: number, yPx: number): { xPx: number; yPx: number } => ({ xPx, yPx })
  expect(legsCross(p(0, 0), p(10, 10), p(0, 10), p(10, 0))).toBe(true)
  expect(legsCross(p(0, 0), p(10, 0), p(10, 0), p(20, 5))).toBe(true)
  expect(legsCross(p(0, 0), p(10, 0), p(5, 0), p(20, 0))).toBe(true)
  expect(legsCross(p(0, 0), p(10, 0), p(0, 1), p(10, 1))).toBe(false)
})

it('a number keeps clear of words on the plan where there is room, and of other numbers in any case', () => {
  const place = { xPx: 400, yPx: 200 }
  const free = route([note(1, null, place)]).numbers[0]!
  // Straight up, 21 px, is the first choice.
  expect(free.mark).toEqual({ xPx: 400, yPx: 179 })
  const word = { x0: 350, y0: 165, x1: 450, y1: 190 }
  const { mark } = route([note(1, null, place)], { words: [word] }).numbers[0]!
  const isOver = mark.xPx + 10 > word.x0 && mark.xPx - 10 < word.x1 && mark.yPx + 10 > word.y0 && mark.yPx - 10 < word.y1
  expect(isOver).toBe(false)
  // Words all round: the number stands all the same.
  expect(route([note(1, null, place)], { words: [{ x0: 0, y0: 0, x1: 1072, y1: 456 }] }).numbers[0]!.mark).toEqual(free.mark)
})
