import { describe, expect, it } from 'vitest'
import { levelShape } from '../../src/drawing/levelShapes.ts'
import { itemMatrix } from '../../src/drawing/matrix.ts'
import { paint } from '../../src/drawing/paint.ts'
import type { Primitive } from '../../src/drawing/primitives.ts'
import { toSvg } from '../../src/drawing/svg.ts'
import { textRuns } from '../../src/drawing/fractionText.ts'
import { themes } from '../../src/drawing/theme.ts'
import { createRecorder } from '../helpers/recorder.ts'

const theme = themes.day
/** 10 px a metre, y up, origin at 100, 200. */
const sheet = { a: 10, b: 0, c: 0, d: -10, e: 100, f: 200 }
const painted = (list: readonly Primitive[], over: Partial<Parameters<typeof paint>[2]> = {}) => {
  const recorder = createRecorder()
  paint(recorder, list, { matrix: sheet, theme, ...over })
  return recorder.calls
}
const named = (calls: ReturnType<typeof painted>, name: string) => calls.filter((call) => call.name === name)

describe('item frames', () => {
  it('turns the heading counter-clockwise as read with y up', () => {
    // A point 2 m ahead of an item at (3, 4) heading 90° (site up) is at (3, 6): px 130, 140.
    const m = itemMatrix(sheet, 3, 4, Math.PI / 2)
    expect([m.a * 2 + m.e, m.b * 2 + m.f]).toEqual([expect.closeTo(130), expect.closeTo(140)])
  })
})

describe('painting', () => {
  it('puts points through the matrix and keeps strokes in px', () => {
    const calls = painted([{ t: 'path', points: [0, 0, 1, 2], stroke: 'ink', weight: 'gear' }])
    expect(named(calls, 'moveTo')[0]?.args).toEqual([100, 200])
    expect(named(calls, 'lineTo')[0]?.args).toEqual([110, 180])
    expect(named(calls, 'stroke')[0]?.state).toMatchObject({ lineWidth: 1.5, strokeStyle: '#1E1B16' })
  })

  it('draws a stroke as wide when zoomed in ten times', () => {
    const list: Primitive[] = [{ t: 'circle', xM: 0, yM: 0, radiusM: 1, stroke: 'ink', weight: 'context' }]
    const near = painted(list, { matrix: { ...sheet, a: 100, d: -100 } })
    expect(named(near, 'stroke')[0]?.state.lineWidth).toBe(named(painted(list), 'stroke')[0]?.state.lineWidth)
    expect(named(near, 'ellipse')[0]?.args.slice(0, 4)).toEqual([100, 200, 100, 100])
  })

  it('clips a hatch to its shape and draws it only where the screen is', () => {
    const zone: Primitive = { t: 'rect', xM: 0, yM: 0, widthM: 1000, heightM: 1000, hatch: 'red', stroke: 'red' }
    const calls = painted([zone], { visiblePx: { x0: 100, y0: 100, x1: 200, y1: 200 } })
    const clipAt = calls.findIndex(({ name }) => name === 'clip')
    expect(clipAt).toBeGreaterThan(0)
    // The visible 100 × 100 px hold (100/12.7 + 2)² < 121 tiles with one stripe each.
    const stripes = calls.slice(clipAt).filter(({ name }) => name === 'moveTo')
    expect(stripes.length).toBeGreaterThan(50)
    expect(stripes.length).toBeLessThan(130)
  })

  it('moves a hatch with the sheet', () => {
    const zone: Primitive = { t: 'rect', xM: 0, yM: 0, widthM: 5, heightM: 5, hatch: 'amber' }
    const firstDot = (e: number): number => named(painted([zone], { matrix: { ...sheet, e } }), 'ellipse')[0]?.args[0] as number
    expect(firstDot(103.5) - firstDot(100)).toBeCloseTo(3.5)
  })

  it('never draws pipe thinner than 3.2 px, with a stripe a quarter as wide', () => {
    const pipe = (outerDiameterM: number): Primitive => ({ t: 'pipe', points: [0, 0, 10, 0], outerDiameterM })
    const widths = (od: number) => named(painted([pipe(od)]), 'stroke').map(({ state }) => state.lineWidth)
    expect(widths(0.1)).toEqual([3.2, 0.8])
    // 0.8 m at 10 px/m is 8 px.
    expect(widths(0.8)).toEqual([8, 2])
  })

  it('keeps pipe black inside a chalk edge by night', () => {
    const calls = painted([{ t: 'pipe', points: [0, 0, 10, 0], outerDiameterM: 0.8 }], { theme: themes.night })
    expect(named(calls, 'stroke').map(({ state }) => [state.strokeStyle, state.lineWidth])).toEqual([['#EEE9DC', 8], ['#0A0D0F', 6.4], ['#6FB4F5', 2]])
  })

  it('edges lettering with the colour of the lot where asked', () => {
    const calls = painted([{ t: 'text', xM: 0, yM: 0, text: 'E2', sizePx: 12, lotEdge: true }])
    expect(named(calls, 'strokeText')[0]?.state).toMatchObject({ strokeStyle: theme.inks.lot, lineWidth: 3.5 })
    expect(named(calls, 'fillText')[0]?.args[0]).toBe('E2')
  })

  it('sets an eighth as a raised 1, a slash and an 8, so that 2⅝ can never read 25/8', () => {
    const calls = named(painted([{ t: 'text', xM: 0, yM: 0, text: '2\u2009⅝ in', sizePx: 10 }]), 'fillText')
    expect(calls.map(({ args }) => args[0])).toEqual(['2\u2009', '5', '\u2044', '8', ' in'])
    // Rise 0.28 of 10 px.
    expect(calls.map(({ args }) => args[2])).toEqual([200, 197.2, 200, 200, 200])
  })

  it('lets ratios and dates stand: only halves to sixty-fourths become fractions', () => {
    expect(textRuns('sag 1/200')).toEqual([{ as: 'plain', text: 'sag 1/200' }])
    expect(textRuns('3/16')).toEqual([{ as: 'fraction', above: '3', below: '16' }])
    expect(textRuns('24/8/2')).toEqual([{ as: 'plain', text: '24/8/2' }])
  })

  it('draws what stood in an older plan as thin grey lines without fills', () => {
    const calls = painted([{ t: 'rect', xM: 0, yM: 0, widthM: 1, heightM: 1, fill: 'ink', stroke: 'red', weight: 'building', dash: 'rope' }, { t: 'pipe', points: [0, 0, 5, 0], outerDiameterM: 1 }], { manner: 'earlier' })
    expect(named(calls, 'fill')).toEqual([])
    expect(named(calls, 'stroke').map(({ state }) => [state.strokeStyle, state.lineWidth])).toEqual([[theme.inks.ink2, 1], [theme.inks.ink2, 1.2]])
  })

  it('draws a proposal as teal dashes without fills', () => {
    const calls = painted([{ t: 'rect', xM: 0, yM: 0, widthM: 1, heightM: 1, fill: 'ink', stroke: 'ink' }], { manner: 'proposal' })
    expect(named(calls, 'fill')).toHaveLength(0)
    expect(named(calls, 'stroke')[0]?.state).toMatchObject({ strokeStyle: theme.inks.chosen, dash: [5, 3] })
  })

  it('keeps marks upright and of one size whatever the zoom and turn', () => {
    const mark: Primitive = { t: 'mark', xM: 1, yM: 0, parts: [{ t: 'path', points: [0, 0, 5, 0], stroke: 'ink' }] }
    const calls = painted([mark], { matrix: itemMatrix({ ...sheet, a: 50, d: -50 }, 0, 0, 1) })
    const [from, to] = [named(calls, 'moveTo')[0]?.args as number[], named(calls, 'lineTo')[0]?.args as number[]]
    expect([(to[0] as number) - (from[0] as number), (to[1] as number) - (from[1] as number)]).toEqual([expect.closeTo(5), expect.closeTo(0)])
  })

  it('leaves the context as it was', () => {
    const recorder = createRecorder()
    const before = { ...recorder, calls: undefined }
    paint(recorder, [{ t: 'pipe', points: [0, 0, 1, 1], outerDiameterM: 1 }, { t: 'text', xM: 0, yM: 0, text: '⅛', sizePx: 9 }, { t: 'circle', xM: 0, yM: 0, radiusM: 1, hatch: 'blue', fill: 'lot' }], { matrix: sheet, theme, manner: 'usedUp' })
    expect({ ...recorder, calls: undefined }).toEqual(before)
  })
})

describe('level shapes', () => {
  it('draws a small CHECK as a ring and a large one filled', () => {
    expect(levelShape('CHECK', 11)).toHaveLength(2)
    expect(levelShape('CHECK', 23)).toHaveLength(1)
  })
  it('stays within a quarter of its size of a square that large', () => {
    for (const level of ['STOP', 'FIX', 'CHECK', 'NOTE'] as const) {
      for (const part of levelShape(level, 20)) if (part.t === 'path') expect(Math.max(...part.points.map(Math.abs))).toBeLessThanOrEqual(12.5)
    }
  })
})

describe('svg', () => {
  it('writes the same list with hatches as patterns and true fractions as shifted spans', () => {
    const svg = toSvg([{ t: 'rect', xM: 0, yM: 0, widthM: 2, heightM: 1, hatch: 'blue', stroke: 'blue', dash: 'blue' }, { t: 'text', xM: 0, yM: 0, text: '1\u2009⅛ "', sizePx: 10 }], { matrix: sheet, theme, widthPx: 300, heightPx: 300, title: 'a < b' })
    expect(svg).toContain('<pattern id="yard-day-blue-100-200"')
    expect(svg).toContain('fill="url(#yard-day-blue-100-200)"')
    expect(svg).toContain('stroke-dasharray="14 5"')
    expect(svg).toContain('<tspan font-size="6.2" dy="-2.8">1</tspan><tspan dy="2.8">\u2044</tspan>')
    expect(svg).toContain('<title>a &lt; b</title>')
    expect(svg).not.toContain('style=')
  })
})
