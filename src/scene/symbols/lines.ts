import { signedAreaM2 } from '../../geometry/polygon.ts'
import type { Vec } from '../../geometry/vector.ts'

/** Sharpest corner a parallel line follows: beyond this the corner is cut back, as a pen does. */
const MITRE_LIMIT = 3

const unitNormal = (from: Vec, to: Vec): Vec | null => {
  const [dx, dy] = [to.xM - from.xM, to.yM - from.yM]
  const length = Math.hypot(dx, dy)
  return length < 1e-9 ? null : { xM: -dy / length, yM: dx / length }
}

/** Line beside a line, `leftM` to its left (negative: right), corners mitred. For drawing only; clearances use the true shapes. */
export const besideLine = (points: readonly Vec[], leftM: number, closed = false): Vec[] => {
  const kept = points.filter((p, i) => i === 0 || unitNormal(points[i - 1] as Vec, p) !== null)
  if (kept.length < 2) return [...kept]
  const count = kept.length
  const normalAfter = (i: number): Vec | null => (i === count - 1 && !closed ? null : unitNormal(kept[i] as Vec, kept[(i + 1) % count] as Vec))
  return kept.map((p, i) => {
    const before = i === 0 && !closed ? null : normalAfter((i - 1 + count) % count)
    const after = normalAfter(i)
    const [a, b] = [before ?? after, after ?? before] as [Vec, Vec]
    const [sx, sy] = [a.xM + b.xM, a.yM + b.yM]
    const square = sx * sx + sy * sy
    // |a + b|² = 2 + 2 cos; the mitre is (a + b)·2/|a + b|².
    const factor = square < 4 / MITRE_LIMIT ** 2 ? MITRE_LIMIT / Math.max(Math.sqrt(square), 1e-6) : 2 / square
    return { xM: p.xM + sx * factor * leftM, yM: p.yM + sy * factor * leftM }
  })
}

/** Ring of a line with a width, flat points. */
export const bandPoints = (points: readonly Vec[], widthM: number): number[] => {
  const left = besideLine(points, widthM / 2)
  const right = besideLine(points, -widthM / 2).reverse()
  return [...left, ...right].flatMap(({ xM, yM }) => [xM, yM])
}

/** Ring drawn `insetM` inside a ring, or null where it would not fit. */
export const insetRing = (points: readonly Vec[], insetM: number): Vec[] | null => {
  const area = signedAreaM2(points)
  const inner = besideLine(points, Math.sign(area) * insetM, true)
  const innerArea = signedAreaM2(inner)
  return inner.length === points.length && innerArea * area > 0 && Math.abs(innerArea) > 0.15 * Math.abs(area) && Math.abs(innerArea) < Math.abs(area) ? inner : null
}

/** A place on a line with the direction there. */
export interface PlaceOnLine extends Vec {
  headingRad: number
}

/** Places every `stepM` along a line, starting half a step in; at most `most` of them, spread wider where there are more. */
export const placesAlong = (points: readonly Vec[], stepM: number, most = 300): PlaceOnLine[] => {
  const total = lengthOf(points)
  if (total <= 0) return []
  const step = Math.max(stepM, total / most)
  const places: PlaceOnLine[] = []
  let done = 0
  let next = step / 2
  for (let i = 0; i + 1 < points.length; i++) {
    const [a, b] = [points[i] as Vec, points[i + 1] as Vec]
    const length = Math.hypot(b.xM - a.xM, b.yM - a.yM)
    for (; length > 0 && next <= done + length; next += step) {
      const share = (next - done) / length
      places.push({ xM: a.xM + (b.xM - a.xM) * share, yM: a.yM + (b.yM - a.yM) * share, headingRad: Math.atan2(b.yM - a.yM, b.xM - a.xM) })
    }
    done += length
  }
  return places
}

export const lengthOf = (points: readonly Vec[]): number =>
  points.slice(1).reduce((sum, p, i) => sum + Math.hypot(p.xM - (points[i] as Vec).xM, p.yM - (points[i] as Vec).yM), 0)

/** Middle of the longest straight stretch: where words have most room. */
export const middleOfLongest = (points: readonly Vec[]): PlaceOnLine | null => {
  let best: PlaceOnLine | null = null
  let longest = 0
  for (let i = 0; i + 1 < points.length; i++) {
    const [a, b] = [points[i] as Vec, points[i + 1] as Vec]
    const length = Math.hypot(b.xM - a.xM, b.yM - a.yM)
    if (length <= longest) continue
    longest = length
    best = { xM: (a.xM + b.xM) / 2, yM: (a.yM + b.yM) / 2, headingRad: Math.atan2(b.yM - a.yM, b.xM - a.xM) }
  }
  return best
}

/** Straight piece across a line at a place: flat points from its left to its right. */
export const across = ({ xM, yM, headingRad }: PlaceOnLine, leftM: number, rightM: number): number[] => {
  const [nx, ny] = [-Math.sin(headingRad), Math.cos(headingRad)]
  return [xM + nx * leftM, yM + ny * leftM, xM - nx * rightM, yM - ny * rightM]
}
