import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { flat, type DrawnFigure } from './basic.ts'
import type { DrawnLine } from './fence.ts'
import { besideLine, middleOfLongest, placesAlong } from './lines.ts'
import { words } from './words.ts'

export interface DrawnEmergencyLane extends DrawnLine {
  figures: { widthM: DrawnFigure }
}

const cross: Primitive[] = [{ t: 'rect', xM: -2, yM: -6, widthM: 4, heightM: 12, fill: 'safe' }, { t: 'rect', xM: -6, yM: -2, widthM: 12, heightM: 4, fill: 'safe' }]

/** Two dashed edges and a green cross every 90 px (safety colour of ISO 3864). */
export const emergencyLanePlan = (r: DrawnEmergencyLane, context: SymbolContext): Primitive[] => {
  const half = (r.figures.widthM.value ?? 6.096) / 2
  const middle = middleOfLongest(r.points)
  const edge = (leftM: number): Primitive => ({ t: 'path', points: flat(besideLine(r.points, leftM)), stroke: 'safe', weight: 'gear', dash: 'lane' })
  const text = r.name === '' ? { en: 'emergency lane: keep clear', es: 'carril de emergencia: libre' }[context.reader?.language ?? 'en'] : r.name
  return [
    edge(half), edge(-half),
    ...placesAlong(r.points, 90 / context.pxPerM).map(({ xM, yM }): Primitive => ({ t: 'mark', xM, yM, parts: cross })),
    ...(middle === null ? [] : words(text, middle.xM, middle.yM, context, { dyPx: 9 })),
  ]
}
