import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { centredBox, curve, detailOf, outline, solid } from './basic.ts'
import { words } from './words.ts'

/** A role as drawn: its letter and its name in the reader's language. */
export interface DrawnRole {
  letter: string
  name: string
}

export const crewFootprint = (): number[] => centredBox(0.5, 0.5)

/** Shoulders from above, px: 25 wide, 10 deep. */
const shoulders = [
  -12.5, -2.5,
  ...curve(-12.5, -2.5, -12.5, 1.5, -10.3, 3.5, -6, 3.5), 6, 3.5,
  ...curve(6, 3.5, 10.3, 3.5, 12.5, 1.5, 12.5, -2.5),
  ...curve(12.5, -2.5, 12.5, -5.2, 11.2, -6.2, 8.5, -5.5), -8.5, -5.5,
  ...curve(-8.5, -5.5, -11.2, -6.2, -12.5, -5.2, -12.5, -2.5),
]

/** Head and shoulders from above with the letter of the role on the helmet; a dot from afar; the name beside it when near. Of one size at every scale. */
export const crewPlan = ({ letter, name }: DrawnRole, context: SymbolContext): Primitive[] => {
  if (detailOf(context) === 'far') return [{ t: 'mark', xM: 0, yM: 0, parts: [{ t: 'circle', xM: 0, yM: 0, radiusM: 3, fill: 'ink', stroke: 'sheet', weight: 'context' }] }]
  const mark: Primitive = {
    t: 'mark', xM: 0, yM: 0,
    parts: [
      outline(shoulders, { fill: 'ink', stroke: 'sheet', weight: 'context' }),
      { t: 'circle', xM: 0, yM: 1, radiusM: 7.2, fill: 'sheet', stroke: 'ink', weight: 'gear' },
      ...(context.onShelf === true ? [{ t: 'circle', xM: 0, yM: 1, radiusM: 2.6, ...solid } as const] : [{ t: 'text', xM: 0, yM: -2.9, text: letter, sizePx: 11, align: 'center', bold: true } as const]),
    ],
  }
  return [mark, ...words(name, 0, 0, context, { align: 'left', dxPx: 15, dyPx: -4 })]
}
