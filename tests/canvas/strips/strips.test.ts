import { describe, expect, it } from 'vitest'
import type { Primitive } from '../../../src/drawing/primitives.ts'
import { themes } from '../../../src/drawing/theme.ts'
import { diffLists } from '../../../src/canvas/strips/listDiff.ts'
import { primitiveBox } from '../../../src/canvas/strips/primitiveBox.ts'
import { StripPainter, type BandPicture, type StripCanvas } from '../../../src/canvas/strips/stripPainter.ts'
import { joined } from '../../../src/canvas/strips/stretch.ts'

/** 10 px a metre, y up, origin in the left lower corner of a band of 1,000 × 100 px. */
const options = { matrix: { a: 10, b: 0, c: 0, d: -10, e: 0, f: 100 }, theme: themes.day }
const stand = (xM: number): Primitive => ({ t: 'rect', xM, yM: 1, widthM: 1, heightM: 1, stroke: 'ink' })
const row = (places: readonly number[]): Primitive[] => places.map(stand)
const stands = row([5, 15, 25, 35, 45, 55, 65, 75, 85, 95])
const picture = (...lists: (readonly Primitive[])[]): BandPicture => ({ passes: lists.map((list) => ({ list, options })), widthPx: 1000, heightPx: 100, ground: null, axis: 'x' })

/** Counts what reaches the canvas and keeps the boxes that were cleared. */
const recorder = () => {
  const cleared: { fromPx: number; toPx: number }[] = []
  let strokes = 0
  const nothing = (): void => undefined
  const context: StripCanvas = {
    fillStyle: '', strokeStyle: '', lineWidth: 1, lineCap: '', lineJoin: '', globalAlpha: 1, font: '', textAlign: '', textBaseline: '',
    save: nothing, restore: nothing, beginPath: nothing, moveTo: nothing, lineTo: nothing, arcTo: nothing, ellipse: nothing, closePath: nothing, fill: nothing,
    stroke: () => { strokes += 1 }, clip: nothing, setLineDash: nothing, fillText: nothing, strokeText: nothing, measureText: () => ({ width: 0 }),
    clearRect: (x, _y, width) => { cleared.push({ fromPx: x, toPx: x + width }) },
  }
  return { context, cleared, strokes: () => strokes }
}

describe('what a drag changes', () => {
  it('a stand that is moved makes the places it left and came to dirty, and nothing else', () => {
    const { dirty, kept } = diffLists(stands, row([5, 15, 25, 38, 45, 55, 65, 75, 85, 95]), options, 'x')
    // 35 to 36 m and 38 to 39 m at 10 px/m, with 4 px of room for the stroke.
    expect(dirty).toEqual([{ fromPx: 346, toPx: 364 }, { fromPx: 376, toPx: 394 }])
    expect(kept).toHaveLength(10)
    expect(kept[0]).toBe(stands[0])
  })

  it('a word put in between shifts nothing: only its own place is dirty', () => {
    const word: Primitive = { t: 'text', xM: 50, yM: 5, text: 'gap', sizePx: 12 }
    const { dirty } = diffLists(stands, [...stands.slice(0, 3), word, ...stands.slice(3)], options, 'x')
    expect(dirty).toHaveLength(1)
    expect(dirty[0]!.fromPx).toBeLessThan(500)
    // A word of three letters at 12 px is never 100 px wide.
    expect(dirty[0]!.toPx).toBeLessThan(600)
  })

  it('a pipe that bends in one span alone is dirty there, not along its whole length', () => {
    const pipe = (sagM: number): Primitive => ({ t: 'pipe', outerDiameterM: 0.3, points: [0, 2, 20, 2, 40, 2 - sagM, 60, 2, 80, 2, 100, 2] })
    const [stretch] = diffLists([pipe(0)], [pipe(0.1)], options, 'x').dirty
    // Points at 20 and 60 m stay; half the pipe of 3.2 px and 4 px of room beyond.
    expect(stretch!.fromPx).toBeCloseTo(200 - 5.6)
    expect(stretch!.toPx).toBeCloseTo(600 + 5.6)
  })

  it('a broken line is dirty to its end: its dashes shift', () => {
    const line = (yM: number): Primitive => ({ t: 'path', dash: 'guess', stroke: 'ink', points: [0, 2, 20, yM, 40, 2, 60, 2, 80, 2] })
    expect(diffLists([line(2)], [line(3)], options, 'x').dirty.at(-1)).toEqual({ fromPx: -4, toPx: 804 })
  })

  it('what cannot be seen is no change, and a hundred such steps together are one', () => {
    let kept: readonly Primitive[] = stands
    let seen = 0
    for (let step = 1; step <= 100; step += 1) {
      // 0.0005 m = 0.005 px a step; 0.02 px is the most that goes unseen, so every fifth step is painted.
      const moved = row([5 + step * 0.0005, 15, 25, 35, 45, 55, 65, 75, 85, 95])
      const diff = diffLists(kept, moved, options, 'x')
      if (diff.dirty.length > 0) seen += 1
      kept = diff.kept
    }
    expect(seen).toBeGreaterThanOrEqual(18)
    expect(seen).toBeLessThanOrEqual(25)
  })

  it('a colour, a word or a level alone is a change', () => {
    const changes: [Primitive, Primitive][] = [
      [stand(5), { ...(stand(5) as Extract<Primitive, { t: 'rect' }>), stroke: 'chosen' }],
      [{ t: 'text', xM: 5, yM: 1, text: '12', sizePx: 12 }, { t: 'text', xM: 5, yM: 1, text: '13', sizePx: 12 }],
      [{ t: 'mark', xM: 5, yM: 1, parts: [{ t: 'circle', xM: 0, yM: 0, radiusM: 5, fill: 'stop' }] }, { t: 'mark', xM: 5, yM: 1, parts: [{ t: 'circle', xM: 0, yM: 0, radiusM: 5, fill: 'check' }] }],
    ]
    for (const [before, now] of changes) expect(diffLists([before], [now], options, 'x').dirty.length).toBeGreaterThan(0)
  })
})

describe('painting a band', () => {
  it('the first picture is painted whole, the same again not at all', () => {
    const { context, cleared, strokes } = recorder()
    const painter = new StripPainter()
    expect(painter.paint(context, picture(stands), false)).toEqual({ how: 'all', primitives: 10 })
    expect(strokes()).toBe(10)
    expect(painter.paint(context, picture(row([5, 15, 25, 35, 45, 55, 65, 75, 85, 95])), false)).toEqual({ how: 'none', primitives: 0 })
    expect(cleared).toEqual([{ fromPx: 0, toPx: 1000 }])
    expect(strokes()).toBe(10)
  })

  it('a frame of a drag clears and paints only the strip about what moved', () => {
    const { context, cleared, strokes } = recorder()
    const painter = new StripPainter()
    painter.paint(context, picture(stands), false)
    const before = strokes()
    const painted = painter.paint(context, picture(row([5, 15, 25, 37, 45, 55, 65, 75, 85, 95])), false)
    // One stand of ten: 346 to 384 px, on steps of 4 px.
    expect(painted).toEqual({ how: 'strips', primitives: 1 })
    expect(cleared.at(-1)).toEqual({ fromPx: 344, toPx: 384 })
    expect(strokes() - before).toBe(1)
  })

  it('what lies over what moved is painted again with it, in order', () => {
    const { context, strokes } = recorder()
    const painter = new StripPainter()
    const pipe: Primitive = { t: 'path', points: [0, 2, 100, 2], stroke: 'pipe' }
    painter.paint(context, picture(stands, [pipe]), false)
    const before = strokes()
    expect(painter.paint(context, picture(row([5, 15, 25, 37, 45, 55, 65, 75, 85, 95]), [pipe]), false).primitives).toBe(2)
    expect(strokes() - before).toBe(2)
  })

  it('another scale, another theme, a lost canvas and the end of the drag are painted whole', () => {
    const { context } = recorder()
    const painter = new StripPainter()
    painter.paint(context, picture(stands), false)
    const zoomed = { ...picture(stands), passes: [{ list: stands, options: { ...options, matrix: { ...options.matrix, a: 11 } } }] }
    expect(painter.paint(context, zoomed, false).how).toBe('all')
    const sun = { ...zoomed, passes: [{ list: stands, options: { ...zoomed.passes[0]!.options, theme: themes.sun } }] }
    expect(painter.paint(context, sun, false).how).toBe('all')
    expect(painter.paint(context, sun, true).how).toBe('all')
    painter.forget()
    expect(painter.paint(context, sun, false).how).toBe('all')
  })

  it('strips lie apart, in order and within the band', () => {
    expect(joined([{ fromPx: 900.2, toPx: 1200 }, { fromPx: -30, toPx: 10 }, { fromPx: 30, toPx: 41 }, { fromPx: 2000, toPx: 2100 }], 1000)).toEqual([{ fromPx: 0, toPx: 44 }, { fromPx: 900, toPx: 1000 }])
  })

  it('a box holds a word whichever way it is set', () => {
    const word = (align: 'left' | 'center' | 'right'): Primitive => ({ t: 'text', xM: 50, yM: 5, text: 'saddle', sizePx: 12, align })
    // Six letters of 12 px are some 33 px wide.
    for (const [align, from, to] of [['left', 500, 533], ['center', 483, 517], ['right', 467, 500]] as const) {
      const box = primitiveBox(word(align), options)
      expect(box.x0).toBeLessThanOrEqual(from)
      expect(box.x1).toBeGreaterThanOrEqual(to)
    }
  })
})
