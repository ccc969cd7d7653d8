import { paint, type Paint2D } from '../../drawing/paint.ts'
import type { Primitive } from '../../drawing/primitives.ts'
import { foldOf } from '../../state/frames.ts'
import { axisShapes, jointPlaneShapes, nailMark, pipeShapes } from './pipeShapes.ts'
import { parkedShapes } from './parkedShapes.ts'
import type { DrawnItem, Picture } from './picture.ts'
import { stamp } from './sprites.ts'
import { walkingShapes } from './walkingShapes.ts'

export type PaintManner = 'drawn' | 'proposal' | 'earlier'

export const paintShapes = (context: CanvasRenderingContext2D, list: readonly Primitive[], picture: Picture, matrix = picture.matrix, manner: PaintManner = 'drawn'): void => {
  if (list.length > 0) paint(context as Paint2D, list, { matrix, theme: picture.theme, manner, touch: picture.isTouch, visiblePx: { x0: 0, y0: 0, x1: picture.band.widthPx, y1: picture.band.heightPx } })
}

/** Draws inside the part of the sheet the picture is of; without a fold the whole band, unclipped. */
export const inPart = (context: CanvasRenderingContext2D, { boundsPx, view }: Picture, draw: () => void): void => {
  if (foldOf(view) === null) return draw()
  if (boundsPx.x1 <= boundsPx.x0) return undefined
  context.save()
  context.beginPath()
  context.rect(boundsPx.x0, boundsPx.y0, boundsPx.x1 - boundsPx.x0, boundsPx.y1 - boundsPx.y0)
  context.clip()
  draw()
  context.restore()
}

/** Axis, joint plane, nail, gear, then the pipe over it: it lies on everything it passes. `quick`: equal symbols are stamped. */
export const paintItems = (context: CanvasRenderingContext2D, items: readonly DrawnItem[], picture: Picture, quick: { ratio: number } | null = null): void => {
  paintShapes(context, axisShapes(picture), picture)
  paintShapes(context, parkedShapes(picture), picture)
  paintShapes(context, jointPlaneShapes(picture), picture)
  for (const drawn of items) if (quick === null || !stamp(context, drawn, picture, quick.ratio)) paintShapes(context, drawn.shapes, picture, drawn.matrix)
  paintShapes(context, nailShapes(picture), picture)
  paintPipe(context, picture)
}

export const paintPipe = (context: CanvasRenderingContext2D, picture: Picture): void => paintShapes(context, walkingShapes(picture) ?? pipeShapes(picture), picture)

/** Where the nail is drawn: at the datum, or, where a machine stands over it, beside it on the line through the joint plane. */
export const nailPlace = ({ site }: Picture): { xM: number; yM: number; isBeside: boolean } | null => {
  if (site.setUp === null || site.run === null) return null
  const machine = site.jaws.machineId === null ? undefined : site.placed.get(site.jaws.machineId)
  if (machine === undefined) return { ...site.setUp.datum, isBeside: false }
  const at = site.atRunning(0, 3.6)
  return { xM: at.xM, yM: at.yM, isBeside: true }
}

const nailShapes = (picture: Picture): Primitive[] => {
  const at = nailPlace(picture)
  return at === null ? [] : [{ t: 'mark', xM: at.xM, yM: at.yM, parts: nailMark }]
}
