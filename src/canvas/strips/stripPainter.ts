import { paint, type BoxPx, type Paint2D, type PaintOptions } from '../../drawing/paint.ts'
import type { Primitive } from '../../drawing/primitives.ts'
import { diffLists } from './listDiff.ts'
import { primitiveBox } from './primitiveBox.ts'
import { applyToBox, joined, type Stretch } from './stretch.ts'

/** One drawing list of a band with how it is painted; lists are painted one over the other. */
export interface Pass {
  list: readonly Primitive[]
  options: PaintOptions
  /** Part of the band it may paint in; left out: all of it. */
  clipPx?: BoxPx
}

export interface BandPicture {
  passes: readonly Pass[]
  widthPx: number
  heightPx: number
  /** Colour the band is filled with before anything; null: nothing, it is seen through. */
  ground: string | null
  /** Axis of the screen the band runs along: strips are cut across it. */
  axis: 'x' | 'y'
}

export interface StripCanvas extends Paint2D {
  clearRect(x: number, y: number, width: number, height: number): void
}

export interface Painted {
  /** `all`, `strips`, or nothing at all. */
  how: 'all' | 'strips' | 'none'
  /** Primitives painted, counted in each strip they reach into. */
  primitives: number
}

/** From this share of the band on, all of it is painted: strips have a cost of their own. */
const MOST_SHARE = 0.7

const sameMatrix = (a: PaintOptions, b: PaintOptions): boolean =>
  a.theme === b.theme && a.touch === b.touch && a.manner === b.manner
  && a.matrix.a === b.matrix.a && a.matrix.b === b.matrix.b && a.matrix.c === b.matrix.c && a.matrix.d === b.matrix.d && a.matrix.e === b.matrix.e && a.matrix.f === b.matrix.f
const sameClip = (a: BoxPx | undefined, b: BoxPx | undefined): boolean => a === b || (a !== undefined && b !== undefined && a.x0 === b.x0 && a.y0 === b.y0 && a.x1 === b.x1 && a.y1 === b.y1)
const sameFrame = (a: BandPicture, b: BandPicture): boolean =>
  a.widthPx === b.widthPx && a.heightPx === b.heightPx && a.ground === b.ground && a.axis === b.axis && a.passes.length === b.passes.length
  && a.passes.every((pass, i) => sameMatrix(pass.options, (b.passes[i] as Pass).options) && sameClip(pass.clipPx, (b.passes[i] as Pass).clipPx))

/**
 * Paints a band that runs along the tape, and while a hand drags something only the strips in which it looks other than
 * before. What is painted is the same either way: a strip is cleared, and everything that reaches into it painted again,
 * in order, clipped to it.
 */
export class StripPainter {
  private painted: BandPicture | null = null

  /** The canvas has lost what was on it, or lettering has another face: the next picture is painted whole. */
  forget(): void {
    this.painted = null
  }

  /** `whole`: paint all of it, whatever has changed. */
  paint(context: StripCanvas, picture: BandPicture, whole: boolean): Painted {
    const before = this.painted
    if (whole || before === null || !sameFrame(before, picture)) return this.paintAll(context, picture)
    const diffs = picture.passes.map((pass, i) => diffLists((before.passes[i] as Pass).list, pass.list, pass.options, picture.axis))
    const lengthPx = picture.axis === 'x' ? picture.widthPx : picture.heightPx
    const strips = joined(diffs.flatMap(({ dirty }) => dirty), lengthPx)
    if (strips.reduce((sum, { fromPx, toPx }) => sum + toPx - fromPx, 0) > MOST_SHARE * lengthPx) return this.paintAll(context, picture)
    this.painted = { ...picture, passes: picture.passes.map((pass, i) => ({ ...pass, list: (diffs[i] as { kept: Primitive[] }).kept })) }
    if (strips.length === 0) return { how: 'none', primitives: 0 }
    const placed = picture.passes.map((pass) => ({ pass, at: pass.list.map((primitive) => applyToBox(primitiveBox(primitive, pass.options), picture.axis)) }))
    let primitives = 0
    for (const strip of strips) primitives += paintStrip(context, picture, strip, placed)
    return { how: 'strips', primitives }
  }

  private paintAll(context: StripCanvas, picture: BandPicture): Painted {
    this.painted = picture
    clear(context, picture, { x0: 0, y0: 0, x1: picture.widthPx, y1: picture.heightPx })
    for (const { list, options, clipPx } of picture.passes) clipped(context, clipPx, () => paint(context, list, options))
    return { how: 'all', primitives: picture.passes.reduce((sum, { list }) => sum + list.length, 0) }
  }
}

const paintStrip = (context: StripCanvas, picture: BandPicture, strip: Stretch, placed: readonly { pass: Pass; at: readonly Stretch[] }[]): number => {
  const box = picture.axis === 'x' ? { x0: strip.fromPx, y0: 0, x1: strip.toPx, y1: picture.heightPx } : { x0: 0, y0: strip.fromPx, x1: picture.widthPx, y1: strip.toPx }
  let count = 0
  clipped(context, box, () => {
    clear(context, picture, box)
    for (const { pass, at } of placed) {
      const list = pass.list.filter((_, i) => (at[i] as Stretch).toPx > strip.fromPx && (at[i] as Stretch).fromPx < strip.toPx)
      count += list.length
      if (list.length > 0) clipped(context, pass.clipPx, () => paint(context, list, pass.options))
    }
  })
  return count
}

const trace = (context: Paint2D, { x0, y0, x1, y1 }: BoxPx): void => {
  context.beginPath()
  context.moveTo(x0, y0)
  context.lineTo(x1, y0)
  context.lineTo(x1, y1)
  context.lineTo(x0, y1)
  context.closePath()
}

const clipped = (context: Paint2D, box: BoxPx | undefined, draw: () => void): void => {
  if (box === undefined) return draw()
  context.save()
  trace(context, box)
  context.clip()
  draw()
  context.restore()
  return undefined
}

const clear = (context: StripCanvas, { ground }: BandPicture, box: BoxPx): void => {
  if (ground === null) {
    context.clearRect(box.x0, box.y0, box.x1 - box.x0, box.y1 - box.y0)
    return
  }
  trace(context, box)
  context.fillStyle = ground
  context.fill()
}
