import { FRACTION_RISE_RATIO, FRACTION_SIZE_RATIO, FRACTION_SLASH, textRuns } from './fractionText.ts'
import { hatchTiles } from './hatch.ts'
import { markMatrix, scaleOf } from './matrix.ts'
import type { Matrix } from './matrix.ts'
import type { HatchName, Pen, Primitive } from './primitives.ts'
import { touchSizePx, USED_UP_OPACITY } from './paint.ts'
import { dashesPx, fontStack, PIPE_LEAST_PX, STRIPE_RATIO, weightsPx } from './theme.ts'
import type { Theme } from './theme.ts'

export interface SvgOptions {
  matrix: Matrix
  theme: Theme
  widthPx: number
  heightPx: number
  /** Keeps ids of hatches apart when several pictures stand on one page. */
  idPrefix?: string
  manner?: 'drawn' | 'proposal' | 'usedUp'
  touch?: boolean
  background?: keyof Theme['inks']
  /** What the picture shows, for a reader who does not see it; without it the picture is hidden from them. */
  title?: string
}

const n = (value: number): string => String(Math.round(value * 100) / 100)
const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;')

/** The same drawing list as `paint`, as a whole SVG picture. Only attributes, no styles: a strict content policy passes it. */
export const toSvg = (list: readonly Primitive[], options: SvgOptions): string => {
  const { widthPx, heightPx, theme, title, background } = options
  const { defs, body } = svgParts(list, options)
  const role = title === undefined ? 'aria-hidden="true"' : 'role="img"'
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${n(widthPx)} ${n(heightPx)}" width="${n(widthPx)}" height="${n(heightPx)}" ${role}>`,
    title === undefined ? '' : `<title>${escaped(title)}</title>`,
    defs === '' ? '' : `<defs>${defs}</defs>`,
    background === undefined ? '' : `<rect width="${n(widthPx)}" height="${n(heightPx)}" fill="${theme.inks[background]}"/>`,
    body,
    '</svg>',
  ].join('')
}

/** Body and hatch definitions apart, for a page that joins several lists in one picture. */
export const svgParts = (list: readonly Primitive[], options: Omit<SvgOptions, 'widthPx' | 'heightPx'>): { defs: string; body: string } => {
  const hatches = new Set<HatchName>()
  const parts = list.map((primitive) => one(primitive, options, hatches)).join('')
  const group = `<g stroke-linejoin="round" stroke-linecap="round"${options.manner === 'usedUp' ? ` opacity="${USED_UP_OPACITY}"` : ''}>${parts}</g>`
  return { defs: [...hatches].map((name) => pattern(name, options)).join(''), body: group }
}

const hatchId = (name: HatchName, { idPrefix = 'yard', matrix, theme }: Pick<SvgOptions, 'idPrefix' | 'matrix' | 'theme'>): string => `${idPrefix}-${theme.name}-${name}-${Math.round(matrix.e)}-${Math.round(matrix.f)}`

const pattern = (name: HatchName, options: Omit<SvgOptions, 'widthPx' | 'heightPx'>): string => {
  const tile = hatchTiles[name]
  const ink = options.theme.inks[tile.ink]
  const { e, f } = options.matrix
  // A line that leaves its tile is cut by the pattern: it is drawn in the neighbours' places too.
  const shifts = [-1, 0, 1].flatMap((i) => [-1, 0, 1].map((j) => [i * tile.widthPx, j * tile.heightPx] as const))
  const lines = tile.lines.flatMap((line) => shifts.map(([dx, dy]) => `M${line.map((value, i) => n(value + (i % 2 === 0 ? dx : dy))).join(' ')}`)).join('')
  const dots = tile.dots.map(([x, y, r]) => `<circle cx="${n(x)}" cy="${n(y)}" r="${n(r)}" fill="${ink}"/>`).join('')
  const stroke = lines === '' ? '' : `<path d="${lines}" fill="none" stroke="${ink}" stroke-width="${tile.lineWidthPx}"/>`
  return `<pattern id="${hatchId(name, options)}" width="${tile.widthPx}" height="${tile.heightPx}" patternUnits="userSpaceOnUse" patternTransform="translate(${n(e)} ${n(f)})">${stroke}${dots}</pattern>`
}

const penAttributes = (pen: Pen, { theme, manner }: Pick<SvgOptions, 'theme' | 'manner'>): string => {
  const isProposal = manner === 'proposal'
  const fill = isProposal || pen.fill === undefined ? 'none' : theme.inks[pen.fill]
  const stroke = isProposal ? theme.inks.chosen : pen.stroke === undefined ? 'none' : theme.inks[pen.stroke]
  const dash = dashesPx[isProposal ? 'proposal' : (pen.dash ?? 'solid')]
  const width = isProposal ? weightsPx.boundary : weightsPx[pen.weight ?? 'context']
  return [
    `fill="${fill}"`,
    pen.fillOpacity === undefined ? '' : ` fill-opacity="${pen.fillOpacity}"`,
    stroke === 'none' ? '' : ` stroke="${stroke}" stroke-width="${width}"${dash.length > 0 ? ` stroke-dasharray="${dash.join(' ')}"` : ''}`,
  ].join('')
}

const pathData = (points: readonly number[], m: Matrix, closed: boolean): string => {
  const parts: string[] = []
  for (let i = 0; i + 1 < points.length; i += 2) {
    const [x, y] = [points[i] as number, points[i + 1] as number]
    parts.push(`${i === 0 ? 'M' : 'L'}${n(m.a * x + m.c * y + m.e)} ${n(m.b * x + m.d * y + m.f)}`)
  }
  return parts.join('') + (closed ? 'Z' : '')
}

/** Corners of a rounded rectangle as short chords: right under any turn of the sheet. */
const rectPoints = ({ xM, yM, widthM, heightM, radiusM = 0 }: Extract<Primitive, { t: 'rect' }>): number[] => {
  const r = Math.min(radiusM, widthM / 2, heightM / 2)
  if (r <= 0) return [xM, yM, xM + widthM, yM, xM + widthM, yM + heightM, xM, yM + heightM]
  const centres = [[xM + widthM - r, yM + r, -Math.PI / 2], [xM + widthM - r, yM + heightM - r, 0], [xM + r, yM + heightM - r, Math.PI / 2], [xM + r, yM + r, Math.PI]] as const
  return centres.flatMap(([cx, cy, fromRad]) => [0, 1, 2, 3, 4].flatMap((i) => [cx + r * Math.cos(fromRad + (i * Math.PI) / 8), cy + r * Math.sin(fromRad + (i * Math.PI) / 8)]))
}

const arcPoints = ({ xM, yM, radiusM, fromRad, toRad }: Extract<Primitive, { t: 'arc' }>): number[] =>
  Array.from({ length: 25 }, (_, i) => fromRad + ((toRad - fromRad) * i) / 24).flatMap((angleRad) => [xM + radiusM * Math.cos(angleRad), yM + radiusM * Math.sin(angleRad)])

const shaped = (element: (attributes: string) => string, pen: Pen, options: Omit<SvgOptions, 'widthPx' | 'heightPx'>, hatches: Set<HatchName>): string => {
  if (pen.hatch === undefined || options.manner === 'proposal') return element(penAttributes(pen, options))
  hatches.add(pen.hatch)
  const { stroke: _stroke, ...fillOnly } = pen
  const { fill: _fill, ...strokeOnly } = pen
  const hatched = element(`fill="url(#${hatchId(pen.hatch, options)})" opacity="${hatchTiles[pen.hatch].opacityRatio}"`)
  return (pen.fill === undefined ? '' : element(penAttributes(fillOnly, options))) + hatched + (pen.stroke === undefined ? '' : element(penAttributes(strokeOnly, options)))
}

const one = (primitive: Primitive, options: Omit<SvgOptions, 'widthPx' | 'heightPx'>, hatches: Set<HatchName>): string => {
  const { matrix: m, theme } = options
  switch (primitive.t) {
    case 'path':
      return shaped((attributes) => `<path d="${pathData(primitive.points, m, primitive.closed === true)}" ${attributes}/>`, primitive, options, hatches)
    case 'rect':
      return shaped((attributes) => `<path d="${pathData(rectPoints(primitive), m, true)}" ${attributes}/>`, primitive, options, hatches)
    case 'arc':
      return shaped((attributes) => `<path d="${pathData(arcPoints(primitive), m, false)}" ${attributes}/>`, primitive, options, hatches)
    case 'circle': {
      const scale = scaleOf(m)
      const [cx, cy] = [m.a * primitive.xM + m.c * primitive.yM + m.e, m.b * primitive.xM + m.d * primitive.yM + m.f]
      const turn = Math.abs(scale.xPx - scale.yPx) < 1e-9 ? '' : ` transform="rotate(${n((Math.atan2(m.b, m.a) * 180) / Math.PI)} ${n(cx)} ${n(cy)})"`
      return shaped((attributes) => `<ellipse cx="${n(cx)}" cy="${n(cy)}" rx="${n(primitive.radiusM * scale.xPx)}" ry="${n(primitive.radiusM * scale.yPx)}"${turn} ${attributes}/>`, primitive, options, hatches)
    }
    case 'pipe': {
      const widthPx = Math.max(primitive.leastPx ?? PIPE_LEAST_PX, primitive.outerDiameterM * scaleOf(m).xPx)
      const d = pathData(primitive.points, m, false)
      const line = (ink: string, width: number): string => `<path d="${d}" fill="none" stroke-linecap="butt" stroke="${ink}" stroke-width="${n(width)}"/>`
      if (options.manner === 'proposal') return line(theme.inks.chosen, Math.min(widthPx, weightsPx.rope))
      const body = theme.inks.pipe !== theme.inks.pipeEdge && widthPx > 2.4 ? line(theme.inks.pipe, widthPx - 1.6) : ''
      return line(theme.inks.pipeEdge, widthPx) + body + line(theme.inks.stripe, Math.max(Math.min(0.8, widthPx / 3), widthPx * STRIPE_RATIO))
    }
    case 'mark': {
      const [xPx, yPx] = [m.a * primitive.xM + m.c * primitive.yM + m.e, m.b * primitive.xM + m.d * primitive.yM + m.f]
      const inside = { ...options, matrix: markMatrix(xPx, yPx), touch: false }
      // Hatches inside a mark would need definitions of their own; none is used there.
      return primitive.parts.map((part) => one(part, inside, hatches)).join('')
    }
    case 'text': {
      const sizePx = options.touch === true ? touchSizePx(primitive.sizePx) : primitive.sizePx
      const x = m.a * primitive.xM + m.c * primitive.yM + m.e + (primitive.dxPx ?? 0)
      const y = m.b * primitive.xM + m.d * primitive.yM + m.f - (primitive.dyPx ?? 0)
      const ink = theme.inks[options.manner === 'proposal' ? 'chosen' : (primitive.ink ?? 'ink')]
      const anchor = { left: 'start', center: 'middle', right: 'end' }[primitive.align ?? 'left']
      const edge = primitive.lotEdge === true ? ` paint-order="stroke" stroke="${theme.inks.lot}" stroke-width="3.5"` : ''
      return `<text x="${n(x)}" y="${n(y)}" font-family="${fontStack}" font-size="${n(sizePx)}" font-weight="${primitive.bold === true ? 600 : 400}" text-anchor="${anchor}" fill="${ink}"${edge}>${spans(primitive.text, sizePx)}</text>`
    }
  }
}

const spans = (text: string, sizePx: number): string => {
  let risePx = 0
  const shift = (toPx: number): string => {
    const dy = risePx - toPx
    risePx = toPx
    return dy === 0 ? '' : ` dy="${n(dy)}"`
  }
  return textRuns(text)
    .map((run) => {
      if (run.as === 'plain') return risePx === 0 ? escaped(run.text) : `<tspan${shift(0)}>${escaped(run.text)}</tspan>`
      const small = ` font-size="${n(sizePx * FRACTION_SIZE_RATIO)}"`
      return `<tspan${small}${shift(FRACTION_RISE_RATIO * sizePx)}>${run.above}</tspan><tspan${shift(0)}>${FRACTION_SLASH}</tspan><tspan${small}>${run.below}</tspan>`
    })
    .join('')
}
