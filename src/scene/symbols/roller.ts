import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { atLeastSixPx, body, centredBox, detailLine, detailOf, outline, part, solid } from './basic.ts'
import type { DrawnFigure } from './basic.ts'

export interface DrawnRoller {
  figures: { baseLengthM: DrawnFigure; baseWidthM: DrawnFigure; rollerRadiusM: DrawnFigure }
}

const sizeOf = (r: DrawnRoller): { l: number; w: number } => ({ l: r.figures.baseLengthM.value ?? 0.35, w: r.figures.baseWidthM.value ?? 0.55 })

export const rollerFootprint = (r: DrawnRoller): number[] => centredBox(sizeOf(r).l, sizeOf(r).w)

/** From above: a pair of rollers in a low frame, its corners the feet. From afar a tick. */
export const rollerPlan = (r: DrawnRoller, context: SymbolContext): Primitive[] => {
  const detail = detailOf(context)
  const size = sizeOf(r)
  if (detail === 'far') {
    const half = Math.max(size.w / 2, 2.5 / context.pxPerM)
    return [{ t: 'path', points: [0, -half, 0, half], stroke: 'ink', weight: 'gear' }]
  }
  const k = atLeastSixPx(Math.min(size.l, size.w), context.pxPerM)
  const [l, w] = [size.l * k, size.w * k]
  return [
    { t: 'rect', xM: -l / 2, yM: -w / 2, widthM: l, heightM: w, radiusM: l * 0.08, ...part },
    ...[-1, 1].map((sign): Primitive => ({ t: 'path', points: [-l / 2, sign * w * 0.44, l / 2, sign * w * 0.44], ...detailLine })),
    { t: 'rect', xM: -l * 0.38, yM: -w * 0.41, widthM: l * 0.29, heightM: w * 0.82, ...solid },
    { t: 'rect', xM: l * 0.09, yM: -w * 0.41, widthM: l * 0.29, heightM: w * 0.82, ...solid },
  ]
}

/** Side view: a low frame with the roller standing out of it. */
export const rollerSection = (r: DrawnRoller, context: SymbolContext & { saddleM: number | null }): Primitive[] => {
  const top = context.saddleM ?? 0.15
  const radiusPx = Math.max(2.6, (r.figures.rollerRadiusM.value ?? 0.05) * context.pxPerM)
  const axle = Math.max(0, top - radiusPx / (context.pxPerLevelM ?? context.pxPerM))
  const half = Math.max(sizeOf(r).l / 2, 4 / context.pxPerM)
  return [
    outline([-half, 0, half, 0, half * 0.55, axle, -half * 0.55, axle], body),
    { t: 'mark', xM: 0, yM: top, parts: [{ t: 'circle', xM: 0, yM: -radiusPx, radiusM: radiusPx, ...solid }] },
  ]
}
