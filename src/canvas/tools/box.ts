import { itemsInBox } from '../plan/hit.ts'
import { emptyOverlay, inSight, type PointerFacts, type Step, type ToolContext, type ToolEvent, type ToolOverlay } from './types.ts'

/** A box drawn on the sheet, square to the screen; what lies wholly inside is chosen besides what was. */
export interface BoxState {
  name: 'boxing'
  pointerId: number
  from: PointerFacts
  to: PointerFacts
}

export const startBox = (press: PointerFacts, now: PointerFacts): Step<BoxState> => ({ state: { name: 'boxing', pointerId: press.pointerId, from: press, to: now }, effects: [] })

/** Corners of the box in the site frame: its sides lie along the screen whatever way the sheet is turned. */
const ringOf = (state: BoxState, context: ToolContext): number[] => {
  const { from, to } = state
  const [cos, sin] = [Math.cos(context.screenRightRad), Math.sin(context.screenRightRad)]
  const acrossM = (to.xM - from.xM) * cos + (to.yM - from.yM) * sin
  return [from.xM, from.yM, from.xM + acrossM * cos, from.yM + acrossM * sin, to.xM, to.yM, to.xM - acrossM * cos, to.yM - acrossM * sin]
}

export const stepBox = (state: BoxState, event: ToolEvent, context: ToolContext): Step<BoxState | null> => {
  if (event.type === 'cancel' || (event.type === 'key' && event.key === 'Escape')) return { state: null, effects: [] }
  if (event.type === 'key' || event.type === 'hold' || event.type === 'down' || event.pointerId !== state.pointerId) return { state, effects: [] }
  const next = { ...state, to: event }
  if (event.type === 'move') return { state: next, effects: [] }
  const inside = itemsInBox(inSight(context), ringOf(next, context))
  return { state: null, effects: [{ do: 'select', ids: [...new Set([...context.selection, ...inside])] }] }
}

export const boxOverlay = (state: BoxState): ToolOverlay => ({ ...emptyOverlay, box: { fromXM: state.from.xM, fromYM: state.from.yM, toXM: state.to.xM, toYM: state.to.yM } })
