import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import type { DrawnFigure } from './basic.ts'
import { flat, outline } from './basic.ts'
import type { DrawnLine } from './fence.ts'
import { across, bandPoints, besideLine, middleOfLongest, placesAlong } from './lines.ts'
import { words } from './words.ts'

export interface DrawnWalkway extends DrawnLine {
  access: 'open' | 'closed' | 'diverted' | null
  figures: { widthM: DrawnFigure }
}

const states = { open: { en: '', es: '' }, closed: { en: 'closed', es: 'cerrado' }, diverted: { en: 'diverted', es: 'desviado' }, unknown: { en: 'public?', es: '¿público?' } } as const

/** A person walking, seen from the side, px. */
const walker: Primitive[] = [
  { t: 'circle', xM: 1, yM: 9, radiusM: 2.3, fill: 'ink' },
  { t: 'path', points: [0.5, 5.5, -0.5, -1.5, -4, -8], stroke: 'ink', weight: 'rope' },
  { t: 'path', points: [-0.5, -1.5, 3, -4, 4, -8], stroke: 'ink', weight: 'rope' },
  { t: 'path', points: [-4, 1, -2, 4, 0.8, 5, 3, 2, 5.5, 1.5], stroke: 'ink', weight: 'gear' },
]

/** A paved way with its slab joints, and a walking person where it is widest in view. */
export const walkwayPlan = (r: DrawnWalkway, context: SymbolContext): Primitive[] => {
  const half = (r.figures.widthM.value ?? 1.5) / 2
  const middle = middleOfLongest(r.points)
  const text = [r.name, states[r.access ?? 'unknown'][context.reader?.language ?? 'en']].filter((piece) => piece !== '').join(' · ')
  return [
    outline(bandPoints(r.points, half * 2), { fill: 'way' }),
    ...placesAlong(r.points, Math.max(0.9, 12 / context.pxPerM)).map((place): Primitive => ({ t: 'path', points: across(place, half, half), stroke: 'hair', weight: 'hair' })),
    { t: 'path', points: flat(besideLine(r.points, half)), stroke: 'ink2', weight: 'context' },
    { t: 'path', points: flat(besideLine(r.points, -half)), stroke: 'ink2', weight: 'context' },
    ...(middle === null ? [] : [{ t: 'mark', xM: middle.xM, yM: middle.yM, parts: [{ t: 'circle', xM: 0, yM: 0.5, radiusM: 12, fill: 'way' }, ...walker] } as const]),
    ...(middle === null ? [] : words(text, middle.xM, middle.yM, context, { align: 'left', dxPx: 16, dyPx: -4, ink: 'ink2' })),
  ]
}
