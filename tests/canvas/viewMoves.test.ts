import { describe, expect, it } from 'vitest'
import { deriveSite } from '../../src/derive/site.ts'
import { applyMatrix, planMatrix, type FrameView } from '../../src/state/frames.ts'
import { initialView, type ViewState } from '../../src/state/viewStore.ts'
import { anchored, broughtIn, centredOn, fitAll, fitted, panned, previousView, turnedRound, withOrientation, zoomedAbout, zoomToItems } from '../../src/canvas/viewMoves.ts'
import { free, item, onRun, setUp as setUpRecord, yard } from '../helpers/documents.ts'

const view = (over: Partial<ViewState> = {}): ViewState => ({ ...initialView, ...over })
const setUp = { datum: { xM: 12, yM: -5 }, headingRad: 0.4 }
const frames: [string, Partial<ViewState>][] = [
  ['along the tape', {}], ['turned round', { turned: true }], ['north up', { orientation: 'northUp' }], ['tape upright', { tapeVertical: true }], ['tape upright and turned', { tapeVertical: true, turned: true }],
]
const px = (of: FrameView, xM: number, yM: number): [number, number] => {
  const at = applyMatrix(planMatrix(of, setUp), xM, yM)
  return [at.xPx, at.yPx]
}
const near = (a: readonly number[], b: readonly number[]): void => a.forEach((value, i) => expect(value).toBeCloseTo(b[i]!, 6))

describe.each(frames)('moves of the view, %s', (_name, over) => {
  it('a pan of the sheet moves every point by just that', () => {
    const before = view(over)
    const [x, y] = px(before, 20, 3)
    near(px({ ...before, ...panned(before, setUp, 37, -12) }, 20, 3), [x + 37, y - 12])
  })

  it('a zoom keeps the point under the pointer', () => {
    const before = view(over)
    const [x, y] = px(before, 20, 3)
    const after = { ...before, ...zoomedAbout(before, setUp, 1.7, x, y) }
    near(px(after, 20, 3), [x, y])
    expect(after.pxPerM).toBeCloseTo(before.pxPerM * 1.7, 12)
  })

  it('a zoom out and in again comes back', () => {
    const before = view(over)
    const out = { ...before, ...zoomedAbout(before, setUp, 0.5, 100, 200) }
    const back = zoomedAbout(out, setUp, 2, 100, 200)
    near([back.leftRunningM, back.midOffsetM, back.pxPerM], [before.leftRunningM, before.midOffsetM, before.pxPerM])
  })

  it('a point can be brought to the middle', () => {
    const before = view(over)
    const { widthPx, heightPx } = before.bandSizePx.plan
    near(px({ ...before, ...centredOn(before, setUp, -7, 9) }, -7, 9), [widthPx / 2, heightPx / 2])
  })

  it('fit shows every point with room round it, and not smaller than it has to be', () => {
    const before = view(over)
    const points = [0, 0, 90, 10, 40, -22]
    const after = { ...before, ...fitted(before, setUp, points) }
    const { widthPx, heightPx } = before.bandSizePx.plan
    const shown = [0, 2, 4].map((i) => px(after, points[i]!, points[i + 1]!))
    for (const [x, y] of shown) {
      expect(x).toBeGreaterThanOrEqual(36 - 1e-6)
      expect(x).toBeLessThanOrEqual(widthPx - 36 + 1e-6)
      expect(y).toBeGreaterThanOrEqual(36 - 1e-6)
      expect(y).toBeLessThanOrEqual(heightPx - 36 + 1e-6)
    }
    const spread = (axis: 0 | 1): number => Math.max(...shown.map((p) => p[axis])) - Math.min(...shown.map((p) => p[axis]))
    expect(Math.min(widthPx - 72 - spread(0), heightPx - 72 - spread(1))).toBeCloseTo(0, 6)
  })

  it('when datum and axis move under it, the middle of the sheet keeps to the site', () => {
    const before = view(over)
    const after = { datum: { xM: 30, yM: 2 }, headingRad: 0.9 }
    const moved = { ...before, ...anchored(before, setUp, after) }
    const { widthPx, heightPx } = before.bandSizePx.plan
    const site = centreOf(before, setUp)
    const at = applyMatrix(planMatrix(moved, after), site.xM, site.yM)
    near([at.xPx, at.yPx], [widthPx / 2, heightPx / 2])
  })
})

const centreOf = (of: ViewState, on: typeof setUp): { xM: number; yM: number } => {
  const m = planMatrix(of, on)
  const det = m.a * m.d - m.b * m.c
  const [x, y] = [of.bandSizePx.plan.widthPx / 2 - m.e, of.bandSizePx.plan.heightPx / 2 - m.f]
  return { xM: (m.d * x - m.c * y) / det, yM: (m.a * y - m.b * x) / det }
}

describe('named moves', () => {
  const site = deriveSite(yard(item('stand', 'stand:a', onRun(5)), item('tree', 'tree:t', free(80, 20))))

  it('fit of everything and zoom to a choice remember the view before, and back goes there', () => {
    const before = view()
    const fit = { ...before, ...fitAll(before, site, null) }
    expect(fit.previousViews).toEqual([{ pxPerM: before.pxPerM, leftRunningM: before.leftRunningM, midOffsetM: before.midOffsetM }])
    const close = { ...fit, ...zoomToItems(fit, site, ['stand:a']) }
    expect(close.pxPerM).toBeGreaterThan(fit.pxPerM)
    const back = { ...close, ...previousView(close) }
    near([back.pxPerM, back.leftRunningM], [fit.pxPerM, fit.leftRunningM])
    expect(previousView(before)).toEqual({})
  })

  it('hidden kinds do not count for fit', () => {
    const before = view()
    expect(fitAll({ ...before, hiddenKinds: ['tree'] }, site, null).pxPerM).toBeGreaterThan(fitAll(before, site, null).pxPerM!)
  })

  it('an empty layout changes nothing', () => {
    expect(zoomToItems(view(), site, [])).toEqual({})
  })

  it('turned round and north up keep the middle of the sheet', () => {
    const record = setUpRecord({ datum: setUp.datum, headingRad: setUp.headingRad })
    const before = view()
    const site0 = centreOf(before, setUp)
    for (const change of [turnedRound(before, record), withOrientation(before, record, 'northUp')]) {
      const after = { ...before, ...change }
      near(px(after, site0.xM, site0.yM), [before.bandSizePx.plan.widthPx / 2, before.bandSizePx.plan.heightPx / 2])
    }
    expect(turnedRound(before, record).turned).toBe(true)
  })

  it('what is in view is left where it is, what is not is brought in', () => {
    const record = setUpRecord()
    expect(broughtIn(view(), record, 5, 0)).toEqual({})
    expect(broughtIn(view(), record, 500, 0).leftRunningM).toBeGreaterThan(400)
  })
})
