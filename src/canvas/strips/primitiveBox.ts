import { guessedWidthPx } from '../../drawing/fractionText.ts'
import { markMatrix, scaleOf, type Matrix } from '../../drawing/matrix.ts'
import { boxOfPoints, touchSizePx, type BoxPx, type PaintOptions } from '../../drawing/paint.ts'
import type { Primitive } from '../../drawing/primitives.ts'
import { PIPE_LEAST_PX } from '../../drawing/theme.ts'

/** Half the thickest stroke with its soft edge, px. */
const STROKE_ROOM_PX = 4
/** Widths of lettering are guessed; a guess is never this much short. */
const TEXT_SLACK_RATIO = 1.3
const TEXT_ROOM_PX = 10

const grown = (points: readonly number[], m: Matrix, roomPx: number): BoxPx => {
  const box = boxOfPoints(points, m)
  return { x0: box.x0 - roomPx, y0: box.y0 - roomPx, x1: box.x1 + roomPx, y1: box.y1 + roomPx }
}

/** Room a stroke of this primitive takes beyond its line, px. */
export const strokeRoomPx = (primitive: Primitive, m: Matrix): number =>
  primitive.t === 'pipe' ? Math.max(primitive.leastPx ?? PIPE_LEAST_PX, primitive.outerDiameterM * scaleOf(m).xPx) / 2 + STROKE_ROOM_PX : STROKE_ROOM_PX

/**
 * Box that surely holds all a primitive paints, px of the band, y DOWN; generous where lettering is only guessed.
 * A stretch of a path or pipe: points `from` to `to` (inclusive, counted in points) alone.
 */
export const primitiveBox = (primitive: Primitive, { matrix: m, touch }: Pick<PaintOptions, 'matrix' | 'touch'>, from = 0, to = Infinity): BoxPx => {
  switch (primitive.t) {
    case 'path': case 'pipe':
      return grown(from === 0 && to === Infinity ? primitive.points : primitive.points.slice(2 * from, to === Infinity ? undefined : 2 * to + 2), m, strokeRoomPx(primitive, m))
    case 'rect': {
      const { xM, yM, widthM, heightM } = primitive
      return grown([xM, yM, xM + widthM, yM, xM + widthM, yM + heightM, xM, yM + heightM], m, STROKE_ROOM_PX)
    }
    case 'circle': case 'arc': {
      const { xM, yM, radiusM: r } = primitive
      return grown([xM - r, yM - r, xM + r, yM - r, xM + r, yM + r, xM - r, yM + r], m, STROKE_ROOM_PX)
    }
    case 'text': {
      const sizePx = touch === true ? touchSizePx(primitive.sizePx) : primitive.sizePx
      const widthPx = guessedWidthPx(primitive.text, sizePx) * TEXT_SLACK_RATIO + TEXT_ROOM_PX
      const x = m.a * primitive.xM + m.c * primitive.yM + m.e + (primitive.dxPx ?? 0)
      const y = m.b * primitive.xM + m.d * primitive.yM + m.f - (primitive.dyPx ?? 0)
      const left = x - (primitive.align === 'center' ? widthPx / 2 : primitive.align === 'right' ? widthPx : 0)
      return { x0: left - TEXT_ROOM_PX, y0: y - sizePx * 1.4, x1: left + widthPx + TEXT_ROOM_PX, y1: y + sizePx * 0.6 }
    }
    case 'mark': {
      const inside = markMatrix(m.a * primitive.xM + m.c * primitive.yM + m.e, m.b * primitive.xM + m.d * primitive.yM + m.f)
      const box = { x0: Infinity, y0: Infinity, x1: -Infinity, y1: -Infinity }
      for (const part of primitive.parts) {
        const one = primitiveBox(part, { matrix: inside })
        box.x0 = Math.min(box.x0, one.x0)
        box.y0 = Math.min(box.y0, one.y0)
        box.x1 = Math.max(box.x1, one.x1)
        box.y1 = Math.max(box.y1, one.y1)
      }
      return box
    }
  }
}
