import { paint, type Paint2D } from '../../drawing/paint.ts'
import type { HatchName, Primitive } from '../../drawing/primitives.ts'
import { dashesPx, weightsPx } from '../../drawing/theme.ts'
import type { Surface } from '../../scene/records/frame.ts'
import { zonePens } from '../../scene/symbols/zone.ts'
import { fillHatch } from './patterns.ts'
import { applyMatrix, type Matrix } from '../../state/frames.ts'
import type { DrawnItem, Picture } from './picture.ts'
import type { ShownZone } from './shownZones.ts'

/** Texture of the lot by what it is made of; plain where nobody has said. */
const textureOf: Partial<Record<Surface, HatchName>> = { gravel: 'gravel', sand: 'gravel' }

const trace = (context: CanvasRenderingContext2D, points: readonly number[], m: Matrix, closed: boolean): void => {
  for (let i = 0; i + 1 < points.length; i += 2) {
    const [xPx, yPx] = [m.a * points[i]! + m.c * points[i + 1]! + m.e, m.b * points[i]! + m.d * points[i + 1]! + m.f]
    if (i === 0) context.moveTo(xPx, yPx)
    else context.lineTo(xPx, yPx)
  }
  if (closed) context.closePath()
}

/** Where patterns start counting: a point of the sheet, so that they move with it. */
const patternOrigin = ({ matrix }: Picture): { xPx: number; yPx: number } => ({ xPx: matrix.e, yPx: matrix.f })

type PathPrimitive = Extract<Primitive, { t: 'path' }>
const isHatchedPath = (primitive: Primitive): primitive is PathPrimitive & { hatch: HatchName } => primitive.t === 'path' && primitive.hatch !== undefined

/** A list drawn in order, hatched areas with repeating patterns. */
export const paintHatched = (context: CanvasRenderingContext2D, list: readonly Primitive[], matrix: Matrix, picture: Picture, ratio: number): void => {
  const options = { matrix, theme: picture.theme, touch: picture.isTouch }
  const plain: Primitive[] = []
  const flush = (): void => {
    if (plain.length > 0) paint(context as Paint2D, plain.splice(0), options)
  }
  for (const primitive of list) {
    if (!isHatchedPath(primitive)) {
      plain.push(primitive)
      continue
    }
    const { stroke: _stroke, hatch, ...filled } = primitive
    const { fill: _fill, hatch: _hatch, ...stroked } = primitive
    if (primitive.fill !== undefined) plain.push(filled)
    flush()
    context.beginPath()
    trace(context, primitive.points, matrix, primitive.closed === true)
    fillHatch(context, hatch, picture.theme, ratio, patternOrigin(picture))
    if (primitive.stroke !== undefined) plain.push(stroked)
  }
  flush()
}

const paintLot = (context: CanvasRenderingContext2D, drawn: DrawnItem, picture: Picture, ratio: number): void => {
  const surface = picture.site.setUp === null ? null : picture.site.surfaceAt(0)
  const texture = surface === null ? undefined : textureOf[surface]
  if (texture === undefined) return
  context.beginPath()
  trace(context, drawn.item.outlineM, picture.matrix, true)
  fillHatch(context, texture, picture.theme, ratio, patternOrigin(picture))
}

/** Paper, lot, what stands and runs on the site. */
export const paintGround = (context: CanvasRenderingContext2D, features: readonly DrawnItem[], picture: Picture, ratio: number): void => {
  const { band, theme } = picture
  context.fillStyle = theme.inks.paper
  context.fillRect(0, 0, band.widthPx, band.heightPx)
  for (const drawn of features) {
    // The lot's own line goes over its texture.
    const isLot = drawn.shapes.some((shape) => 'fill' in shape && shape.fill === 'lot')
    if (isLot) {
      paintHatched(context, drawn.shapes.map((shape) => ('fill' in shape && 'stroke' in shape ? { ...shape, stroke: 'none' as const } : shape)), drawn.matrix, picture, ratio)
      paintLot(context, drawn, picture, ratio)
      paintHatched(context, drawn.shapes.map((shape) => ('fill' in shape ? { ...shape, fill: 'none' as const } : shape)), drawn.matrix, picture, ratio)
    } else paintHatched(context, drawn.shapes, drawn.matrix, picture, ratio)
  }
}

/** Hatch once for all rings of a zone, then its edge. An input missing: no hatch, dots and a question mark. */
export const paintZone = (context: CanvasRenderingContext2D, zone: ShownZone, picture: Picture, ratio: number): void => {
  const { theme, matrix } = picture
  const pen = zonePens[zone.zoneClass]
  const { rings, isUnknown } = zone
  context.beginPath()
  for (const ring of rings) trace(context, ring, matrix, true)
  if (!isUnknown && pen.hatch !== undefined) fillHatch(context, pen.hatch, theme, ratio, patternOrigin(picture))
  context.strokeStyle = theme.inks[pen.stroke ?? 'ink']
  context.lineWidth = weightsPx[pen.weight ?? 'context']
  context.lineJoin = 'round'
  context.setLineDash([...dashesPx[isUnknown ? 'missing' : (pen.dash ?? 'solid')]])
  context.stroke()
  context.setLineDash([])
}

/** Middle of the largest ring of a zone on screen, for its word and its question mark. */
export const zoneBoxPx = (zone: ShownZone, matrix: Matrix): { x0: number; y0: number; x1: number; y1: number } | null => {
  const box = { x0: Infinity, y0: Infinity, x1: -Infinity, y1: -Infinity }
  for (const ring of zone.rings) for (let i = 0; i + 1 < ring.length; i += 2) {
    const { xPx, yPx } = applyMatrix(matrix, ring[i]!, ring[i + 1]!)
    box.x0 = Math.min(box.x0, xPx)
    box.x1 = Math.max(box.x1, xPx)
    box.y0 = Math.min(box.y0, yPx)
    box.y1 = Math.max(box.y1, yPx)
  }
  return box.x0 > box.x1 ? null : box
}
