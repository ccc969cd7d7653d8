import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { centredBox, outline, showsWords, solid } from './basic.ts'

export interface DrawnNote {
  text: string
}

export const noteFootprint = (_r: DrawnNote): number[] => centredBox(0.5, 0.5)

const SHOWN_LETTERS = 44

/** A speech bubble whose tip is the place, with the first words beside it. */
export const notePlan = (r: DrawnNote, context: SymbolContext): Primitive[] => {
  const bubble: Primitive = {
    t: 'mark', xM: 0, yM: 0,
    parts: [
      outline([0, 0, -3, 6, -9, 6, -9, 20, 13, 20, 13, 6, 4, 6], { stroke: 'ink', weight: 'ticks', fill: 'sheet' }),
      { t: 'path', points: [-5.5, 15.5, 9.5, 15.5], stroke: 'ink2', weight: 'context' },
      { t: 'path', points: [-5.5, 11, 6, 11], stroke: 'ink2', weight: 'context' },
      { t: 'circle', xM: 0, yM: 0, radiusM: 1.6, ...solid },
    ],
  }
  const line = r.text.split('\n')[0] ?? ''
  const text = line.length > SHOWN_LETTERS ? `${line.slice(0, SHOWN_LETTERS - 1)}…` : line
  return text === '' || !showsWords(context) ? [bubble] : [bubble, { t: 'text', xM: 0, yM: 0, text, sizePx: 12, dxPx: 18, dyPx: 9, lotEdge: true }]
}
