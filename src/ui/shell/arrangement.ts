import type { ViewState } from '../../state/viewStore.ts'

/** Arrangements of the sheet (docs/look.md). Bounds in CSS px of the layout viewport, so browser zoom counts as a smaller window. */
export type Form = ViewState['form']

const DESKTOP_LEAST_WIDTH_PX = 1200
const DESKTOP_LEAST_HEIGHT_PX = 560
/** Below this on its shorter side a window shows one leaf at a time. */
const TABLET_LEAST_PX = 600

export const formOf = (widthPx: number, heightPx: number): Form => {
  if (widthPx >= DESKTOP_LEAST_WIDTH_PX && heightPx >= DESKTOP_LEAST_HEIGHT_PX) return 'desktop'
  if (Math.min(widthPx, heightPx) < TABLET_LEAST_PX) return 'phone'
  return widthPx > heightPx ? 'tabletLandscape' : 'tabletPortrait'
}

/** A phone held upright has its tape along the thumb edge; on the side-view leaf and on a phone held level it lies level. */
export const isTapeVertical = (form: Form, leaf: ViewState['leaf'], widthPx: number, heightPx: number): boolean =>
  form === 'phone' && leaf !== 'side' && heightPx >= widthPx

export const isTouchForm = (form: Form, coarsePointer: boolean): boolean => form !== 'desktop' || coarsePointer

/** Which regions a form draws; a phone turns leaves. */
export const regionsOf = (form: Form, leaf: ViewState['leaf']): { plan: boolean; section: boolean; notes: boolean } =>
  form === 'phone'
    ? { plan: leaf === 'plan', section: leaf === 'side', notes: leaf === 'notes' }
    : { plan: true, section: true, notes: form === 'desktop' }

/** Leaf a swipe across the tape turns to: to the next name for a swipe to the left, back for one to the right; stays at the ends. */
export const leafAfterSwipe = (leaf: ViewState['leaf'], dxPx: number, dyPx: number): ViewState['leaf'] => {
  const order: readonly ViewState['leaf'][] = ['plan', 'side', 'notes']
  // A swipe is wider than it is high and longer than a slip of the thumb.
  if (Math.abs(dxPx) < 48 || Math.abs(dxPx) < 1.5 * Math.abs(dyPx)) return leaf
  const at = order.indexOf(leaf) + (dxPx < 0 ? 1 : -1)
  return order[Math.min(order.length - 1, Math.max(0, at))] ?? leaf
}
