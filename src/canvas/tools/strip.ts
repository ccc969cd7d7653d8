import { roundStepM, roundTo, snapPoint, snapReachPx } from './snapping.ts'
import { echoOf, typeKey } from './typed.ts'
import { frozenText } from './words.ts'
import { emptyOverlay, tapSlackPx, type PointerFacts, type SnapMark, type Step, type ToolContext, type ToolEvent, type ToolOverlay } from './types.ts'

interface Point {
  xM: number
  yM: number
}

/**
 * The strip the string lies on: first its middle line, infeed end to exit end (drag, or tap and tap), then its width
 * by a tap beside it. Typed digits set the length, then the width.
 */
export interface StripState {
  name: 'stripping'
  from: Point | null
  to: Point | null
  isLineSet: boolean
  halfWidthM: number
  marks: readonly SnapMark[]
  press: PointerFacts | null
  typed: string
  pointer: { xPx: number; yPx: number; isTouch: boolean } | null
}

export const stripStart: StripState = { name: 'stripping', from: null, to: null, isLineSet: false, halfWidthM: 0, marks: [], press: null, typed: '', pointer: null }
type StripStep = Step<StripState>

/** Shorter or narrower than this is a slip, m. */
const leastM = 1

const lengthOf = ({ from, to }: StripState): number => (from === null || to === null ? 0 : Math.hypot(to.xM - from.xM, to.yM - from.yM))

const finish = (state: StripState, halfWidthM: number, context: ToolContext): StripStep => {
  const { from, to } = state
  if (from === null || to === null || halfWidthM * 2 < leastM) return { state, effects: [] }
  if (context.frozen) return { state: stripStart, effects: [{ do: 'notice', text: frozenText, undo: false }] }
  const args = { xM: from.xM, yM: from.yM, headingRad: Math.atan2(to.yM - from.yM, to.xM - from.xM), lengthM: lengthOf(state), widthM: halfWidthM * 2 }
  return { state: stripStart, effects: [{ do: 'command', command: 'drawStrip', args }, { do: 'tool', tool: null }] }
}

const halfWidthAt = (state: StripState, event: Point, context: ToolContext): number => {
  const { from, to } = state
  if (from === null || to === null) return 0
  const away = Math.abs((to.xM - from.xM) * (event.yM - from.yM) - (to.yM - from.yM) * (event.xM - from.xM)) / (lengthOf(state) || 1)
  return context.snapping ? roundTo(away, roundStepM(context.system, context.pxPerM)) : away
}

const lineSet = (state: StripState): StripStep => ({ state: { ...state, isLineSet: true, press: null, typed: '', marks: [] }, effects: [] })

const keyed = (state: StripState, event: Extract<ToolEvent, { type: 'key' }>, context: ToolContext): StripStep => {
  const key = typeKey(state.typed, event.key, context.readDistance)
  if (key.is === 'typing') return { state: { ...state, typed: key.typed }, effects: [] }
  if (key.is === 'enter' && key.valueM > 0) {
    if (state.isLineSet) return finish(state, key.valueM / 2, context)
    const { from, to } = state
    if (from === null || to === null) return { state, effects: [] }
    const share = key.valueM / (lengthOf(state) || 1)
    return lineSet({ ...state, to: lengthOf(state) === 0 ? { xM: from.xM + key.valueM, yM: from.yM } : { xM: from.xM + (to.xM - from.xM) * share, yM: from.yM + (to.yM - from.yM) * share } })
  }
  if (event.key === 'Enter' && state.isLineSet) return finish(state, state.halfWidthM, context)
  return event.key === 'Escape' ? { state: stripStart, effects: state.from === null ? [{ do: 'tool', tool: null }] : [] } : { state, effects: [] }
}

export const stepStrip = (state: StripState, event: ToolEvent, context: ToolContext): StripStep => {
  if (event.type === 'cancel') return { state: stripStart, effects: [] }
  if (event.type === 'key') return keyed(state, event, context)
  if (event.type === 'hold' || (event.type === 'down' && event.button !== 0)) return { state, effects: [] }
  const pointer = { xPx: event.xPx, yPx: event.yPx, isTouch: event.pointer === 'touch' }
  if (state.isLineSet) {
    const next = { ...state, halfWidthM: halfWidthAt(state, event, context), pointer, press: event.type === 'down' ? event : state.press }
    return event.type === 'up' && state.press !== null ? finish(next, next.halfWidthM, context) : { state: next, effects: [] }
  }
  const snap = snapPoint(context, event.xM, event.yM, { reachPx: snapReachPx[event.pointer], without: new Set(), from: state.from ?? undefined, toCorners: true, suspended: !context.snapping || event.alt })
  const at = { xM: snap.xM, yM: snap.yM }
  if (event.type === 'down') return { state: { ...state, from: state.from ?? at, to: at, press: event, marks: snap.marks, pointer }, effects: [] }
  if (event.type === 'move') return { state: { ...state, to: state.from === null ? null : at, marks: snap.marks, pointer }, effects: [] }
  if (state.from === null || state.press === null) return { state, effects: [] }
  const next = { ...state, to: at, marks: snap.marks, pointer }
  // Let go where it was put down for the first time: the first tap of two.
  const isSamePlace = Math.hypot(event.xPx - state.press.xPx, event.yPx - state.press.yPx) <= tapSlackPx(event.pointer)
  return lengthOf(next) < leastM || (isSamePlace && lengthOf(next) * context.pxPerM < 8) ? { state: { ...next, press: null }, effects: [] } : lineSet(next)
}

export const stripOverlay = (state: StripState, context: ToolContext): ToolOverlay => {
  const { from, to } = state
  if (from === null || to === null) return { ...emptyOverlay, marks: state.marks, pointer: state.pointer, echo: echoOf(state.typed, context) }
  return {
    ...emptyOverlay, marks: state.marks, pointer: state.pointer, echo: echoOf(state.typed, context),
    sketch: { points: [from, to], isClosed: false, halfWidthM: state.isLineSet ? state.halfWidthM : 0 },
    figures: state.isLineSet ? context.lengthText(state.halfWidthM * 2) : context.lengthText(lengthOf(state)),
  }
}
