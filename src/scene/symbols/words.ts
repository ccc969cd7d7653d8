import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { showsWords } from './basic.ts'

/** Words on gear and site, in the drawing's 12 px with a lot-coloured edge. Nothing where they are not shown or empty. */
export const words = (text: string, xM: number, yM: number, context: SymbolContext, over: Partial<Extract<Primitive, { t: 'text' }>> = {}): Primitive[] =>
  text === '' || !showsWords(context) ? [] : [{ t: 'text', xM, yM, text, sizePx: 12, align: 'center', dyPx: -4, lotEdge: true, ...over }]
