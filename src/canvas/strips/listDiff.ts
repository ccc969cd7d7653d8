import { applyToBox, type Stretch } from './stretch.ts'
import type { PaintOptions } from '../../drawing/paint.ts'
import type { Primitive } from '../../drawing/primitives.ts'
import { primitiveBox } from './primitiveBox.ts'

/** Differences under this cannot be seen, px. */
const SAME_PX = 0.02
/** How far ahead a list is searched for where it goes on as before. */
const LOOK_AHEAD = 60

const samePoints = (a: readonly number[], b: readonly number[], tol: number): boolean => {
  if (a === b) return true
  if (a.length !== b.length) return false
  for (let i = 0; i < a.length; i++) if (!(Math.abs((a[i] as number) - (b[i] as number)) <= tol)) return false
  return true
}

const near = (a: number, b: number, tol: number): boolean => Math.abs(a - b) <= tol

type Penned = Extract<Primitive, { t: 'path' | 'rect' | 'circle' | 'arc' }>
const samePen = (a: Penned, b: Penned): boolean => a.stroke === b.stroke && a.fill === b.fill && a.weight === b.weight && a.dash === b.dash && a.hatch === b.hatch && a.fillOpacity === b.fillOpacity

/** Whether two primitives look the same on screen. `tol`: in the frame of the list. */
export const sameLook = (a: Primitive, b: Primitive, tol: number): boolean => {
  if (a === b) return true
  switch (a.t) {
    case 'path': return b.t === 'path' && a.closed === b.closed && samePen(a, b) && samePoints(a.points, b.points, tol)
    case 'pipe': return b.t === 'pipe' && a.leastPx === b.leastPx && near(a.outerDiameterM, b.outerDiameterM, tol) && samePoints(a.points, b.points, tol)
    case 'rect': return b.t === 'rect' && samePen(a, b) && near(a.xM, b.xM, tol) && near(a.yM, b.yM, tol) && near(a.widthM, b.widthM, tol) && near(a.heightM, b.heightM, tol) && (a.radiusM ?? 0) === (b.radiusM ?? 0)
    case 'circle': return b.t === 'circle' && samePen(a, b) && near(a.xM, b.xM, tol) && near(a.yM, b.yM, tol) && near(a.radiusM, b.radiusM, tol)
    case 'arc': return b.t === 'arc' && samePen(a, b) && near(a.xM, b.xM, tol) && near(a.yM, b.yM, tol) && near(a.radiusM, b.radiusM, tol) && a.fromRad === b.fromRad && a.toRad === b.toRad
    case 'text': return b.t === 'text' && a.text === b.text && a.sizePx === b.sizePx && a.ink === b.ink && a.align === b.align && a.bold === b.bold && a.lotEdge === b.lotEdge && a.dxPx === b.dxPx && a.dyPx === b.dyPx && near(a.xM, b.xM, tol) && near(a.yM, b.yM, tol)
    // Parts of a mark are in px.
    case 'mark': return b.t === 'mark' && near(a.xM, b.xM, tol) && near(a.yM, b.yM, tol) && a.parts.length === b.parts.length && a.parts.every((part, i) => sameLook(part, b.parts[i] as Primitive, SAME_PX))
  }
}

export interface ListDiff {
  /** Stretches of the band in which something looks other than before, px along it; unordered, may overlap. */
  dirty: Stretch[]
  /** The new list, with what looks the same kept as it was: small changes never add up unseen. */
  kept: Primitive[]
}

/** First and last point that differ, with the points beside them, of two lines that begin and end alike; null: nothing in common to keep. */
const changedPart = (a: Primitive, b: Primitive, tol: number): { from: number; toA: number; toB: number } | null => {
  const isLine = (a.t === 'path' && b.t === 'path' && samePen(a, b) && a.closed === b.closed && (a.dash ?? 'solid') === 'solid' && a.hatch === undefined) || (a.t === 'pipe' && b.t === 'pipe' && a.leastPx === b.leastPx && near(a.outerDiameterM, b.outerDiameterM, tol))
  if (!isLine) return null
  const [p, q] = [a.points, b.points]
  const [countA, countB] = [p.length >> 1, q.length >> 1]
  const least = Math.min(countA, countB)
  let head = 0
  while (head < least && near(p[2 * head] as number, q[2 * head] as number, tol) && near(p[2 * head + 1] as number, q[2 * head + 1] as number, tol)) head++
  let tail = 0
  while (tail < least - head && near(p[2 * (countA - 1 - tail)] as number, q[2 * (countB - 1 - tail)] as number, tol) && near(p[2 * (countA - 1 - tail) + 1] as number, q[2 * (countB - 1 - tail) + 1] as number, tol)) tail++
  if (head === 0 && tail === 0) return null
  return { from: Math.max(0, head - 1), toA: Math.min(countA - 1, countA - tail), toB: Math.min(countB - 1, countB - tail) }
}

/**
 * Where a drawing list looks other than the one painted before it. Lists are matched in order: what was put in or left
 * out is found by looking ahead, a line that differs in a part counts only there. O(primitives) where little has changed.
 */
export const diffLists = (before: readonly Primitive[], now: readonly Primitive[], options: PaintOptions, axis: 'x' | 'y'): ListDiff => {
  const { a, b, c, d } = options.matrix
  const tol = SAME_PX / Math.max(Math.abs(a), Math.abs(b), Math.abs(c), Math.abs(d), 1e-9)
  const dirty: Stretch[] = []
  const kept: Primitive[] = []
  const mark = (primitive: Primitive, from?: number, to?: number): void => {
    dirty.push(applyToBox(primitiveBox(primitive, options, from, to), axis))
  }
  let [i, j] = [0, 0]
  while (i < before.length || j < now.length) {
    const [was, is] = [before[i], now[j]]
    if (was !== undefined && is !== undefined && sameLook(was, is, tol)) {
      kept.push(was)
      i++
      j++
      continue
    }
    const [stepI, stepJ] = resync(before, now, i, j, tol)
    if (stepI === 1 && stepJ === 1 && was !== undefined && is !== undefined) {
      const part = changedPart(was, is, tol)
      mark(was, part?.from, part?.toA)
      mark(is, part?.from, part?.toB)
    } else {
      for (let k = i; k < i + stepI; k++) mark(before[k] as Primitive)
      for (let k = j; k < j + stepJ; k++) mark(now[k] as Primitive)
    }
    for (let k = j; k < j + stepJ; k++) kept.push(now[k] as Primitive)
    i += stepI
    j += stepJ
  }
  return { dirty, kept }
}

/** How many of each list to pass over until they agree again; nearest first. */
const resync = (before: readonly Primitive[], now: readonly Primitive[], i: number, j: number, tol: number): [number, number] => {
  const [leftI, leftJ] = [before.length - i, now.length - j]
  if (leftI === 0 || leftJ === 0) return [leftI, leftJ]
  for (let total = 1; total <= LOOK_AHEAD; total++) {
    // One for one first: most often a thing has moved.
    const middle = total / 2
    const steps = Array.from({ length: total + 1 }, (_, k) => k).sort((x, y) => Math.abs(x - middle) - Math.abs(y - middle))
    for (const di of steps) {
      const dj = total - di
      if (di >= leftI || dj >= leftJ) continue
      if (sameLook(before[i + di] as Primitive, now[j + dj] as Primitive, tol)) return [di, dj]
    }
  }
  return [Math.min(leftI, 1), Math.min(leftJ, 1)]
}
