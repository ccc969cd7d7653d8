import { useRef, type PointerEvent } from 'react'

/** A swipe turns the page: wider than high, and longer than a slip of the thumb, px. */
const SWIPE_PX = 60
const SWIPE_RATIO = 1.5

/** Whether what was pressed takes letters or a choice, so that neither a key nor a swipe there turns the page. */
export const isTyping = (target: EventTarget): boolean => target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement

/** Handlers of an element whose pages are turned by a finger: 1 on a swipe to the left, −1 on one to the right. */
export const useSwipe = (turn: (by: 1 | -1) => void): { onPointerDown: (event: PointerEvent) => void; onPointerUp: (event: PointerEvent) => void } => {
  const from = useRef<{ xPx: number; yPx: number } | null>(null)
  return {
    onPointerDown: (event) => {
      from.current = event.isPrimary && event.pointerType !== 'mouse' && !isTyping(event.target) ? { xPx: event.clientX, yPx: event.clientY } : null
    },
    onPointerUp: (event) => {
      const start = from.current
      from.current = null
      if (start === null) return
      const [dx, dy] = [event.clientX - start.xPx, event.clientY - start.yPx]
      if (Math.abs(dx) < SWIPE_PX || Math.abs(dx) < SWIPE_RATIO * Math.abs(dy)) return
      turn(dx < 0 ? 1 : -1)
    },
  }
}
