import { guessedWidthPx } from '../drawing/fractionText.ts'
import { touchSizePx } from '../drawing/paint.ts'
import type { Matrix } from '../drawing/matrix.ts'
import type { Primitive } from '../drawing/primitives.ts'

/** Text starts this far beyond the fold, or ends this far before it, px. */
const BEYOND_PX = 8
const BEFORE_PX = 4

/** The words of a drawing that would run into the fold left out. `x0`, `x1`: where the part is drawn; an edge of the band is no fold. */
export const clearOfEdges = (list: readonly Primitive[], matrix: Matrix, { x0, x1 }: { x0: number; x1: number }, lengthPx: number, touch = false): Primitive[] => {
  const [leastPx, mostPx] = [x0 > 0 ? x0 + BEYOND_PX : -Infinity, x1 < lengthPx ? x1 - BEFORE_PX : Infinity]
  if (leastPx === -Infinity && mostPx === Infinity) return [...list]
  return list.filter((primitive) => {
    if (primitive.t !== 'text') return true
    const widthPx = guessedWidthPx(primitive.text, touch ? touchSizePx(primitive.sizePx) : primitive.sizePx)
    const at = matrix.a * primitive.xM + matrix.c * primitive.yM + matrix.e + (primitive.dxPx ?? 0)
    const left = at - (primitive.align === 'center' ? widthPx / 2 : primitive.align === 'right' ? widthPx : 0)
    return left >= leastPx && left + widthPx <= mostPx
  })
}
