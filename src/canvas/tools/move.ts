import { snapPoint, snapReachPx, withRiders, type PointSnap } from './snapping.ts'
import { echoOf, typeKey } from './typed.ts'
import { movedText, moveLabel } from './words.ts'
import { emptyOverlay, type Pickable, type PointerFacts, type PointerKind, type Step, type ToolContext, type ToolEvent, type ToolOverlay } from './types.ts'

/** Items being dragged. All places are those of the press; the preview is made against the committed document. */
export interface MoveState {
  name: 'moving'
  pointerId: number
  pointer: PointerKind
  ids: readonly string[]
  grabbed: Pickable
  items: readonly Pickable[]
  moving: ReadonlySet<string>
  pressXM: number
  pressYM: number
  at: PointSnap
  typed: string
  xPx: number
  yPx: number
}

type MoveStep = Step<MoveState | null>

/** Starts dragging the given items, grabbed by one of them at the press. */
export const startMove = (press: PointerFacts, grabbed: Pickable, items: readonly Pickable[], context: ToolContext): Step<MoveState> => ({
  state: {
    name: 'moving', pointerId: press.pointerId, pointer: press.pointer, ids: items.map(({ id }) => id), grabbed, items,
    moving: withRiders(context.pickables, items.map(({ id }) => id)), pressXM: press.xM, pressYM: press.yM,
    at: { xM: grabbed.xM, yM: grabbed.yM, runningM: grabbed.runningM, offsetM: grabbed.offsetM, marks: [] },
    typed: '', xPx: press.xPx, yPx: press.yPx,
  },
  effects: [{ do: 'begin', label: moveLabel(items) }],
})

const previewAt = (state: MoveState, xM: number, yM: number): MoveStep['effects'][number] => ({
  do: 'preview', command: 'moveBy', args: { ids: state.ids, dxM: xM - state.grabbed.xM, dyM: yM - state.grabbed.yM },
})

/**
 * Place the typed distance asks for: along the tape from the datum for what stands on the run (on the side it is on,
 * '−' for the infeed side), else that far from its old place in the direction of the drag.
 */
const placeOfTyped = (state: MoveState, valueM: number, context: ToolContext): { xM: number; yM: number } => {
  if (readsRunning(state, context) && state.at.runningM !== null) {
    const runningM = valueM < 0 || state.at.runningM >= 0 ? valueM : -valueM
    return context.atRunning(runningM, state.at.offsetM ?? 0)
  }
  const [dx, dy] = [state.at.xM - state.grabbed.xM, state.at.yM - state.grabbed.yM]
  const far = Math.hypot(dx, dy)
  const [ux, uy] = far === 0 ? [1, 0] : [dx / far, dy / far]
  return { xM: state.grabbed.xM + ux * valueM, yM: state.grabbed.yM + uy * valueM }
}

const readsRunning = (state: MoveState, context: ToolContext): boolean => context.hasSetUp && (state.grabbed.isAttached || state.grabbed.ridesOnRun)

const finish = (state: MoveState): MoveStep => {
  const hasMoved = state.at.xM !== state.grabbed.xM || state.at.yM !== state.grabbed.yM
  if (!hasMoved) return { state: null, effects: [{ do: 'cancelPreview' }] }
  return { state: null, effects: [{ do: 'commit' }, ...(state.pointer === 'touch' ? [{ do: 'notice' as const, text: movedText(state.items), undo: true }] : [])] }
}

export const stepMove = (state: MoveState, event: ToolEvent, context: ToolContext): MoveStep => {
  if (event.type === 'cancel') return { state: null, effects: [{ do: 'cancelPreview' }] }
  if (event.type === 'key') {
    const key = typeKey(state.typed, event.key, context.readDistance)
    if (key.is === 'typing') return { state: { ...state, typed: key.typed }, effects: [] }
    if (key.is === 'enter') {
      const to = placeOfTyped(state, key.valueM, context)
      return { state: null, effects: [previewAt(state, to.xM, to.yM), { do: 'commit' }] }
    }
    return event.key === 'Escape' ? { state: null, effects: [{ do: 'cancelPreview' }] } : { state, effects: [] }
  }
  if (event.pointerId !== state.pointerId) return { state, effects: [] }
  if (event.type === 'up') return finish(state)
  if (event.type !== 'move') return { state, effects: [] }
  const at = snapPoint(context, state.grabbed.xM + event.xM - state.pressXM, state.grabbed.yM + event.yM - state.pressYM, {
    reachPx: snapReachPx[state.pointer], without: state.moving, toCorners: false, suspended: !context.snapping || event.alt,
  })
  return { state: { ...state, at, xPx: event.xPx, yPx: event.yPx }, effects: [previewAt(state, at.xM, at.yM)] }
}

export const moveOverlay = (state: MoveState, context: ToolContext): ToolOverlay => ({
  ...emptyOverlay,
  marks: state.at.marks, draggedIds: [...state.moving], dimensionId: state.grabbed.id,
  figures: state.at.runningM === null ? context.lengthText(Math.hypot(state.at.xM - state.grabbed.xM, state.at.yM - state.grabbed.yM)) : context.runningText(state.at.runningM),
  echo: echoOf(state.typed, context),
  pointer: { xPx: state.xPx, yPx: state.yPx, isTouch: state.pointer === 'touch' },
})
