import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { formatQuantity } from '../../units/format.ts'
import type { DrawnFigure } from './basic.ts'
import { flat, outline, readerOf } from './basic.ts'
import type { DrawnLine } from './fence.ts'
import { middleOfLongest } from './lines.ts'
import { words } from './words.ts'

export interface DrawnOverheadLine extends DrawnLine {
  figures: { voltageV: DrawnFigure; lowestHeightM: DrawnFigure }
}

/** A flash, px, as on signs that warn of electricity. */
const bolt = outline([3, 13, -6, 0, -0.6, 0, -4, -13, 6, 2.4, 0.4, 2.4], { fill: 'red', stroke: 'sheet', weight: 'context' })

const questionMark: Primitive = { t: 'text', xM: 9, yM: -5, text: '?', sizePx: 17, ink: 'red', bold: true }

/** Wires in long red dashes between poles, a flash on the longest span, and height and voltage or '?'. */
export const overheadLinePlan = (r: DrawnOverheadLine, context: SymbolContext): Primitive[] => {
  const { voltageV, lowestHeightM } = r.figures
  const middle = middleOfLongest(r.points)
  const isUnknown = voltageV.value === null || lowestHeightM.value === null
  const figure = (kind: 'length' | 'voltage', value: number | null): string => formatQuantity({ kind, value }, readerOf(context))
  const text = [r.name, `${figure('length', lowestHeightM.value)}, ${figure('voltage', voltageV.value)}`].filter((piece) => piece !== '').join(' · ')
  return [
    { t: 'path', points: flat(r.points), stroke: 'red', weight: 'rope', dash: 'overhead' },
    ...r.points.map(({ xM, yM }): Primitive => ({
      t: 'mark', xM, yM,
      parts: [{ t: 'circle', xM: 0, yM: 0, radiusM: 4.5, fill: 'paper', stroke: 'ink', weight: 'gear' }, { t: 'circle', xM: 0, yM: 0, radiusM: 1.4, fill: 'ink' }],
    })),
    ...(middle === null ? [] : [{ t: 'mark', xM: middle.xM, yM: middle.yM, parts: isUnknown ? [bolt, questionMark] : [bolt] } as const]),
    ...(middle === null ? [] : words(text, middle.xM, middle.yM, context, { dyPx: 17, ...(isUnknown ? { ink: 'red' as const, bold: true } : {}) })),
  ]
}
