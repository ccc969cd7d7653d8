import type { Primitive } from '../../drawing/primitives.ts'
import { body, detailLine } from './basic.ts'

/** A track or tyre from above with its bars: x from–to, y from–to, bars every `barM`. */
export const track = (x0: number, x1: number, y0: number, y1: number, barM: number, radiusM: number, withBars: boolean): Primitive[] => {
  const rect: Primitive = { t: 'rect', xM: x0, yM: Math.min(y0, y1), widthM: x1 - x0, heightM: Math.abs(y1 - y0), radiusM, ...body }
  if (!withBars) return [rect]
  const count = Math.max(2, Math.floor((x1 - x0) / barM))
  const bars = Array.from({ length: count - 1 }, (_, i): Primitive => {
    const x = x0 + ((x1 - x0) * (i + 1)) / count
    return { t: 'path', points: [x, y0, x, y1], ...detailLine }
  })
  return [rect, ...bars]
}
