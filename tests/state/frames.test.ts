import { describe, expect, it } from 'vitest'
import { alongToPx, applyMatrix, drawnAlongM, foldLossM, foldOf, foldPx, invertMatrix, panned, partOfAlong, partPx, planMatrix, planPart, planToPx, pxToAlong, pxToPlan, tapeDirection, tapeLengthPx, zoomedAbout, type FrameView } from '../../src/state/frames.ts'
import { initialView } from '../../src/state/viewStore.ts'

// 1,000 px wide at 10 px/m with the left edge at −20 m: 20 to 80 m is folded into 30 px, so what is at 80 m is drawn where 23 m would be.
const band = { plan: { widthPx: 1000, heightPx: 500 }, section: { widthPx: 1000, heightPx: 300 } }
const plain: FrameView = { ...initialView, pxPerM: 10, leftRunningM: -20, midOffsetM: 3, bandSizePx: band }
const folded: FrameView = { ...plain, fold: { fromM: 20, toM: 80 } }
const setUp = { datum: { xM: 12, yM: -5 }, headingRad: 0.4 }
const sides: [string, boolean][] = [['exit to the right', false], ['turned round', true]]
const alongs = [-33.3, -20, 0, 7.25, 19.999, 20, 35, 50, 79.5, 80, 80.001, 97, 140]

describe('without a fold', () => {
  it.each([null, undefined])('the map along the tape is straight (%s)', (fold) => {
    for (const turned of [false, true]) {
      const view: FrameView = { ...plain, turned, ...(fold === undefined ? {} : { fold }) }
      for (const alongM of alongs) {
        // (along − left) · scale from the start edge; from the other edge when turned.
        const fromStartPx = (alongM + 20) * 10
        expect(alongToPx(view, alongM)).toBe(turned ? 1000 - fromStartPx : fromStartPx)
      }
      expect(foldPx(view)).toBeNull()
      expect(foldLossM(view)).toBe(0)
      expect(partPx(view, 'before')).toEqual({ x0: 0, x1: 1000 })
      expect(planMatrix(view, setUp, 'after')).toEqual(planMatrix(view, setUp, 'before'))
      expect(planToPx(view, setUp, 40, 2)).toEqual(applyMatrix(planMatrix(view, setUp), 40, 2))
      expect(pxToPlan(view, setUp, 333, 44)).toEqual(invertMatrix(planMatrix(view, setUp), 333, 44))
    }
  })

  it('north up and on an upright tape a fold does not count', () => {
    for (const over of [{ orientation: 'northUp' }, { tapeVertical: true }] as const) {
      const [with_, without] = [{ ...folded, ...over }, { ...plain, ...over }]
      expect(foldOf(with_)).toBeNull()
      expect(planMatrix(with_, setUp)).toEqual(planMatrix(without, setUp))
      for (const alongM of alongs) expect(alongToPx(with_, alongM)).toBe(alongToPx(without, alongM))
    }
  })
})

describe.each(sides)('with a fold, %s', (_name, turned) => {
  const view: FrameView = { ...folded, turned }

  it('the fold is 30 px wide, and both sides of it are at the same scale', () => {
    // The part before ends at (20 + 20) · 10 = 400 px from the start edge; 85 m lies 30 px and 5 m beyond: 480.
    const px = (fromStartPx: number): number => (turned ? 1000 - fromStartPx : fromStartPx)
    expect(alongToPx(view, 20)).toBeCloseTo(px(400), 9)
    expect(alongToPx(view, 80)).toBeCloseTo(px(430), 9)
    expect(alongToPx(view, 85)).toBeCloseTo(px(480), 9)
    expect(alongToPx(view, 0)).toBeCloseTo(px(200), 9)
    expect(foldPx(view)).toEqual(turned ? { x0: 570, x1: 600 } : { x0: 400, x1: 430 })
  })

  it('what is drawn comes back: px to running distance and px again', () => {
    for (const alongM of alongs) expect(pxToAlong(view, alongToPx(view, alongM))).toBeCloseTo(alongM, 9)
    for (let px = -50; px <= 1050; px += 7) expect(alongToPx(view, pxToAlong(view, px))).toBeCloseTo(px, 9)
  })

  it('running distances never turn back on screen', () => {
    const sign = turned ? -1 : 1
    for (let i = 1; i < alongs.length; i++) expect(sign * (alongToPx(view, alongs[i]!) - alongToPx(view, alongs[i - 1]!))).toBeGreaterThan(0)
    // Zoomed out until 60 m would take less than 30 px, the fold keeps its width.
    const far: FrameView = { ...view, pxPerM: 0.3 }
    expect(Math.abs(alongToPx(far, 80) - alongToPx(far, 20))).toBeCloseTo(30, 9)
    for (let i = 1; i < alongs.length; i++) expect(sign * (alongToPx(far, alongs[i]!) - alongToPx(far, alongs[i - 1]!))).toBeGreaterThan(0)
  })

  it('each part of the plan has a matrix of its own that agrees with the tape', () => {
    const [cos, sin] = [Math.cos(0.4), Math.sin(0.4)]
    for (const [alongM, acrossM] of [[-10, 0], [15, 4], [85, -3], [120, 20]] as const) {
      const [xM, yM] = [12 + alongM * cos + acrossM * sin, -5 + alongM * sin - acrossM * cos]
      const part = partOfAlong(view, alongM)
      const at = applyMatrix(planMatrix(view, setUp, part === 'after' ? 'after' : 'before'), xM, yM)
      expect(at.xPx).toBeCloseTo(alongToPx(view, alongM), 9)
      // Right of the axis is down the screen, up when turned; 3 m of offset lie at the middle.
      expect(at.yPx).toBeCloseTo(250 + (turned ? -1 : 1) * (acrossM - 3) * 10, 9)
      const drawn = planToPx(view, setUp, xM, yM)
      expect([drawn.xPx, drawn.yPx].map((value) => Math.round(value * 1e6))).toEqual([at.xPx, at.yPx].map((value) => Math.round(value * 1e6)))
      const back = pxToPlan(view, setUp, at.xPx, at.yPx)
      expect(back.xM).toBeCloseTo(xM, 9)
      expect(back.yM).toBeCloseTo(yM, 9)
    }
  })

  it('parts meet the fold and nothing else', () => {
    const [before, after] = [partPx(view, 'before'), partPx(view, 'after')]
    expect([before, after]).toEqual(turned ? [{ x0: 600, x1: 1000 }, { x0: 0, x1: 570 }] : [{ x0: 0, x1: 400 }, { x0: 430, x1: 1000 }])
    expect(planPart(view, alongToPx(view, 19))).toBe('before')
    expect(planPart(view, alongToPx(view, 81))).toBe('after')
    expect([partOfAlong(view, 20), partOfAlong(view, 20.01), partOfAlong(view, 79.9), partOfAlong(view, 80)]).toEqual(['before', 'folded', 'folded', 'after'])
  })

  it('a pointer held in one part stops at the fold', () => {
    const along = (xPx: number, part?: 'before' | 'after'): number => {
      const { xM, yM } = pxToPlan(view, setUp, xPx, 250, part)
      return (xM - 12) * Math.cos(0.4) + (yM + 5) * Math.sin(0.4)
    }
    expect(along(alongToPx(view, 100), 'before')).toBeCloseTo(20, 9)
    expect(along(alongToPx(view, 0), 'after')).toBeCloseTo(80, 9)
    expect(along(alongToPx(view, 15), 'before')).toBeCloseTo(15, 9)
    // On the fold itself: the nearer edge.
    expect(along(alongToPx(view, 40))).toBeCloseTo(20, 9)
    expect(along(alongToPx(view, 60))).toBeCloseTo(80, 9)
  })

  it('a zoom keeps the running distance under the pointer on either side of the fold', () => {
    for (const alongM of [5, 50, 95]) {
      const px = alongToPx(view, alongM)
      for (const factor of [0.4, 1.25, 3]) {
        const after = { ...view, ...zoomedAbout(view, factor, px, 100) }
        expect(after.pxPerM).toBeCloseTo(10 * factor, 9)
        expect(alongToPx(after, alongM)).toBeCloseTo(px, 9)
      }
    }
  })

  it('a pan moves both parts by the same px, past the fold too', () => {
    for (const dxPx of [-650, -37, 41]) {
      const after = { ...view, ...panned(view, dxPx, 0) }
      for (const alongM of alongs) expect(alongToPx(after, alongM)).toBeCloseTo(alongToPx(view, alongM) + dxPx, 9)
    }
  })
})

it('distances drawn on the folded tape run on from the part before', () => {
  expect([-20, 20, 80, 100].map((alongM) => drawnAlongM(folded, alongM))).toEqual([-20, 20, 23, 43])
  expect(foldLossM(folded)).toBe(57)
})

it('an upright tape runs up the screen, down when turned', () => {
  expect(tapeDirection({ ...plain, tapeVertical: true })).toBe('up')
  expect(tapeLengthPx({ ...plain, tapeVertical: true })).toBe(500)
  expect(alongToPx({ ...plain, tapeVertical: true }, 0)).toBe(300)
  expect(alongToPx({ ...plain, tapeVertical: true, turned: true }, 0)).toBe(200)
})
