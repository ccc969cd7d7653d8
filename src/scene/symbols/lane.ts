import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import type { DrawnFigure } from './basic.ts'
import { flat, outline } from './basic.ts'
import type { DrawnLine } from './fence.ts'
import { besideLine, lengthOf, middleOfLongest } from './lines.ts'
import { words } from './words.ts'

export interface DrawnLane extends DrawnLine {
  use: 'loader' | 'truck' | 'machine'
  figures: { widthM: DrawnFigure }
}

const uses = { loader: { en: 'loader lane', es: 'carril del cargador' }, truck: { en: 'trucks', es: 'camiones' }, machine: { en: 'machine lane', es: 'carril de la máquina' } } as const

/** Two broken edges with an arrow along each leg in the direction it was drawn, and what drives there. */
export const lanePlan = (r: DrawnLane, context: SymbolContext): Primitive[] => {
  const half = (r.figures.widthM.value ?? 3.6) / 2
  const middle = middleOfLongest(r.points)
  const edge = (leftM: number): Primitive => ({ t: 'path', points: flat(besideLine(r.points, leftM)), stroke: 'ink', weight: 'ticks', dash: 'lane' })
  const text = r.name === '' ? uses[r.use][context.reader?.language ?? 'en'] : r.name
  return [edge(half), edge(-half), ...(middle === null ? [] : [...arrow(r, context, middle), ...words(text, middle.xM, middle.yM, context, { dyPx: 9 })])]
}

/** 34 px long, no longer than half the lane. */
const arrow = (r: DrawnLane, context: SymbolContext, { xM, yM, headingRad }: { xM: number; yM: number; headingRad: number }): Primitive[] => {
  const px = 1 / context.pxPerM
  const half = Math.min(17 * px, lengthOf(r.points) / 4)
  const head = Math.min(7 * px, half)
  const turned = (points: readonly number[]): number[] => {
    const [cos, sin] = [Math.cos(headingRad), Math.sin(headingRad)]
    return points.flatMap((value, i) => (i % 2 === 0 ? [xM + value * cos - (points[i + 1] as number) * sin, yM + value * sin + (points[i + 1] as number) * cos] : []))
  }
  return [
    { t: 'path', points: turned([-half, 0, half - head * 0.5, 0]), stroke: 'ink', weight: 'ticks' },
    outline(turned([half, 0, half - head, head * 0.55, half - head, -head * 0.55]), { fill: 'ink' }),
  ]
}
