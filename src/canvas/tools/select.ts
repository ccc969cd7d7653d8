import { handleUnder, itemsUnder, nextBeneath } from '../plan/hit.ts'
import { boxOverlay, startBox, stepBox, type BoxState } from './box.ts'
import { moveOverlay, startMove, stepMove, type MoveState } from './move.ts'
import { startPan, stepPan, type PanState } from './pan.ts'
import { reshapeOverlay, startReshape, stepReshape, type ReshapeState } from './reshape.ts'
import { startTurn, stepTurn, turnOverlay, type TurnState } from './turn.ts'
import { frozenText, lockedText } from './words.ts'
import { emptyOverlay, inSight, tapSlackPx, type Effect, type HandleView, type Pickable, type PointerFacts, type Step, type ToolContext, type ToolEvent, type ToolOverlay } from './types.ts'

export interface IdleState {
  name: 'idle'
}

/** Down, not yet known whether a tap, a drag or a long press. */
export interface PressedState {
  name: 'pressed'
  press: PointerFacts
  under: readonly string[]
  handle: HandleView | null
  /** A long press has done its work; the release does nothing more, a drag of empty ground draws a box. */
  held: 'no' | 'done' | 'box'
}

export type SelectState = IdleState | PressedState | MoveState | TurnState | ReshapeState | BoxState | PanState
export const idle: IdleState = { name: 'idle' }

type SelectStep = Step<SelectState>
const stay = (state: SelectState): SelectStep => ({ state, effects: [] })
const orIdle = (step: Step<SelectState | null>): SelectStep => ({ state: step.state ?? idle, effects: step.effects })

const pickable = (context: ToolContext, id: string | undefined): Pickable | null => (id === undefined ? null : (context.pickables.find((p) => p.id === id) ?? null))

/**
 * Whether a drag from here moves the item. Mouse and pen move gear at once; a finger, and what is drawn on the site by
 * anyone, has to be chosen first, else the drag pans.
 */
const dragsItem = (press: PointerFacts, item: Pickable, context: ToolContext): boolean =>
  context.selection.includes(item.id) || (press.pointer !== 'touch' && !item.isFeature)

const startDrag = (state: PressedState, now: PointerFacts & { type: 'move' }, context: ToolContext): SelectStep => {
  const { press, handle } = state
  if (state.held === 'box') return orIdle(startBox(press, now))
  const isMainButton = press.button === 0
  const handled = isMainButton && handle !== null ? pickable(context, handle.id) : null
  if (handled !== null && handle !== null) {
    if (context.frozen) return { state: idle, effects: [{ do: 'notice', text: frozenText, undo: false }] }
    if (handled.isLocked) return { state: idle, effects: [{ do: 'notice', text: lockedText([handled]), undo: false }] }
    const started = handle.kind === 'rotate' ? startTurn(press, handled) : startReshape(press, handle, handled)
    return then(started, now, context)
  }
  if (press.shift && isMainButton && state.under.length === 0) return orIdle(startBox(press, now))
  // What is chosen goes before what lies on top of it: a chosen item can always be dragged.
  const chosen = state.under.find((id) => context.selection.includes(id))
  const item = isMainButton ? pickable(context, chosen ?? state.under[0]) : null
  if (item === null || !dragsItem(press, item, context)) return orIdle(startPan(press, now))
  if (context.frozen) return { state: startPan(press, now).state, effects: [...startPan(press, now).effects, { do: 'notice', text: frozenText, undo: false }] }
  const ids = context.selection.includes(item.id) ? context.selection : press.shift ? [...context.selection, item.id] : [item.id]
  const items = ids.flatMap((id) => pickable(context, id) ?? [])
  const free = items.filter(({ isLocked }) => !isLocked)
  const select: Effect[] = ids === context.selection ? [] : [{ do: 'select', ids }]
  if (item.isLocked || free.length === 0) return { state: idle, effects: [...select, { do: 'notice', text: lockedText([item]), undo: false }] }
  const step = then(startMove(press, item, free, context), now, context)
  return { state: step.state, effects: [...select, ...step.effects] }
}

/** The move that turned a press into a drag counts as the first move of the drag. */
const then = (started: Step<SelectState>, now: ToolEvent, context: ToolContext): SelectStep => {
  const next = stepSelect(started.state, now, context)
  return { state: next.state, effects: [...started.effects, ...next.effects] }
}

const tap = (state: PressedState, context: ToolContext): SelectStep => {
  const { press, under, handle } = state
  if (state.held !== 'no' || press.button !== 0) return stay(idle)
  if (handle !== null && press.alt && handle.kind === 'vertex') return removeCorner(handle, context)
  const spot = context.spots.find(({ xPx, yPx, radiusPx }) => Math.hypot(xPx - press.xPx, yPx - press.yPx) <= (press.pointer === 'touch' ? Math.max(radiusPx, 24) : radiusPx))
  if (spot !== undefined) return { state: idle, effects: [spot.effect] }
  const [top] = under
  if (top === undefined) return { state: idle, effects: press.shift || context.selection.length === 0 ? [] : [{ do: 'select', ids: [] }] }
  if (press.shift || press.mod) {
    const ids = context.selection.includes(top) ? context.selection.filter((id) => id !== top) : [...context.selection, top]
    return { state: idle, effects: [{ do: 'select', ids }] }
  }
  const beneath = nextBeneath(under, context.selection)
  return { state: idle, effects: beneath === null ? [] : [{ do: 'select', ids: [beneath] }] }
}

const removeCorner = (handle: HandleView, context: ToolContext): SelectStep =>
  context.frozen
    ? { state: idle, effects: [{ do: 'notice', text: frozenText, undo: false }] }
    : { state: idle, effects: [{ do: 'command', command: 'removeVertex', args: { id: handle.id, index: handle.index } }] }

/** A long press adds to what is chosen, takes a corner away, or on empty ground lets the drag draw a box. */
const hold = (state: PressedState, context: ToolContext): SelectStep => {
  if (state.handle?.kind === 'vertex') return { ...removeCorner(state.handle, context), state: { ...state, held: 'done' } }
  const [top] = state.under
  if (top === undefined) return stay({ ...state, held: 'box' })
  const ids = context.selection.includes(top) ? context.selection.filter((id) => id !== top) : [...context.selection, top]
  return { state: { ...state, held: 'done' }, effects: [{ do: 'select', ids }] }
}

const stepPressed = (state: PressedState, event: ToolEvent, context: ToolContext): SelectStep => {
  if (event.type === 'cancel' || event.type === 'key') return stay(event.type === 'cancel' || event.key === 'Escape' ? idle : state)
  if (event.pointerId !== state.press.pointerId) return stay(state)
  if (event.type === 'hold') return hold(state, context)
  if (event.type === 'up') return tap(state, context)
  if (event.type !== 'move') return stay(state)
  const wanderedPx = Math.hypot(event.xPx - state.press.xPx, event.yPx - state.press.yPx)
  return wanderedPx <= tapSlackPx(event.pointer) || state.held === 'done' ? stay(state) : startDrag(state, event, context)
}

/** Selecting, and every drag that starts from it. */
export const stepSelect = (state: SelectState, event: ToolEvent, context: ToolContext): SelectStep => {
  switch (state.name) {
    case 'idle': {
      if (event.type === 'down') {
        const hit = { xM: event.xM, yM: event.yM, pxPerM: context.pxPerM, pointer: event.pointer }
        return stay({ name: 'pressed', press: event, under: itemsUnder(inSight(context), hit), handle: handleUnder(context.handles, event.xPx, event.yPx, event.pointer), held: 'no' })
      }
      if (event.type === 'move' && event.pointer !== 'touch') {
        const [top] = itemsUnder(inSight(context), { xM: event.xM, yM: event.yM, pxPerM: context.pxPerM, pointer: event.pointer })
        return { state, effects: [{ do: 'hover', id: top ?? null }] }
      }
      return stay(state)
    }
    case 'pressed': return stepPressed(state, event, context)
    case 'moving': return orIdle(stepMove(state, event, context))
    case 'turning': return orIdle(stepTurn(state, event, context))
    case 'reshaping': return orIdle(stepReshape(state, event, context))
    case 'boxing': return orIdle(stepBox(state, event, context))
    case 'panning': return orIdle(stepPan(state, event))
  }
}

export const selectOverlay = (state: SelectState, context: ToolContext): ToolOverlay => {
  switch (state.name) {
    case 'moving': return moveOverlay(state, context)
    case 'turning': return turnOverlay(state)
    case 'reshaping': return reshapeOverlay(state, context)
    case 'boxing': return boxOverlay(state)
    case 'pressed': return state.held === 'box' ? boxOverlay({ name: 'boxing', pointerId: state.press.pointerId, from: state.press, to: state.press }) : emptyOverlay
    default: return emptyOverlay
  }
}
