import { snapPoint, snapReachPx, type PointSnap } from './snapping.ts'
import { echoOf, typeKey } from './typed.ts'
import { frozenText } from './words.ts'
import { emptyOverlay, patchOf, tapSlackPx, type Effect, type PointerFacts, type Step, type ToolContext, type ToolEvent, type ToolOverlay } from './types.ts'

/**
 * Placing one item: drag it from the gear edge and let go, or tap the gear, then tap the plan.
 * A tap places, a finger's drag of the sheet pans; with Shift the tool stays for another.
 */
export interface PlaceState {
  name: 'placing'
  at: PointSnap | null
  press: PointerFacts | null
  isPanning: boolean
  typed: string
  pointer: { xPx: number; yPx: number; isTouch: boolean } | null
}

export const placeStart: PlaceState = { name: 'placing', at: null, press: null, isPanning: false, typed: '', pointer: null }
type PlaceStep = Step<PlaceState>

/** Nearer to the axis than this, gear that rides on the run is attached to it, m. */
export const attachReachM = 2

const snapAt = (event: PointerFacts, context: ToolContext): PointSnap =>
  snapPoint(context, event.xM, event.yM, { reachPx: snapReachPx[event.pointer] * (context.kindRidesOnRun ? 2 : 1), without: new Set(), toCorners: false, suspended: !context.snapping || event.alt })

/** Place record of a snapped point: attached to the run where the kind rides on it and the axis is near. */
export const placeOf = (at: PointSnap, context: Pick<ToolContext, 'runId' | 'kindRidesOnRun' | 'atRunning'>): object =>
  context.kindRidesOnRun && context.runId !== null && at.runningM !== null && at.offsetM !== null && Math.abs(at.offsetM) <= attachReachM
    ? { at: 'onRun', runId: context.runId, runningM: at.runningM, offsetM: at.offsetM, turnRad: 0 }
    : { at: 'free', xM: at.xM, yM: at.yM, headingRad: at.runningM === null ? 0 : context.atRunning(at.runningM, 0).headingRad }

const placeEffects = (at: PointSnap, context: ToolContext, keepTool: boolean): Effect[] => {
  const { tool } = context
  if (tool === null || tool.name !== 'place') return []
  if (context.frozen) return [{ do: 'notice', text: frozenText, undo: false }]
  return [{ do: 'command', command: 'place', args: { kind: tool.kind, place: placeOf(at, context), ...patchOf(tool) }, select: true }, ...(keepTool ? [] : [{ do: 'tool' as const, tool: null }])]
}

export const stepPlace = (state: PlaceState, event: ToolEvent, context: ToolContext): PlaceStep => {
  if (event.type === 'cancel') return { state: placeStart, effects: [] }
  if (event.type === 'key') {
    const key = typeKey(state.typed, event.key, context.readDistance)
    if (key.is === 'typing') return { state: { ...state, typed: key.typed }, effects: [] }
    // A typed distance is the running distance from the datum; '−' is the infeed side.
    if (key.is === 'enter' && context.hasSetUp) {
      const offsetM = state.at?.offsetM ?? 0
      const site = context.atRunning(key.valueM, offsetM)
      return { state: placeStart, effects: placeEffects({ xM: site.xM, yM: site.yM, runningM: key.valueM, offsetM, marks: [] }, context, false) }
    }
    return event.key === 'Escape' ? { state: placeStart, effects: [{ do: 'tool', tool: null }] } : { state, effects: [] }
  }
  const pointer = { xPx: event.xPx, yPx: event.yPx, isTouch: event.pointer === 'touch' }
  if (event.type === 'down') return { state: { ...state, press: event, isPanning: event.button !== 0, at: snapAt(event, context), pointer }, effects: [] }
  if (event.type === 'hold') return { state, effects: [] }
  if (event.type === 'move') {
    const { press } = state
    const isFar = press !== null && Math.hypot(event.xPx - press.xPx, event.yPx - press.yPx) > tapSlackPx(event.pointer)
    if (press !== null && (state.isPanning || (isFar && event.pointer === 'touch'))) {
      return { state: { ...state, press: event, isPanning: true, at: null, pointer: null }, effects: [{ do: 'pan', dxPx: event.xPx - press.xPx, dyPx: event.yPx - press.yPx }] }
    }
    return { state: { ...state, at: snapAt(event, context), pointer }, effects: [] }
  }
  if (state.isPanning) return { state: { ...state, press: null, isPanning: false, at: null, pointer: null }, effects: [] }
  const at = snapAt(event, context)
  return { state: placeStart, effects: placeEffects(at, context, event.shift) }
}

export const placeOverlay = (state: PlaceState, context: ToolContext): ToolOverlay => {
  const { at } = state
  const kind = context.tool?.name === 'place' ? context.tool.kind : ''
  if (at === null) return { ...emptyOverlay, echo: echoOf(state.typed, context) }
  return {
    ...emptyOverlay, marks: at.marks, echo: echoOf(state.typed, context), pointer: state.pointer,
    ghosts: [{ kind, xM: at.xM, yM: at.yM, headingRad: at.runningM === null ? 0 : context.atRunning(at.runningM, 0).headingRad }],
    dimensionAt: at.runningM === null || at.offsetM === null ? null : { runningM: at.runningM, offsetM: at.offsetM },
    figures: at.runningM === null ? null : context.runningText(at.runningM),
  }
}
