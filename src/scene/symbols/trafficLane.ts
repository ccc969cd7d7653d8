import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { flat, outline, type DrawnFigure } from './basic.ts'
import type { DrawnLine } from './fence.ts'
import { besideLine, middleOfLongest, placesAlong } from './lines.ts'
import { words } from './words.ts'

export interface DrawnTrafficLane extends DrawnLine {
  figures: { widthM: DrawnFigure }
}

const wedge: Primitive[] = [outline([7, 0, -4, 4, -1, 0, -4, -4], { fill: 'ink2' })]

/** Two whole edges and a wedge every 60 px in the direction of the traffic. */
export const trafficLanePlan = (r: DrawnTrafficLane, context: SymbolContext): Primitive[] => {
  const half = (r.figures.widthM.value ?? 3.66) / 2
  const middle = middleOfLongest(r.points)
  const edge = (leftM: number): Primitive => ({ t: 'path', points: flat(besideLine(r.points, leftM)), stroke: 'ink2', weight: 'gear' })
  return [
    edge(half), edge(-half),
    ...placesAlong(r.points, 60 / context.pxPerM).map(({ xM, yM, headingRad }): Primitive => ({ t: 'mark', xM, yM, parts: wedge.map((part) => turned(part, headingRad)) })),
    ...(middle === null ? [] : words(r.name, middle.xM, middle.yM, context, { dyPx: 9 })),
  ]
}

const turned = (primitive: Primitive, byRad: number): Primitive => {
  if (primitive.t !== 'path') return primitive
  const [cos, sin] = [Math.cos(byRad), Math.sin(byRad)]
  return { ...primitive, points: primitive.points.flatMap((value, i) => (i % 2 === 0 ? [value * cos - (primitive.points[i + 1] ?? 0) * sin, value * sin + (primitive.points[i + 1] ?? 0) * cos] : [])) }
}
