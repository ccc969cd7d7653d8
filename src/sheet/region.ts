/** Parts the regions of the page share. All px of the page, y DOWN, drawn with the identity matrix. */
import type { BoxPx } from '../drawing/paint.ts'
import type { InkName, Pen, Primitive } from '../drawing/primitives.ts'
import type { ImageBoxName } from './page.ts'
import type { Lettering, TextLook } from './lettering.ts'

export interface Region {
  name: ImageBoxName
  box: BoxPx
  list: readonly Primitive[]
}

export const box = (x0: number, y0: number, widthPx: number, heightPx: number, pen: Pen): Primitive => ({ t: 'rect', xM: x0, yM: y0, widthM: widthPx, heightM: heightPx, ...pen })
export const rule = (points: readonly number[], stroke: InkName = 'ink', weight: Pen['weight'] = 'context'): Primitive => ({ t: 'path', points, stroke, weight: weight ?? 'context' })
export const frame = ({ x0, y0, x1, y1 }: BoxPx, pen: Pen): Primitive => box(x0, y0, x1 - x0, y1 - y0, pen)

/** Heading of a block: bold, on the baseline of its first line. */
export const HEADING: TextLook = { sizePx: 18, bold: true }
export const HEADING_LINE_PX = 25

/** A plate that says 'not settled': broken frame and bold word, told in grey too. Its right edge is at `x1`. */
export const notSettledPlate = (text: string, at: { x1: number; baselinePx: number }, lettering: Lettering): { list: readonly Primitive[]; x0: number } => {
  const look: TextLook = { sizePx: 15, bold: true }
  const widthPx = lettering.widthPx(text, look) + 16
  const x0 = at.x1 - widthPx
  return { x0, list: [box(x0, at.baselinePx - 17, widthPx, 23, { fill: 'sheet', stroke: 'ink', weight: 'rope', dash: 'guess' }), ...lettering.line(text, x0 + 8, at.baselinePx, look)] }
}
