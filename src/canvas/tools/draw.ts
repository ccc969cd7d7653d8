import { snapPoint, snapReachPx } from './snapping.ts'
import { echoOf, typeKey } from './typed.ts'
import { frozenText } from './words.ts'
import { emptyOverlay, patchOf, tapSlackPx, type Effect, type PointerFacts, type SnapMark, type Step, type ToolContext, type ToolEvent, type ToolOverlay } from './types.ts'

interface Point {
  xM: number
  yM: number
}

/**
 * A feature drawn corner by corner. A tap puts a corner; a tap on the first corner (area) or on the last one again,
 * Enter, ends it; Backspace takes a corner back; typed digits set the length of the leg under way.
 */
export interface DrawState {
  name: 'drawing'
  points: readonly Point[]
  at: Point | null
  marks: readonly SnapMark[]
  press: PointerFacts | null
  isPanning: boolean
  typed: string
  pointer: { xPx: number; yPx: number; isTouch: boolean } | null
}

export const drawStart: DrawState = { name: 'drawing', points: [], at: null, marks: [], press: null, isPanning: false, typed: '', pointer: null }
type DrawStep = Step<DrawState>

const closeReachPx = { mouse: 10, pen: 12, touch: 24 } as const
const leastCorners = (context: ToolContext): number => (context.gesture === 'polygon' ? 3 : 2)

const finish = (state: DrawState, context: ToolContext): DrawStep => {
  const { tool } = context
  if (tool === null || tool.name !== 'place' || state.points.length < leastCorners(context)) return { state, effects: [] }
  if (context.frozen) return { state: drawStart, effects: [{ do: 'notice', text: frozenText, undo: false }] }
  const args = { kind: tool.kind, points: state.points.map(({ xM, yM }) => ({ xM, yM })), ...patchOf(tool) }
  return { state: drawStart, effects: [{ do: 'command', command: 'place', args, select: true }, { do: 'tool', tool: null }] }
}

const addPoint = (state: DrawState, at: Point, context: ToolContext): DrawStep => {
  if (context.gesture === 'bend') return addBend(at, context)
  return { state: { ...state, points: [...state.points, at], at, typed: '', press: null, isPanning: false }, effects: [] }
}

/** Corners of the pull path go straight into the run, one step each. */
const addBend = (at: Point, context: ToolContext): DrawStep => {
  const effects: Effect[] = context.frozen
    ? [{ do: 'notice', text: frozenText, undo: false }]
    : context.runId === null ? [] : [{ do: 'command', command: 'addVertex', args: { id: context.runId, index: context.runCorners, xM: at.xM, yM: at.yM } }]
  return { state: drawStart, effects: [...effects, { do: 'tool', tool: null }] }
}

const snapAt = (state: DrawState, event: PointerFacts, context: ToolContext): { at: Point; marks: readonly SnapMark[] } => {
  const snap = snapPoint(context, event.xM, event.yM, {
    reachPx: snapReachPx[event.pointer], without: new Set(), from: state.points.at(-1), toCorners: true, suspended: !context.snapping || event.alt,
  })
  return { at: { xM: snap.xM, yM: snap.yM }, marks: snap.marks }
}

const isNear = (point: Point | undefined, event: PointerFacts, context: ToolContext): boolean =>
  point !== undefined && Math.hypot(point.xM - event.xM, point.yM - event.yM) * context.pxPerM <= closeReachPx[event.pointer]

const keyed = (state: DrawState, event: Extract<ToolEvent, { type: 'key' }>, context: ToolContext): DrawStep => {
  const key = typeKey(state.typed, event.key, context.readDistance)
  if (key.is === 'typing') return { state: { ...state, typed: key.typed }, effects: [] }
  const last = state.points.at(-1)
  if (key.is === 'enter' && last !== undefined && state.at !== null) {
    const [dx, dy] = [state.at.xM - last.xM, state.at.yM - last.yM]
    const far = Math.hypot(dx, dy) || 1
    return addPoint(state, { xM: last.xM + (dx / far) * key.valueM, yM: last.yM + (dy / far) * key.valueM }, context)
  }
  if (event.key === 'Enter') return finish(state, context)
  if (event.key === 'Backspace') return { state: { ...state, points: state.points.slice(0, -1) }, effects: [] }
  return event.key === 'Escape' ? { state: drawStart, effects: state.points.length === 0 ? [{ do: 'tool', tool: null }] : [] } : { state, effects: [] }
}

export const stepDraw = (state: DrawState, event: ToolEvent, context: ToolContext): DrawStep => {
  // Corners tapped so far survive a cancelled tap (a second finger to zoom); Esc clears them.
  if (event.type === 'cancel') return { state: { ...state, press: null, isPanning: false, pointer: null }, effects: [] }
  if (event.type === 'key') return keyed(state, event, context)
  if (event.type === 'hold') return { state, effects: [] }
  const pointer = { xPx: event.xPx, yPx: event.yPx, isTouch: event.pointer === 'touch' }
  const snap = snapAt(state, event, context)
  if (event.type === 'down') return { state: { ...state, press: event, isPanning: event.button !== 0, ...snap, pointer }, effects: [] }
  if (event.type === 'move') {
    const { press } = state
    const isFar = press !== null && Math.hypot(event.xPx - press.xPx, event.yPx - press.yPx) > tapSlackPx(event.pointer)
    if (press !== null && (state.isPanning || isFar)) {
      return { state: { ...state, press: event, isPanning: true, pointer: null }, effects: [{ do: 'pan', dxPx: event.xPx - press.xPx, dyPx: event.yPx - press.yPx }] }
    }
    return { state: { ...state, ...snap, pointer }, effects: [] }
  }
  if (state.press === null) return { state, effects: [] }
  if (state.isPanning) return { state: { ...state, press: null, isPanning: false }, effects: [] }
  const enough = state.points.length >= leastCorners(context)
  if (enough && ((context.gesture === 'polygon' && isNear(state.points[0], event, context)) || isNear(state.points.at(-1), event, context))) return finish(state, context)
  // A second tap on the last corner before there are enough of them is a slip.
  if (isNear(state.points.at(-1), event, context)) return { state: { ...state, press: null }, effects: [] }
  return addPoint(state, snap.at, context)
}

export const drawOverlay = (state: DrawState, context: ToolContext): ToolOverlay => {
  const points = state.at === null ? state.points : [...state.points, state.at]
  const last = state.points.at(-1)
  return {
    ...emptyOverlay, marks: state.marks, pointer: state.pointer, echo: echoOf(state.typed, context),
    sketch: points.length === 0 ? null : { points, isClosed: context.gesture === 'polygon', halfWidthM: 0 },
    figures: last === undefined || state.at === null ? null : context.lengthText(Math.hypot(state.at.xM - last.xM, state.at.yM - last.yM)),
  }
}
