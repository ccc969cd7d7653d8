import { paint, type Paint2D } from '../../drawing/paint.ts'
import type { Primitive } from '../../drawing/primitives.ts'
import type { Theme } from '../../drawing/theme.ts'
import { signatureOf, type DrawnItem, type Picture } from './picture.ts'

/**
 * While the sheet is moving and many symbols are in view, equal symbols are stamped from one small picture each instead
 * of being drawn stroke by stroke. At rest everything is drawn again as it is: a stamp sits on whole px only.
 */
interface Sprite {
  canvas: HTMLCanvasElement
  halfPx: number
}

/** Symbols in view from which stamping pays. */
export const STAMP_FROM = 150
/** Larger symbols are few; they are drawn. */
const MOST_HALF_PX = 70
const MOST_SPRITES = 600

const sprites = new Map<string, Sprite>()
/** How far the shapes of a symbol reach from its origin, px. Null where they carry a pipe: those are never small. */
export const reachOf = (shapes: readonly Primitive[], pxPerM: number): number | null => {
  let reach = 0
  const offer = (x: number, y: number, scale: number): void => {
    reach = Math.max(reach, Math.hypot(x, y) * scale)
  }
  const visit = (shape: Primitive, scale: number): boolean => {
    switch (shape.t) {
      case 'pipe': return false
      case 'path':
        for (let i = 0; i + 1 < shape.points.length; i += 2) offer(shape.points[i]!, shape.points[i + 1]!, scale)
        return true
      case 'rect':
        offer(shape.xM, shape.yM, scale)
        offer(shape.xM + shape.widthM, shape.yM + shape.heightM, scale)
        offer(shape.xM + shape.widthM, shape.yM, scale)
        offer(shape.xM, shape.yM + shape.heightM, scale)
        return true
      case 'circle': case 'arc':
        offer(Math.hypot(shape.xM, shape.yM) + shape.radiusM, 0, scale)
        return true
      case 'text': return true
      case 'mark': return shape.parts.every((part) => visit(part, 1))
    }
  }
  return shapes.every((shape) => visit(shape, pxPerM)) ? reach + 3 : null
}

const makeSprite = (drawn: DrawnItem, theme: Theme, halfPx: number, ratio: number): Sprite | null => {
  const canvas = document.createElement('canvas')
  canvas.width = canvas.height = Math.ceil(halfPx * 2 * ratio)
  const context = canvas.getContext('2d')
  if (context === null) return null
  context.scale(ratio, ratio)
  const { a, b, c, d } = drawn.matrix
  paint(context as Paint2D, drawn.shapes, { matrix: { a, b, c, d, e: halfPx, f: halfPx }, theme })
  return { canvas, halfPx }
}

/** Stamps a symbol; false where it is too large or has a pipe in it and has to be drawn. */
export const stamp = (context: CanvasRenderingContext2D, drawn: DrawnItem, picture: Picture, ratio: number): boolean => {
  const { matrix } = drawn
  const key = `${signatureOf(drawn.item.record)}|${picture.symbol.pxPerM}|${matrix.a.toFixed(3)}|${matrix.b.toFixed(3)}|${picture.theme.name}|${ratio}|${picture.symbol.pipeOuterDiameterM}`
  let sprite = sprites.get(key)
  if (sprite === undefined) {
    const reach = reachOf(drawn.shapes, picture.symbol.pxPerM)
    if (reach === null || reach > MOST_HALF_PX) return false
    const made = makeSprite(drawn, picture.theme, Math.ceil(reach), ratio)
    if (made === null) return false
    // Zooming leaves a set behind at each scale.
    if (sprites.size >= MOST_SPRITES) sprites.clear()
    sprites.set(key, made)
    sprite = made
  }
  const { canvas, halfPx } = sprite
  context.drawImage(canvas, Math.round((matrix.e - halfPx) * ratio) / ratio, Math.round((matrix.f - halfPx) * ratio) / ratio, canvas.width / ratio, canvas.height / ratio)
  return true
}
