import type { BoxPx } from '../../drawing/paint.ts'

/** A piece of a band along its own axis, px. */
export interface Stretch {
  fromPx: number
  toPx: number
}

export const applyToBox = (box: BoxPx, axis: 'x' | 'y'): Stretch => (axis === 'x' ? { fromPx: box.x0, toPx: box.x1 } : { fromPx: box.y0, toPx: box.y1 })

/** Edges fall on whole device px at ratios of quarters, so that a strip leaves no seam. */
const STEP_PX = 4
/** Strips nearer than this are one: each costs a clip. */
const JOIN_PX = 24

/** Strips to paint again, in order, apart from one another, within 0 to `lengthPx`. */
export const joined = (stretches: readonly Stretch[], lengthPx: number): Stretch[] => {
  const list = stretches
    .map(({ fromPx, toPx }) => ({ fromPx: Math.max(0, Math.floor(fromPx / STEP_PX) * STEP_PX), toPx: Math.min(lengthPx, Math.ceil(toPx / STEP_PX) * STEP_PX) }))
    .filter(({ fromPx, toPx }) => toPx > fromPx)
    .sort((a, b) => a.fromPx - b.fromPx)
  const strips: Stretch[] = []
  for (const stretch of list) {
    const last = strips.at(-1)
    if (last !== undefined && stretch.fromPx <= last.toPx + JOIN_PX) last.toPx = Math.max(last.toPx, stretch.toPx)
    else strips.push({ ...stretch })
  }
  return strips
}
