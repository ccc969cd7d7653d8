import { snapPoint, snapReachPx } from './snapping.ts'
import { echoOf, typeKey } from './typed.ts'
import { frozenText } from './words.ts'
import { emptyOverlay, patchOf, type Effect, type PointerFacts, type Step, type ToolContext, type ToolEvent, type ToolOverlay } from './types.ts'

/**
 * A row of equal items along the run: one drag sets the first place and the reach, the spacing gives how many.
 * Tap way: tap the first place, then the last. Typed digits set the spacing; Enter lays the row.
 */
export interface RowState {
  name: 'rowing'
  first: { runningM: number; offsetM: number } | null
  reachM: number | null
  spacingM: number
  typed: string
  /** Pointer of a drag under way; null between the two taps. */
  pointerId: number | null
  pointer: { xPx: number; yPx: number; isTouch: boolean } | null
}

export const rowStart = (context: Pick<ToolContext, 'rowSpacingM'>): RowState => ({ name: 'rowing', first: null, reachM: null, spacingM: context.rowSpacingM, typed: '', pointerId: null, pointer: null })
type RowStep = Step<RowState>

/** Most items one row may lay at once. */
export const ROW_MOST = 400

/** Count and signed spacing of a row from its first place to where the pointer is. */
export const rowOf = (firstM: number, reachM: number, spacingM: number): { count: number; spacingM: number } => {
  const count = Math.min(ROW_MOST, Math.floor(Math.abs(reachM - firstM) / spacingM + 1e-9) + 1)
  return { count, spacingM: reachM < firstM ? -spacingM : spacingM }
}

const argsOf = (state: RowState, context: ToolContext): object | null => {
  const { first, reachM } = state
  const { tool } = context
  if (first === null || reachM === null || tool === null || tool.name !== 'row') return null
  const row = rowOf(first.runningM, reachM, state.spacingM)
  return { kind: tool.kind, fromRunningM: first.runningM, spacingM: row.spacingM, count: row.count, offsetM: first.offsetM, ...patchOf(tool) }
}

const preview = (state: RowState, context: ToolContext): Effect[] => {
  const args = argsOf(state, context)
  return args === null || context.frozen ? [] : [{ do: 'preview', command: 'placeRow', args }]
}

const lay = (state: RowState, context: ToolContext): RowStep => {
  const args = argsOf(state, context)
  if (args === null) return { state, effects: [] }
  if (context.frozen) return { state: rowStart(context), effects: [{ do: 'cancelPreview' }, { do: 'notice', text: frozenText, undo: false }] }
  return { state: rowStart(context), effects: [{ do: 'cancelPreview' }, { do: 'command', command: 'placeRow', args, select: true }, { do: 'tool', tool: null }] }
}

const placeAt = (event: PointerFacts, context: ToolContext): { runningM: number; offsetM: number } | null => {
  const at = snapPoint(context, event.xM, event.yM, { reachPx: snapReachPx[event.pointer] * 2, without: new Set(), toCorners: false, suspended: !context.snapping || event.alt })
  return at.runningM === null || at.offsetM === null ? null : { runningM: at.runningM, offsetM: at.offsetM }
}

export const stepRow = (state: RowState, event: ToolEvent, context: ToolContext): RowStep => {
  if (event.type === 'cancel') return { state: rowStart(context), effects: [{ do: 'cancelPreview' }] }
  if (event.type === 'key') {
    const key = typeKey(state.typed, event.key, context.readDistance)
    if (key.is === 'typing') {
      const read = context.readDistance(key.typed)
      const next = { ...state, typed: key.typed, spacingM: read !== null && read.valueM > 0 ? read.valueM : state.spacingM }
      return { state: next, effects: preview(next, context) }
    }
    if (key.is === 'enter' || (event.key === 'Enter' && state.reachM !== null)) return lay(state, context)
    return event.key === 'Escape' ? { state: rowStart(context), effects: [{ do: 'cancelPreview' }, { do: 'tool', tool: null }] } : { state, effects: [] }
  }
  const pointer = { xPx: event.xPx, yPx: event.yPx, isTouch: event.pointer === 'touch' }
  const at = placeAt(event, context)
  if (at === null || event.type === 'hold') return { state, effects: [] }
  if (event.type === 'down') {
    const first = state.first ?? at
    const next = { ...state, first, reachM: at.runningM, pointerId: event.pointerId, pointer }
    return { state: next, effects: [...(state.first === null && !context.frozen ? [{ do: 'begin' as const, label: { text: { en: 'lay a row', es: 'poner una fila' } } }] : []), ...preview(next, context)] }
  }
  if (event.type === 'move') {
    const next = state.first === null ? { ...state, pointer, reachM: null } : { ...state, reachM: at.runningM, pointer }
    return { state: next, effects: state.first === null ? [] : preview(next, context) }
  }
  if (state.first === null || state.pointerId !== event.pointerId) return { state, effects: [] }
  const next = { ...state, reachM: at.runningM, pointer }
  // Let go where it was put down: the first tap of two. The second one, or the end of a drag, lays the row.
  const isFirstTap = Math.abs(at.runningM - state.first.runningM) < state.spacingM / 2
  return isFirstTap ? { state: { ...next, pointerId: null, reachM: null }, effects: preview({ ...next }, context) } : lay(next, context)
}

export const rowOverlay = (state: RowState, context: ToolContext): ToolOverlay => {
  const { first, reachM } = state
  if (first === null || reachM === null) return { ...emptyOverlay, echo: echoOf(state.typed, context), pointer: state.pointer }
  const { count } = rowOf(first.runningM, reachM, state.spacingM)
  const words = context.language === 'es' ? `${count} cada ${context.lengthText(state.spacingM)}` : `${count} at ${context.lengthText(state.spacingM)}`
  return { ...emptyOverlay, echo: echoOf(state.typed, context), pointer: state.pointer, dimensionAt: { runningM: reachM, offsetM: first.offsetM }, figures: words }
}
