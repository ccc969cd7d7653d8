import { FRACTION_RISE_RATIO, FRACTION_SIZE_RATIO, FRACTION_SLASH, textRuns } from './fractionText.ts'
import { hatchTiles } from './hatch.ts'
import { markMatrix, scaleOf } from './matrix.ts'
import type { Matrix } from './matrix.ts'
import type { DashName, HatchName, InkName, Pen, Primitive } from './primitives.ts'
import { dashesPx, fontStack, PIPE_LEAST_PX, STRIPE_RATIO, weightsPx } from './theme.ts'
import type { Theme } from './theme.ts'

/** What the painter uses of a 2D canvas context; a browser's context fits, and so does a recorder in a test. */
export interface Paint2D {
  fillStyle: string | object
  strokeStyle: string | object
  lineWidth: number
  lineCap: string
  lineJoin: string
  globalAlpha: number
  font: string
  textAlign: string
  textBaseline: string
  save(): void
  restore(): void
  beginPath(): void
  moveTo(x: number, y: number): void
  lineTo(x: number, y: number): void
  arcTo(x1: number, y1: number, x2: number, y2: number, radius: number): void
  ellipse(x: number, y: number, radiusX: number, radiusY: number, rotation: number, startAngle: number, endAngle: number, counterclockwise?: boolean): void
  closePath(): void
  fill(): void
  stroke(): void
  clip(): void
  setLineDash(segments: number[]): void
  fillText(text: string, x: number, y: number): void
  strokeText(text: string, x: number, y: number): void
  measureText(text: string): { width: number }
}

export interface BoxPx {
  x0: number
  y0: number
  x1: number
  y1: number
}

export interface PaintOptions {
  matrix: Matrix
  theme: Theme
  /** Part of the sheet on screen: hatches are drawn only there. Missing: the whole shape. */
  visiblePx?: BoxPx
  /** `proposal`: teal dashed outlines without fills. `earlier`: thin grey ones, of an older plan. `usedUp`: at 45 %. */
  manner?: 'drawn' | 'proposal' | 'earlier' | 'usedUp'
  /** Touch screens: lettering 2.5 px larger and never under 14 px. Marks keep their size. */
  touch?: boolean
}

export const USED_UP_OPACITY = 0.45

/** Pens of what is not there: outlines of one ink, without fills. */
const ghostPens: Partial<Record<NonNullable<PaintOptions['manner']>, { ink: InkName; dash: DashName; widthPx: number; pipePx: number }>> = {
  proposal: { ink: 'chosen', dash: 'proposal', widthPx: weightsPx.boundary, pipePx: weightsPx.rope },
  earlier: { ink: 'ink2', dash: 'solid', widthPx: weightsPx.hair, pipePx: weightsPx.ticks },
}

/** Size of lettering on a touch screen (docs/look.md). */
export const touchSizePx = (sizePx: number): number => Math.max(14, sizePx + 2.5)

/**
 * Draws a drawing list in the px frame the context is in: strokes, lettering, marks and hatches keep their size
 * on screen, everything else follows the matrix. Leaves the context as it found it. O(primitives), plus hatch lines.
 */
export const paint = (context: Paint2D, list: readonly Primitive[], options: PaintOptions): void => {
  context.save()
  context.lineJoin = 'round'
  context.lineCap = 'round'
  if (options.manner === 'usedUp') context.globalAlpha *= USED_UP_OPACITY
  for (const primitive of list) paintOne(context, primitive, options)
  context.restore()
}

const paintOne = (context: Paint2D, primitive: Primitive, options: PaintOptions): void => {
  const { matrix } = options
  switch (primitive.t) {
    case 'text':
      return paintText(context, primitive, options)
    case 'mark': {
      const [xPx, yPx] = [matrix.a * primitive.xM + matrix.c * primitive.yM + matrix.e, matrix.b * primitive.xM + matrix.d * primitive.yM + matrix.f]
      const inside: PaintOptions = { ...options, matrix: markMatrix(xPx, yPx), touch: false }
      for (const part of primitive.parts) paintOne(context, part, inside)
      return
    }
    case 'pipe':
      return paintPipe(context, primitive, options)
    default:
      context.beginPath()
      trace(context, primitive, matrix)
      paintPen(context, primitive, options)
  }
}

type Shape = Extract<Primitive, { t: 'path' | 'rect' | 'circle' | 'arc' }>

const tracePoints = (context: Paint2D, points: readonly number[], m: Matrix, closed: boolean): void => {
  for (let i = 0; i + 1 < points.length; i += 2) {
    const [x, y] = [points[i] as number, points[i + 1] as number]
    const [xPx, yPx] = [m.a * x + m.c * y + m.e, m.b * x + m.d * y + m.f]
    if (i === 0) context.moveTo(xPx, yPx)
    else context.lineTo(xPx, yPx)
  }
  if (closed) context.closePath()
}

const trace = (context: Paint2D, shape: Shape, m: Matrix): void => {
  switch (shape.t) {
    case 'path':
      return tracePoints(context, shape.points, m, shape.closed === true)
    case 'rect':
      return traceRect(context, shape, m)
    case 'circle':
    case 'arc': {
      const scale = scaleOf(m)
      const turnRad = Math.atan2(m.b, m.a)
      const isFlipped = m.a * m.d - m.b * m.c < 0
      const [fromRad, toRad] = shape.t === 'circle' ? [0, 2 * Math.PI] : [shape.fromRad, shape.toRad]
      const sign = isFlipped ? -1 : 1
      context.ellipse(
        m.a * shape.xM + m.c * shape.yM + m.e, m.b * shape.xM + m.d * shape.yM + m.f,
        shape.radiusM * scale.xPx, shape.radiusM * scale.yPx, turnRad, sign * fromRad, sign * toRad, isFlipped,
      )
      if (shape.t === 'circle') context.closePath()
    }
  }
}

const traceRect = (context: Paint2D, { xM, yM, widthM, heightM, radiusM = 0 }: Extract<Primitive, { t: 'rect' }>, m: Matrix): void => {
  const corners = [xM, yM, xM + widthM, yM, xM + widthM, yM + heightM, xM, yM + heightM]
  if (radiusM <= 0) return tracePoints(context, corners, m, true)
  const scale = scaleOf(m)
  const radiusPx = Math.min(radiusM * Math.min(scale.xPx, scale.yPx), (widthM * scale.xPx) / 2, (heightM * scale.yPx) / 2)
  const at = (i: number): [number, number] => {
    const [x, y] = [corners[(i * 2) % 8] as number, corners[(i * 2 + 1) % 8] as number]
    return [m.a * x + m.c * y + m.e, m.b * x + m.d * y + m.f]
  }
  const [start, first] = [at(0), at(1)]
  context.moveTo((start[0] + first[0]) / 2, (start[1] + first[1]) / 2)
  for (let i = 1; i <= 4; i++) context.arcTo(...at(i), ...at(i + 1), radiusPx)
  context.closePath()
}

/** Screen bounds of flat points. */
export const boxOfPoints = (points: readonly number[], m: Matrix): BoxPx => {
  const box = { x0: Infinity, y0: Infinity, x1: -Infinity, y1: -Infinity }
  for (let i = 0; i + 1 < points.length; i += 2) {
    const [x, y] = [points[i] as number, points[i + 1] as number]
    const [xPx, yPx] = [m.a * x + m.c * y + m.e, m.b * x + m.d * y + m.f]
    box.x0 = Math.min(box.x0, xPx)
    box.x1 = Math.max(box.x1, xPx)
    box.y0 = Math.min(box.y0, yPx)
    box.y1 = Math.max(box.y1, yPx)
  }
  return box
}

/** Screen bounds of a shape, for hatching. */
const boundsPx = (shape: Shape, m: Matrix): BoxPx => {
  const points =
    shape.t === 'path' ? shape.points
      : shape.t === 'rect' ? [shape.xM, shape.yM, shape.xM + shape.widthM, shape.yM, shape.xM + shape.widthM, shape.yM + shape.heightM, shape.xM, shape.yM + shape.heightM]
        : [[-1, -1], [1, -1], [1, 1], [-1, 1]].flatMap(([x, y]) => [shape.xM + (x as number) * shape.radiusM, shape.yM + (y as number) * shape.radiusM])
  return boxOfPoints(points, m)
}

const paintPen = (context: Paint2D, shape: Shape & Pen, options: PaintOptions): void => {
  const { inks } = options.theme
  const ghost = ghostPens[options.manner ?? 'drawn']
  if (ghost === undefined && shape.fill !== undefined && shape.fill !== 'none') {
    const alpha = context.globalAlpha
    if (shape.fillOpacity !== undefined) context.globalAlpha = alpha * shape.fillOpacity
    context.fillStyle = inks[shape.fill]
    context.fill()
    context.globalAlpha = alpha
  }
  if (ghost === undefined && shape.hatch !== undefined) {
    context.save()
    context.clip()
    paintHatch(context, shape.hatch, boundsPx(shape, options.matrix), options)
    context.restore()
    // The clip has used up the path.
    context.beginPath()
    trace(context, shape, options.matrix)
  }
  const stroke: InkName | undefined = ghost?.ink ?? shape.stroke
  if (stroke === undefined || stroke === 'none') return
  const dash: DashName = ghost?.dash ?? shape.dash ?? 'solid'
  context.strokeStyle = inks[stroke]
  context.lineWidth = ghost?.widthPx ?? weightsPx[shape.weight ?? 'context']
  context.setLineDash([...dashesPx[dash]])
  context.stroke()
  if (dash !== 'solid') context.setLineDash([])
}

const paintHatch = (context: Paint2D, name: HatchName, shapeBox: BoxPx, { matrix, theme, visiblePx }: PaintOptions): void => {
  const tile = hatchTiles[name]
  const box = visiblePx === undefined ? shapeBox : { x0: Math.max(shapeBox.x0, visiblePx.x0), y0: Math.max(shapeBox.y0, visiblePx.y0), x1: Math.min(shapeBox.x1, visiblePx.x1), y1: Math.min(shapeBox.y1, visiblePx.y1) }
  if (box.x1 <= box.x0 || box.y1 <= box.y0) return
  // Tiles are counted from the origin of the shape's frame, so the hatch moves with the sheet.
  const startX = matrix.e + Math.floor((box.x0 - matrix.e) / tile.widthPx - 1) * tile.widthPx
  const startY = matrix.f + Math.floor((box.y0 - matrix.f) / tile.heightPx - 1) * tile.heightPx
  const ink = theme.inks[tile.ink]
  context.globalAlpha *= tile.opacityRatio
  context.beginPath()
  for (let y = startY; y < box.y1 + tile.heightPx; y += tile.heightPx) {
    for (let x = startX; x < box.x1 + tile.widthPx; x += tile.widthPx) {
      for (const line of tile.lines) {
        for (let i = 0; i + 1 < line.length; i += 2) {
          if (i === 0) context.moveTo(x + (line[0] as number), y + (line[1] as number))
          else context.lineTo(x + (line[i] as number), y + (line[i + 1] as number))
        }
      }
      for (const [dx, dy, radiusPx] of tile.dots) {
        context.moveTo(x + dx + radiusPx, y + dy)
        context.ellipse(x + dx, y + dy, radiusPx, radiusPx, 0, 0, 2 * Math.PI)
      }
    }
  }
  if (tile.dots.length > 0) {
    context.fillStyle = ink
    context.fill()
    return
  }
  context.strokeStyle = ink
  context.lineWidth = tile.lineWidthPx
  context.lineCap = 'butt'
  context.stroke()
}

const paintPipe = (context: Paint2D, pipe: Extract<Primitive, { t: 'pipe' }>, options: PaintOptions): void => {
  const { inks } = options.theme
  const widthPx = Math.max(pipe.leastPx ?? PIPE_LEAST_PX, pipe.outerDiameterM * scaleOf(options.matrix).xPx)
  const stroke = (ink: InkName, lineWidth: number): void => {
    context.strokeStyle = inks[ink]
    context.lineWidth = lineWidth
    context.stroke()
  }
  context.save()
  context.lineCap = 'butt'
  context.beginPath()
  tracePoints(context, pipe.points, options.matrix, false)
  const ghost = ghostPens[options.manner ?? 'drawn']
  if (ghost !== undefined) {
    context.setLineDash([...dashesPx[ghost.dash]])
    stroke(ghost.ink, Math.min(widthPx, ghost.pipePx))
  } else {
    stroke('pipeEdge', widthPx)
    if (inks.pipe !== inks.pipeEdge && widthPx > 2.4) stroke('pipe', widthPx - 1.6)
    stroke('stripe', Math.max(Math.min(0.8, widthPx / 3), widthPx * STRIPE_RATIO))
  }
  context.restore()
}

const paintText = (context: Paint2D, text: Extract<Primitive, { t: 'text' }>, options: PaintOptions): void => {
  const { matrix: m, theme, touch } = options
  const sizePx = touch === true ? touchSizePx(text.sizePx) : text.sizePx
  const x = m.a * text.xM + m.c * text.yM + m.e + (text.dxPx ?? 0)
  const y = m.b * text.xM + m.d * text.yM + m.f - (text.dyPx ?? 0)
  const runs = textRuns(text.text)
  const weight = text.bold === true ? 600 : 400
  const font = `${weight} ${sizePx}px ${fontStack}`
  const smallFont = `${weight === 600 ? 600 : 500} ${sizePx * FRACTION_SIZE_RATIO}px ${fontStack}`
  context.textBaseline = 'alphabetic'
  context.font = font
  const ink = theme.inks[ghostPens[options.manner ?? 'drawn']?.ink ?? text.ink ?? 'ink']
  const edge = text.lotEdge === true ? theme.inks.lot : null
  const draw = (piece: string, px: number, py: number): void => {
    if (edge !== null) {
      context.strokeStyle = edge
      context.lineWidth = 3.5
      context.strokeText(piece, px, py)
    }
    context.fillStyle = ink
    context.fillText(piece, px, py)
  }
  const [only] = runs
  if (runs.length === 1 && only?.as === 'plain') {
    context.textAlign = text.align ?? 'left'
    draw(only.text, x, y)
    return
  }
  context.textAlign = 'left'
  const measured = (run: string, runFont: string): number => {
    context.font = runFont
    return context.measureText(run).width
  }
  const widths = runs.map((run) => (run.as === 'plain' ? measured(run.text, font) : measured(run.above, smallFont) + measured(FRACTION_SLASH, font) + measured(run.below, smallFont)))
  const totalPx = widths.reduce((sum, width) => sum + width, 0)
  let px = x - (text.align === 'center' ? totalPx / 2 : text.align === 'right' ? totalPx : 0)
  runs.forEach((run, i) => {
    if (run.as === 'plain') {
      context.font = font
      draw(run.text, px, y)
    } else {
      const abovePx = measured(run.above, smallFont)
      draw(run.above, px, y - FRACTION_RISE_RATIO * sizePx)
      const slashPx = measured(FRACTION_SLASH, font)
      draw(FRACTION_SLASH, px + abovePx, y)
      context.font = smallFont
      draw(run.below, px + abovePx + slashPx, y)
    }
    px += widths[i] as number
  })
}
