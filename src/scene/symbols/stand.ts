import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { atLeastSixPx, body, centredBox, detailLine, detailOf, gearLine, outline, solid } from './basic.ts'
import type { DrawnFigure } from './basic.ts'

export interface DrawnStand {
  roller: 'flat' | 'V' | 'cradle'
  figures: { baseLengthM: DrawnFigure; baseWidthM: DrawnFigure; lowestSaddleM: DrawnFigure; rollerRadiusM: DrawnFigure }
}

const sizeOf = (r: DrawnStand): { l: number; w: number } => ({ l: r.figures.baseLengthM.value ?? 0.6, w: r.figures.baseWidthM.value ?? 0.9 })

export const standFootprint = (r: DrawnStand): number[] => centredBox(sizeOf(r).l, sizeOf(r).w)

/** From above: the base across the line with its roller: a bar (flat), a waisted roller (V) or two jaws (cradle). From afar a tick. */
export const standPlan = (r: DrawnStand, context: SymbolContext): Primitive[] => {
  const detail = detailOf(context)
  const size = sizeOf(r)
  if (detail === 'far') {
    const half = Math.max(size.w / 2, 3 / context.pxPerM)
    return [{ t: 'path', points: [0, -half, 0, half], stroke: 'ink', weight: 'rope' }]
  }
  const k = atLeastSixPx(Math.min(size.l, size.w), context.pxPerM)
  const [l, w] = [size.l * k, size.w * k]
  const base: Primitive = { t: 'rect', xM: -l / 2, yM: -w / 2, widthM: l, heightM: w, radiusM: 0.08 * l, ...body }
  const feet: Primitive[] = [-1, 1].map((sign) => ({ t: 'path', points: [-l / 2, sign * w * 0.42, l / 2, sign * w * 0.42], ...detailLine }))
  return [base, ...(detail === 'mid' ? [] : feet), ...rollerFromAbove(r.roller, l, w)]
}

const rollerFromAbove = (roller: DrawnStand['roller'], l: number, w: number): Primitive[] => {
  switch (roller) {
    case 'flat':
      return [
        { t: 'path', points: [0, -w * 0.46, 0, w * 0.46], ...gearLine },
        { t: 'rect', xM: -l * 0.17, yM: -w * 0.37, widthM: l * 0.34, heightM: w * 0.74, radiusM: l * 0.05, ...solid },
      ]
    case 'V':
      return [
        { t: 'path', points: [-l / 2, 0, -l * 0.16, 0], ...detailLine },
        { t: 'path', points: [l / 2, 0, l * 0.16, 0], ...detailLine },
        outline([-l * 0.2, w * 0.4, l * 0.2, w * 0.4, l * 0.07, 0, l * 0.2, -w * 0.4, -l * 0.2, -w * 0.4, -l * 0.07, 0], solid),
      ]
    case 'cradle':
      return [1, -1].map((sign) => ({ t: 'path', points: bow(l, w, sign), ...gearLine }))
  }
}

/** One jaw of a cradle: an arc bowed towards the line. */
const bow = (l: number, w: number, sign: number): number[] =>
  Array.from({ length: 13 }, (_, i) => {
    const t = i / 6 - 1
    return [(t * l) / 2, sign * w * (0.1 + 0.17 * t * t)]
  }).flat()

/**
 * Side view: base on the ground, two posts, a fork, and the roller touching the pipe from below. V and cradle are drawn as seen
 * from the end, as crews draw them. Base and fork are not stretched with the heights.
 */
export const standSection = (r: DrawnStand, context: SymbolContext & { saddleM: number | null }): Primitive[] => {
  const stretch = (context.pxPerLevelM ?? context.pxPerM) / context.pxPerM
  const top = context.saddleM ?? r.figures.lowestSaddleM.value ?? 0.5
  const { l } = sizeOf(r)
  if (detailOf(context) === 'far') return [{ t: 'path', points: [0, 0, 0, top], ...gearLine }, { t: 'mark', xM: 0, yM: top, parts: [{ t: 'circle', xM: 0, yM: -2, radiusM: 2, ...solid }] }]
  const pxPerLevelM = context.pxPerLevelM ?? context.pxPerM
  const baseTop = Math.min(top * 0.3, Math.max(0.13 / stretch, 5 / pxPerLevelM))
  const radiusPx = Math.max(2.6, (r.figures.rollerRadiusM.value ?? 0.05) * context.pxPerM)
  const headBase = top - (radiusPx * 2 + 2) / pxPerLevelM
  const postTop = Math.max(baseTop, headBase)
  const postHalf = Math.max(l * 0.09, 1.6 / context.pxPerM)
  return [
    ...(postTop > baseTop ? [outline([-postHalf, baseTop, postHalf, baseTop, postHalf, postTop, -postHalf, postTop], { stroke: 'ink', weight: 'context', fill: 'sheet' })] : []),
    outline([-l * 0.55, 0, l * 0.55, 0, l * 0.2, baseTop, -l * 0.2, baseTop], body),
    { t: 'mark', xM: 0, yM: top, parts: head(r.roller, radiusPx) },
  ]
}

/** Head of a stand, px, its top at the pipe. */
const head = (roller: DrawnStand['roller'], r: number): Primitive[] => {
  const bar: Primitive = { t: 'path', points: [-r * 2, -r * 2 - 1.5, r * 2, -r * 2 - 1.5], ...gearLine }
  switch (roller) {
    case 'flat':
      return [bar, { t: 'path', points: [-r * 2, -r * 2 - 1.5, -r * 2, -r], ...gearLine }, { t: 'path', points: [r * 2, -r * 2 - 1.5, r * 2, -r], ...gearLine }, { t: 'circle', xM: 0, yM: -r, radiusM: r, ...solid }]
    case 'V':
      return [bar, { t: 'path', points: [-r * 2.2, 0, 0, -r * 1.9, r * 2.2, 0], stroke: 'ink', weight: 'building' }]
    case 'cradle':
      return [bar, { t: 'path', points: Array.from({ length: 9 }, (_, i) => [r * 2.2 * (i / 4 - 1), -r * 1.8 * (1 - (i / 4 - 1) ** 2)]).flat(), stroke: 'ink', weight: 'building' }]
  }
}
