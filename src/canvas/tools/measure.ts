import { snapPoint, snapReachPx } from './snapping.ts'
import { echoOf, typeKey } from './typed.ts'
import { emptyOverlay, tapSlackPx, type PointerFacts, type SnapMark, type Step, type ToolContext, type ToolEvent, type ToolOverlay } from './types.ts'

/** Measuring between two places: a drag, or a tap and a tap. The line stays until the next measure, Esc or another tool. */
export interface MeasureState {
  name: 'measuring'
  from: { xM: number; yM: number } | null
  to: { xM: number; yM: number } | null
  press: PointerFacts | null
  marks: readonly SnapMark[]
  typed: string
  pointer: { xPx: number; yPx: number; isTouch: boolean } | null
}

export const measureStart: MeasureState = { name: 'measuring', from: null, to: null, press: null, marks: [], typed: '', pointer: null }
type MeasureStep = Step<MeasureState>

const shown = (from: { xM: number; yM: number }, to: { xM: number; yM: number }): MeasureStep['effects'] =>
  [{ do: 'measure', measure: { fromXM: from.xM, fromYM: from.yM, toXM: to.xM, toYM: to.yM } }]

export const stepMeasure = (state: MeasureState, event: ToolEvent, context: ToolContext): MeasureStep => {
  if (event.type === 'cancel') return { state: measureStart, effects: [] }
  if (event.type === 'key') {
    const key = typeKey(state.typed, event.key, context.readDistance)
    if (key.is === 'typing') return { state: { ...state, typed: key.typed }, effects: [] }
    if (key.is === 'enter' && state.from !== null && state.to !== null) {
      const [dx, dy] = [state.to.xM - state.from.xM, state.to.yM - state.from.yM]
      const far = Math.hypot(dx, dy) || 1
      return { state: measureStart, effects: shown(state.from, { xM: state.from.xM + (dx / far) * key.valueM, yM: state.from.yM + (dy / far) * key.valueM }) }
    }
    if (event.key !== 'Escape') return { state, effects: [] }
    return { state: measureStart, effects: state.from === null ? [{ do: 'measure', measure: null }, { do: 'tool', tool: null }] : [{ do: 'measure', measure: null }] }
  }
  if (event.type === 'hold' || (event.type === 'down' && event.button !== 0)) return { state, effects: [] }
  const pointer = { xPx: event.xPx, yPx: event.yPx, isTouch: event.pointer === 'touch' }
  const snap = snapPoint(context, event.xM, event.yM, { reachPx: snapReachPx[event.pointer], without: new Set(), from: state.from ?? undefined, toCorners: true, suspended: !context.snapping || event.alt })
  const at = { xM: snap.xM, yM: snap.yM }
  if (event.type === 'down') {
    const from = state.from ?? at
    return { state: { ...state, from, to: at, press: event, marks: snap.marks, pointer }, effects: shown(from, at) }
  }
  if (event.type === 'move') return { state: { ...state, to: state.from === null ? null : at, marks: snap.marks, pointer }, effects: state.from === null ? [] : shown(state.from, at) }
  if (state.from === null || state.press === null) return { state, effects: [] }
  const isSamePlace = Math.hypot(event.xPx - state.press.xPx, event.yPx - state.press.yPx) <= tapSlackPx(event.pointer) && Math.hypot(at.xM - state.from.xM, at.yM - state.from.yM) * context.pxPerM < 8
  return isSamePlace ? { state: { ...state, press: null }, effects: [] } : { state: measureStart, effects: shown(state.from, at) }
}

export const measureOverlay = (state: MeasureState, context: ToolContext): ToolOverlay => ({
  ...emptyOverlay, marks: state.marks, pointer: state.pointer, echo: echoOf(state.typed, context),
  figures: state.from === null || state.to === null ? null : context.lengthText(Math.hypot(state.to.xM - state.from.xM, state.to.yM - state.from.yM)),
})
