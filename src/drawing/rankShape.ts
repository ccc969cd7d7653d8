import type { Primitive } from './primitives.ts'

/** How bad the loss of a ranked support is. */
export type RankLevel = 'FIX' | 'CHECK' | 'met'

/** Half the diagonal of a rank mark is this share of its size. */
const HALF_RATIO = 0.62

/**
 * Place in a ranking as parts of a `mark` (px frame, y UP), centred on its origin: a square on its corner, so that it is never
 * read as a level of a finding. Full: ruins the joint; with a second line: worth a look; plain: bears it, yet guard it.
 */
export const rankShape = (rank: number, level: RankLevel, sizePx: number, isOld = false): readonly Primitive[] => {
  const half = sizePx * HALF_RATIO
  const corners = (r: number): number[] => [0, r, r, 0, 0, -r, -r, 0]
  const ink = isOld ? 'ink2' : 'ink'
  const isFull = level === 'FIX' && !isOld
  const body: Primitive = { t: 'path', points: corners(half), closed: true, fill: isFull ? 'ink' : 'paper', stroke: ink, weight: 'gear', ...(isOld ? { dash: 'tie' as const } : {}) }
  const second: Primitive[] = level === 'CHECK' ? [{ t: 'path', points: corners(half * 0.78), closed: true, stroke: ink, weight: 'context' }] : []
  const sizeTextPx = Math.max(10, sizePx * (rank > 9 ? 0.5 : 0.6))
  return [body, ...second, { t: 'text', xM: 0, yM: -sizeTextPx * 0.36, text: String(rank), sizePx: sizeTextPx, ink: isFull ? 'paper' : ink, align: 'center', bold: true }]
}
