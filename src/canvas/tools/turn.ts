import { turnLabel } from './words.ts'
import { emptyOverlay, type Pickable, type PointerFacts, type PointerKind, type Step, type ToolContext, type ToolEvent, type ToolOverlay } from './types.ts'

/** One item being turned by its handle. */
export interface TurnState {
  name: 'turning'
  pointerId: number
  pointer: PointerKind
  item: Pickable
  pressRad: number
  turnRad: number
  typed: string
  xPx: number
  yPx: number
}

type TurnStep = Step<TurnState | null>
const stepRad = (15 * Math.PI) / 180

/** Angle in (−π, π]. */
const wrapped = (rad: number): number => Math.atan2(Math.sin(rad), Math.cos(rad))

export const startTurn = (press: PointerFacts, item: Pickable): Step<TurnState> => ({
  state: { name: 'turning', pointerId: press.pointerId, pointer: press.pointer, item, pressRad: Math.atan2(press.yM - item.yM, press.xM - item.xM), turnRad: 0, typed: '', xPx: press.xPx, yPx: press.yPx },
  effects: [{ do: 'begin', label: turnLabel([item]) }],
})

const preview = (state: TurnState, turnRad: number): TurnStep['effects'][number] => ({ do: 'preview', command: 'rotateBy', args: { ids: [state.item.id], turnRad } })

/** Turns by whole degrees, to the next 15° with snapping within 4°; typed digits are degrees, counter-clockwise. */
export const stepTurn = (state: TurnState, event: ToolEvent, context: ToolContext): TurnStep => {
  if (event.type === 'cancel') return { state: null, effects: [{ do: 'cancelPreview' }] }
  if (event.type === 'key') {
    if (event.key === 'Escape') return state.typed === '' ? { state: null, effects: [{ do: 'cancelPreview' }] } : { state: { ...state, typed: '' }, effects: [] }
    if (event.key === 'Backspace') return { state: { ...state, typed: state.typed.slice(0, -1) }, effects: [] }
    if (/^[0-9.-]$/.test(event.key)) return { state: { ...state, typed: state.typed + event.key }, effects: [] }
    const degrees = state.typed === '' ? NaN : Number(state.typed)
    if (event.key !== 'Enter' || !Number.isFinite(degrees)) return { state, effects: [] }
    return { state: null, effects: [preview(state, (degrees * Math.PI) / 180), { do: 'commit' }] }
  }
  if (event.pointerId !== state.pointerId) return { state, effects: [] }
  if (event.type === 'up') return { state: null, effects: state.turnRad === 0 ? [{ do: 'cancelPreview' }] : [{ do: 'commit' }] }
  if (event.type !== 'move') return { state, effects: [] }
  const rawRad = wrapped(Math.atan2(event.yM - state.item.yM, event.xM - state.item.xM) - state.pressRad)
  // Snaps on the heading reached, not on the turn, so that an item comes square to the sheet whatever it stood at.
  const headingRad = state.item.headingRad + rawRad
  const roundRad = Math.round(headingRad / stepRad) * stepRad
  const isNear = Math.abs(roundRad - headingRad) < (4 * Math.PI) / 180
  const snapped = context.snapping && !event.alt
  const degreeRad = Math.PI / 180
  const turnRad = snapped && isNear ? wrapped(roundRad - state.item.headingRad) : snapped ? Math.round(rawRad / degreeRad) * degreeRad : rawRad
  return { state: { ...state, turnRad, xPx: event.xPx, yPx: event.yPx }, effects: [preview(state, turnRad)] }
}

export const turnOverlay = (state: TurnState): ToolOverlay => {
  const degrees = Math.round((state.turnRad * 1800) / Math.PI) / 10
  return {
    ...emptyOverlay, draggedIds: [state.item.id], turn: { id: state.item.id, turnRad: state.turnRad }, figures: `${degrees}°`,
    echo: state.typed === '' ? null : { typed: state.typed, read: Number.isFinite(Number(state.typed)) ? `${Number(state.typed)}°` : null },
    pointer: { xPx: state.xPx, yPx: state.yPx, isTouch: state.pointer === 'touch' },
  }
}
