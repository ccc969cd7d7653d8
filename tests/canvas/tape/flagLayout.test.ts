import { describe, expect, it } from 'vitest'
import { FAN_REACH_PX, layoutFlags, type FlagRequest } from '../../../src/canvas/tape/flagLayout.ts'

const options = { rows: 2, gapPx: 2, primary: 1 as const }
const flag = (key: string, alongPx: number, over: Partial<FlagRequest> = {}): FlagRequest => ({ key, alongPx, sizePx: 42, rank: 3, ...over })
const byKey = (requests: readonly FlagRequest[], over = {}) => new Map(layoutFlags(requests, { ...options, ...over }).map((place) => [place.key, place]))

describe('flags kept apart', () => {
  it('hangs flags side by side while they have room', () => {
    // 46 px apart, 42 wide: as in the target picture.
    const places = layoutFlags([flag('a', 0), flag('b', 46), flag('c', 92)], options)
    expect(places.map(({ row, hang }) => [row, hang])).toEqual([[0, 1], [0, 1], [0, 1]])
  })

  it('hangs to the other side of the pole where its own side is taken', () => {
    // b at 20 px would cover a; to the left it would too, so it goes up; c at 70 hangs right of a.
    const places = byKey([flag('jaws', 39, { rank: 2 }), flag('R1', 0)])
    expect(places.get('jaws')).toMatchObject({ row: 0, hang: 1 })
    expect(places.get('R1')).toMatchObject({ row: 0, hang: -1, startPx: -42 })
  })

  it('stands in a second row where both sides are taken, then folds', () => {
    const places = byKey([flag('a', 0), flag('b', 44), flag('c', 22), flag('d', 30), flag('e', 26)])
    expect(places.get('c')?.row).toBe(1)
    expect([...places.values()].filter(({ isFolded }) => isFolded)).not.toHaveLength(0)
  })

  it('lets the chosen flag have its place first', () => {
    const places = byKey([flag('a', 0), flag('b', 10, { rank: 0 })])
    expect(places.get('b')).toMatchObject({ row: 0, hang: 1, isFolded: false })
  })

  it('never overlaps two flags that are shown, whatever the crowd', () => {
    const requests = Array.from({ length: 60 }, (_, i) => flag(`f${i}`, (i * 37) % 500, { sizePx: 42 + (i % 3) * 6, rank: i % 4 }))
    for (const fanKey of [null, 'f7', 'f31']) {
      const places = layoutFlags(requests, { ...options, fanKey })
      const shown = places.filter(({ isFolded }) => !isFolded).map(({ key, row, startPx }) => ({ row, startPx, endPx: startPx + (requests.find((r) => r.key === key)?.sizePx ?? 0) }))
      for (const a of shown) for (const b of shown) if (a !== b && a.row === b.row) expect(a.endPx <= b.startPx || b.endPx <= a.startPx).toBe(true)
    }
  })

  it('fans out everything within reach of the flag touched, folding none of it', () => {
    const requests = Array.from({ length: 8 }, (_, i) => flag(`f${i}`, 100 + i * 5))
    expect(layoutFlags(requests, options).some(({ isFolded }) => isFolded)).toBe(true)
    const fanned = layoutFlags(requests, { ...options, fanKey: 'f4' })
    expect(fanned.every(({ isFolded }) => !isFolded)).toBe(true)
    expect(requests.every(({ alongPx }) => Math.abs(alongPx - 120) <= FAN_REACH_PX)).toBe(true)
  })

  it('answers in the order asked', () => {
    expect(layoutFlags([flag('z', 300), flag('a', 0)], options).map(({ key }) => key)).toEqual(['z', 'a'])
  })
})
