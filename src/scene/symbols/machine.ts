import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { body, centredBox, detailLine, detailOf, gearLine, odOf, outline, part, solid } from './basic.ts'
import type { DrawnFigure } from './basic.ts'
import { track } from './tracks.ts'

export interface DrawnMachine {
  carriageSide: 'infeed' | 'exit'
  figures: { lengthM: DrawnFigure; widthM: DrawnFigure; innerClampM: DrawnFigure; outerClampM: DrawnFigure }
}

const sizeOf = (r: DrawnMachine): { lengthM: number; widthM: number; innerM: number; outerM: number } => ({
  lengthM: r.figures.lengthM.value ?? 3.35,
  widthM: r.figures.widthM.value ?? 1.9,
  innerM: r.figures.innerClampM.value ?? 0.1016,
  outerM: r.figures.outerClampM.value ?? 0.7112,
})

/** Tracks and body. Facer and plate holder swing out beyond it at the left and are not in the outline: they fold in. */
export const machineFootprint = (r: DrawnMachine): number[] => centredBox(sizeOf(r).lengthM, sizeOf(r).widthM)

/** Places of the four clamps along the line, infeed to exit. */
const clampPlaces = (r: DrawnMachine): number[] => {
  const { innerM, outerM } = sizeOf(r)
  return [-outerM, -innerM, innerM, outerM]
}

/** From above: two tracks, body with power pack at the exit end, bed rails, four clamps; facer and plate holder at the left, controls at the right. */
export const machinePlan = (r: DrawnMachine, context: SymbolContext): Primitive[] => {
  const { lengthM: l, widthM: w, innerM } = sizeOf(r)
  const detail = detailOf(context)
  const [half, side] = [l / 2, w / 2]
  const inner = side * 0.61
  const list: Primitive[] = [
    ...track(-half, half, side, inner, l / 13, w * 0.09, detail !== 'far'),
    ...track(-half, half, -side, -inner, l / 13, w * 0.09, detail !== 'far'),
    { t: 'rect', xM: -half * 0.815, yM: -inner, widthM: l * 0.815, heightM: inner * 2, radiusM: 0.05, ...body },
  ]
  const clampHalf = Math.min(inner * 0.78, Math.max(side * 0.44, odOf(context) * 0.9))
  const clampThick = Math.min(0.128, innerM * 1.2)
  const clamps = clampPlaces(r).map((x): Primitive => ({ t: 'rect', xM: x - clampThick / 2, yM: -clampHalf, widthM: clampThick, heightM: clampHalf * 2, radiusM: 0.02, ...solid }))
  if (detail === 'far') return list
  if (detail === 'mid') return [...list, ...clamps]
  const rail = inner * 0.62
  list.push(
    { t: 'path', points: [-half * 0.58, rail, half * 0.56, rail], ...detailLine },
    { t: 'path', points: [-half * 0.58, -rail, half * 0.56, -rail], ...detailLine },
    // Power pack.
    { t: 'rect', xM: half * 0.575, yM: inner * 0.35, widthM: half * 0.205, heightM: inner * 0.55, ...part },
    { t: 'rect', xM: half * 0.575, yM: -inner * 0.9, widthM: half * 0.205, heightM: inner * 0.55, ...part },
    // Plate holder, a narrow box on its arm.
    { t: 'path', points: [-half * 0.855, side, -half * 0.855, side * 1.06], ...detailLine },
    { t: 'rect', xM: -half * 0.905, yM: side * 1.06, widthM: half * 0.1, heightM: side * 0.42, radiusM: 0.03, ...part },
    // Facer: a disc with its blades.
    ...facer(-half * 0.39, side * 1.26, side * 0.225),
    // Controls.
    { t: 'rect', xM: half * 0.075, yM: -side * 1.24, widthM: half * 0.315, heightM: side * 0.18, radiusM: 0.05, ...part },
  )
  list.push(...clamps)
  if (detail === 'close' && context.onShelf !== true) list.push(...carriageArrow(r, inner * 0.9))
  return list
}

const facer = (x: number, y: number, radiusM: number): Primitive[] => {
  const k = radiusM * 0.7
  return [
    { t: 'path', points: [x, y - radiusM, x, y - radiusM * 1.2], ...detailLine },
    { t: 'circle', xM: x, yM: y, radiusM, ...part },
    { t: 'path', points: [x - radiusM, y, x + radiusM, y], ...detailLine },
    { t: 'path', points: [x, y - radiusM, x, y + radiusM], ...detailLine },
    { t: 'path', points: [x - k, y - k, x + k, y + k], ...detailLine },
    { t: 'path', points: [x - k, y + k, x + k, y - k], ...detailLine },
  ]
}

/** Double arrow beside the jaws that move. */
const carriageArrow = (r: DrawnMachine, fromAxisM: number): Primitive[] => {
  const { innerM, outerM } = sizeOf(r)
  const sign = r.carriageSide === 'infeed' ? -1 : 1
  const [from, to] = [sign * innerM * 2, sign * outerM * 0.95]
  const [a, b] = [Math.min(from, to), Math.max(from, to)]
  const head = Math.min(0.09, (b - a) * 0.3)
  const y = -fromAxisM
  return [
    { t: 'path', points: [a, y, b, y], ...gearLine },
    { t: 'path', points: [a + head, y + head * 0.8, a, y, a + head, y - head * 0.8], ...gearLine },
    { t: 'path', points: [b - head, y + head * 0.8, b, y, b - head, y - head * 0.8], ...gearLine },
  ]
}

const stretchOf = ({ pxPerM, pxPerLevelM }: SymbolContext): number => (pxPerLevelM ?? pxPerM) / pxPerM

/**
 * Side view under the pipe: tracks with wheels, chassis, power pack at the exit end, and the bed on its posts up to the jaws.
 * Tracks and chassis are not stretched with the levels; the posts are.
 */
export const machineSection = (r: DrawnMachine, context: SymbolContext & { saddleM: number | null }): Primitive[] => {
  const { lengthM: l, outerM } = sizeOf(r)
  const stretch = stretchOf(context)
  const saddle = context.saddleM ?? 0.75
  const half = l / 2
  const trackTop = Math.min(saddle * 0.42, 0.46 / stretch)
  const radiusPx = (trackTop * (context.pxPerLevelM ?? context.pxPerM)) / 2
  const deck = Math.max(trackTop * 1.25, saddle - 0.14 / stretch - 0.03)
  const bed = deck - Math.min(0.09 / stretch, (deck - trackTop) * 0.3)
  const chassis = trackTop + (bed - trackTop) * 0.4
  const wheels = Array.from({ length: 4 }, (_, i) => -half * 0.72 + (half * 1.44 * i) / 3)
  const post = (x: number): Primitive[] => [-0.05, 0.05].map((dx) => ({ t: 'path', points: [x + dx, chassis, x + dx, bed], ...gearLine }))
  const box = (x0: number, x1: number, y0: number, y1: number): Primitive => outline([x0, y0, x1, y0, x1, y1, x0, y1], body)
  return [
    box(-half * 0.86, half * 0.86, trackTop * 0.9, chassis),
    box(half * 0.6, half * 0.84, chassis, Math.max(chassis, saddle * 0.98)),
    ...post(-outerM),
    ...post(outerM),
    box(-half * 0.6, half * 0.55, bed, deck),
    { t: 'mark', xM: 0, yM: 0, parts: [{ t: 'rect', xM: -half * context.pxPerM, yM: 0, widthM: l * context.pxPerM, heightM: radiusPx * 2, radiusM: radiusPx, ...body }] },
    ...wheels.map((x): Primitive => ({ t: 'mark', xM: x, yM: trackTop / 2, parts: [{ t: 'circle', xM: 0, yM: 0, radiusM: radiusPx * 0.72, fill: 'paper', stroke: 'ink', weight: 'context' }] })),
  ]
}

/** Side view over the pipe: the four clamps about it, apart where the jaws stand open. */
export const machineClamps = (r: DrawnMachine, context: SymbolContext & { saddleM: number | null; jawsOpen?: boolean }): Primitive[] => {
  const saddle = context.saddleM ?? 0.75
  const stretch = stretchOf(context)
  const od = odOf(context)
  const reach = 0.14 / stretch + 0.02
  const halfThick = Math.min(0.055, sizeOf(r).innerM * 0.5)
  return clampPlaces(r).flatMap((x): Primitive[] => {
    const bar = (from: number, to: number): Primitive => outline([x - halfThick, from, x + halfThick, from, x + halfThick, to, x - halfThick, to], solid)
    return context.jawsOpen === true ? [bar(saddle - reach * 1.6, saddle - 0.01), bar(saddle + od + reach * 1.4, saddle + od + reach * 2.4)] : [bar(saddle - reach * 1.6, saddle + od + reach * 1.6)]
  })
}
