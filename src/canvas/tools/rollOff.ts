import { emptyOverlay, tapSlackPx, type PointerFacts, type Step, type ToolContext, type ToolEvent, type ToolOverlay } from './types.ts'

/** Dropping a pipe: a tap, or a drag that carries it about. It stays until the next drop, Esc or another tool. Keys: Enter drops it, arrows carry it. */
export interface RollOffState {
  name: 'rollingOff'
  at: { xM: number; yM: number } | null
  press: PointerFacts | null
}

export const rollOffStart: RollOffState = { name: 'rollingOff', at: null, press: null }
type RollOffStep = Step<RollOffState>

const STEP_M = 0.5
const FAR_STEP_M = 5
/** Right and up on screen, in steps. */
const arrows: Readonly<Record<string, readonly [number, number]>> = { ArrowRight: [1, 0], ArrowLeft: [-1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }

const dropped = (state: RollOffState, { xM, yM }: { xM: number; yM: number }, press: PointerFacts | null = state.press): RollOffStep =>
  ({ state: { ...state, at: { xM, yM }, press }, effects: [{ do: 'rollOff', rollOff: { xM, yM } }] })

export const stepRollOff = (state: RollOffState, event: ToolEvent, context: ToolContext): RollOffStep => {
  if (event.type === 'cancel') return { state: { ...state, press: null }, effects: [] }
  if (event.type === 'key') return onKey(state, event, context)
  if (event.type === 'hold' || (event.type === 'down' && event.button !== 0)) return { state, effects: [] }
  if (event.type === 'down') return dropped(state, event, event)
  if (event.type === 'up') return { state: { ...state, press: null }, effects: [] }
  if (state.press === null) return { state, effects: [] }
  // A finger that only trembles carries nothing.
  if (Math.hypot(event.xPx - state.press.xPx, event.yPx - state.press.yPx) <= tapSlackPx(event.pointer)) return { state, effects: [] }
  return dropped(state, event)
}

function onKey(state: RollOffState, event: Extract<ToolEvent, { type: 'key' }>, context: ToolContext): RollOffStep {
  if (event.key === 'Escape') return { state: rollOffStart, effects: state.at === null ? [{ do: 'rollOff', rollOff: null }, { do: 'tool', tool: null }] : [{ do: 'rollOff', rollOff: null }] }
  if (event.key === 'Enter' && state.at === null) return dropped(state, startPlace(context))
  const step = arrows[event.key]
  if (step === undefined || state.at === null || event.alt) return { state, effects: [] }
  const byM = event.shift ? FAR_STEP_M : STEP_M
  const [cos, sin] = [Math.cos(context.screenRightRad), Math.sin(context.screenRightRad)]
  const [rightM, upM] = [step[0] * byM, step[1] * byM]
  return dropped(state, { xM: state.at.xM + rightM * cos - upM * sin, yM: state.at.yM + rightM * sin + upM * cos })
}

/** On what is chosen; else at the datum. */
function startPlace({ pickables, selection, atRunning }: ToolContext): { xM: number; yM: number } {
  const chosen = pickables.find(({ id }) => selection[0] === id)
  const { xM, yM } = chosen ?? atRunning(0, 0)
  return { xM, yM }
}

export const rollOffOverlay = (): ToolOverlay => emptyOverlay
