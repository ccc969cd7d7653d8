import type { PointerFacts, Step, ToolEvent } from './types.ts'

/** The sheet being pulled about under the pointer. */
export interface PanState {
  name: 'panning'
  pointerId: number
  xPx: number
  yPx: number
}

export const startPan = (press: PointerFacts, now: PointerFacts): Step<PanState> => ({
  state: { name: 'panning', pointerId: press.pointerId, xPx: now.xPx, yPx: now.yPx },
  effects: [{ do: 'pan', dxPx: now.xPx - press.xPx, dyPx: now.yPx - press.yPx }],
})

/** What was panned stays panned on cancel: a view is no edit. */
export const stepPan = (state: PanState, event: ToolEvent): Step<PanState | null> => {
  if (event.type === 'cancel' || (event.type === 'key' && event.key === 'Escape')) return { state: null, effects: [] }
  if (event.type === 'key' || event.type === 'hold' || event.type === 'down' || event.pointerId !== state.pointerId) return { state, effects: [] }
  const effects = [{ do: 'pan' as const, dxPx: event.xPx - state.xPx, dyPx: event.yPx - state.yPx }]
  return { state: event.type === 'up' ? null : { ...state, xPx: event.xPx, yPx: event.yPx }, effects }
}

/** Two fingers: the site points under them stay under them, as scale and shift of the view. */
export interface PinchStart {
  middleXPx: number
  middleYPx: number
  apartPx: number
}

export const pinchOf = (one: { xPx: number; yPx: number }, other: { xPx: number; yPx: number }): PinchStart => ({
  middleXPx: (one.xPx + other.xPx) / 2,
  middleYPx: (one.yPx + other.yPx) / 2,
  apartPx: Math.max(8, Math.hypot(one.xPx - other.xPx, one.yPx - other.yPx)),
})

/** From one pinch to the next: pan by the middle, then zoom about it. */
export const pinchStep = (before: PinchStart, now: PinchStart): { dxPx: number; dyPx: number; factor: number; xPx: number; yPx: number } => ({
  dxPx: now.middleXPx - before.middleXPx, dyPx: now.middleYPx - before.middleYPx, factor: now.apartPx / before.apartPx, xPx: now.middleXPx, yPx: now.middleYPx,
})

/** Zoom of a wheel notch: a notch of 100 px is 1.25 times; lines and pages are taken for px; trackpad pinches (ctrl) are finer steps of more. */
export const wheelFactor = (deltaY: number, deltaMode: number, ctrl: boolean): number => {
  const px = deltaMode === 1 ? deltaY * 33 : deltaMode === 2 ? deltaY * 300 : deltaY
  const perPx = ctrl ? 0.01 : Math.log(1.25) / 100
  return Math.exp(-Math.max(-300, Math.min(300, px)) * perPx)
}

/** Push of the view while a drag is held at the edge of the band, px a tick; 0 inside. */
export const edgePush = (at: number, size: number, zonePx = 28, mostPx = 14): number => {
  const inPx = Math.min(zonePx, size / 4)
  if (at < inPx) return mostPx * Math.min(1, (inPx - at) / inPx)
  if (at > size - inPx) return -mostPx * Math.min(1, (at - size + inPx) / inPx)
  return 0
}
