import { snapPoint, snapReachPx } from './snapping.ts'
import { echoOf, typeKey } from './typed.ts'
import { reshapeLabel } from './words.ts'
import { emptyOverlay, type HandleView, type Pickable, type PointerFacts, type PointerKind, type SnapMark, type Step, type ToolContext, type ToolEvent, type ToolOverlay } from './types.ts'

/** A corner of a feature or of the pull path being dragged, or a new one pulled out of the middle of a side. */
export interface ReshapeState {
  name: 'reshaping'
  pointerId: number
  pointer: PointerKind
  item: Pickable
  index: number
  isNew: boolean
  /** The corner before it, for typed lengths and square legs. */
  before: { xM: number; yM: number } | null
  at: { xM: number; yM: number } | null
  marks: readonly SnapMark[]
  typed: string
  xPx: number
  yPx: number
}

type ReshapeStep = Step<ReshapeState | null>

const cornerOf = (item: Pickable, index: number): { xM: number; yM: number } | null => {
  const count = item.outlineM.length >> 1
  const at = item.isClosed ? (index + count) % count : index
  const [xM, yM] = [item.outlineM[2 * at], item.outlineM[2 * at + 1]]
  return xM === undefined || yM === undefined ? null : { xM, yM }
}

export const startReshape = (press: PointerFacts, handle: HandleView, item: Pickable): Step<ReshapeState> => ({
  state: {
    name: 'reshaping', pointerId: press.pointerId, pointer: press.pointer, item, index: handle.index, isNew: handle.kind === 'middle',
    before: cornerOf(item, handle.index - 1), at: null, marks: [], typed: '', xPx: press.xPx, yPx: press.yPx,
  },
  effects: [{ do: 'begin', label: reshapeLabel([item]) }],
})

const preview = (state: ReshapeState, to: { xM: number; yM: number }): ReshapeStep['effects'][number] => ({
  do: 'preview', command: state.isNew ? 'addVertex' : 'moveVertex', args: { id: state.item.id, index: state.index, xM: to.xM, yM: to.yM },
})

export const stepReshape = (state: ReshapeState, event: ToolEvent, context: ToolContext): ReshapeStep => {
  if (event.type === 'cancel') return { state: null, effects: [{ do: 'cancelPreview' }] }
  if (event.type === 'key') {
    const key = typeKey(state.typed, event.key, context.readDistance)
    if (key.is === 'typing') return { state: { ...state, typed: key.typed }, effects: [] }
    if (key.is === 'enter' && state.at !== null && state.before !== null) {
      const [dx, dy] = [state.at.xM - state.before.xM, state.at.yM - state.before.yM]
      const far = Math.hypot(dx, dy) || 1
      return { state: null, effects: [preview(state, { xM: state.before.xM + (dx / far) * key.valueM, yM: state.before.yM + (dy / far) * key.valueM }), { do: 'commit' }] }
    }
    return event.key === 'Escape' ? { state: null, effects: [{ do: 'cancelPreview' }] } : { state, effects: [] }
  }
  if (event.pointerId !== state.pointerId) return { state, effects: [] }
  if (event.type === 'up') return { state: null, effects: state.at === null ? [{ do: 'cancelPreview' }] : [{ do: 'commit' }] }
  if (event.type !== 'move') return { state, effects: [] }
  const to = snapPoint(context, event.xM, event.yM, {
    reachPx: snapReachPx[state.pointer], without: new Set([state.item.id]), from: state.before ?? undefined, toCorners: true, suspended: !context.snapping || event.alt,
  })
  const at = { xM: to.xM, yM: to.yM }
  return { state: { ...state, at, marks: to.marks, xPx: event.xPx, yPx: event.yPx }, effects: [preview(state, at)] }
}

export const reshapeOverlay = (state: ReshapeState, context: ToolContext): ToolOverlay => ({
  ...emptyOverlay, marks: state.marks, draggedIds: [state.item.id], echo: echoOf(state.typed, context),
  figures: state.at === null || state.before === null ? null : context.lengthText(Math.hypot(state.at.xM - state.before.xM, state.at.yM - state.before.yM)),
  pointer: { xPx: state.xPx, yPx: state.yPx, isTouch: state.pointer === 'touch' },
})
