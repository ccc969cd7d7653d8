import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { formatQuantity } from '../../units/format.ts'
import type { DrawnFigure } from './basic.ts'
import { flat, outline, readerOf } from './basic.ts'
import type { DrawnLine } from './fence.ts'
import { across, bandPoints, besideLine, middleOfLongest, placesAlong } from './lines.ts'
import { words } from './words.ts'

export interface DrawnTrench extends DrawnLine {
  figures: { widthM: DrawnFigure; depthM: DrawnFigure }
}

/** Spoil and equipment stay 2 ft from the edge (29 CFR 1926.651(j)(2)); drawn as a broken red line. */
export const TRENCH_LEGAL_M = 0.6096

const deep = { en: (text: string) => `${text} deep`, es: (text: string) => `${text} de hondo` } as const

/** Two edges with teeth falling inwards, long and short in turn, the legal line beside each, and the depth. */
export const trenchPlan = (r: DrawnTrench, context: SymbolContext): Primitive[] => {
  const half = (r.figures.widthM.value ?? 1.2) / 2
  const middle = middleOfLongest(r.points)
  const tooth = Math.min(half * 0.8, 9 / context.pxPerM)
  const teeth = placesAlong(r.points, Math.max(10 / context.pxPerM, 0.2)).flatMap((place, i): Primitive[] => {
    const length = i % 2 === 0 ? tooth * 0.55 : tooth
    return [
      { t: 'path', points: across(place, half, -(half - length)), stroke: 'ink', weight: 'context' },
      { t: 'path', points: across(place, -(half - length), half), stroke: 'ink', weight: 'context' },
    ]
  })
  const isUnknown = r.figures.depthM.value === null
  const text = deep[context.reader?.language ?? 'en'](formatQuantity({ kind: 'length', value: r.figures.depthM.value }, readerOf(context)))
  return [
    outline(bandPoints(r.points, half * 2), { fill: 'way' }),
    ...teeth,
    ...[half, -half].map((leftM): Primitive => ({ t: 'path', points: flat(besideLine(r.points, leftM)), stroke: 'ink', weight: 'rope' })),
    ...[half + TRENCH_LEGAL_M, -half - TRENCH_LEGAL_M].map((leftM): Primitive => ({ t: 'path', points: flat(besideLine(r.points, leftM)), stroke: 'red', weight: 'boundary', dash: 'lane' })),
    ...(middle === null ? [] : words([r.name, text].filter((piece) => piece !== '').join(', '), middle.xM, middle.yM, context, isUnknown ? { ink: 'amber', bold: true } : {})),
  ]
}
