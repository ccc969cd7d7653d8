import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { formatQuantity } from '../../units/format.ts'
import { centredBox, detailOf, outline, readerOf, showsWords } from './basic.ts'
import type { DrawnFigure } from './basic.ts'

export interface DrawnLevel {
  figures: { levelM: DrawnFigure }
}

export const levelFootprint = (_r: DrawnLevel): number[] => centredBox(0.4, 0.4)

/** The open triangle of a level on its tip, with the level beside it; '?' while nobody has measured it. */
export const levelPlan = (r: DrawnLevel, context: SymbolContext): Primitive[] => {
  const isUnknown = r.figures.levelM.value === null
  const mark: Primitive = {
    t: 'mark', xM: 0, yM: 0,
    parts: detailOf(context) === 'far'
      ? [outline([0, 0, 4, 6, -4, 6], { stroke: 'ink', weight: 'context', fill: 'paper' })]
      : [outline([0, 0, 7, 10, -7, 10], { stroke: 'ink', weight: 'ticks', fill: 'paper' }), { t: 'path', points: [-4, 0, 4, 0], stroke: 'ink', weight: 'context' }],
  }
  return showsWords(context) ? [mark, { t: 'text', xM: 0, yM: 0, text: levelText(r.figures.levelM.value, context), sizePx: 12.5, dxPx: 11, dyPx: 1, lotEdge: true, ink: isUnknown ? 'amber' : 'ink', bold: isUnknown }] : [mark]
}

const levelText = (valueM: number | null, context: SymbolContext): string => {
  const text = formatQuantity({ kind: 'height', value: valueM }, readerOf(context))
  return valueM !== null && valueM > 0 ? `+${text}` : text
}
