import type { Primitive } from './primitives.ts'

/** The four levels that are shown; the octagon is a road stop sign (MUTCD R1-1), triangle and circle are those of ISO 3864. */
export type LevelName = 'STOP' | 'FIX' | 'CHECK' | 'NOTE'

/** Below this a CHECK without a number is a ring: in grey a small filled circle reads as the octagon. */
const RING_BELOW_PX = 18

const octagon = (radiusPx: number): number[] =>
  Array.from({ length: 8 }, (_, i) => {
    const angleRad = Math.PI / 8 + (i * Math.PI) / 4
    return [radiusPx * Math.cos(angleRad), radiusPx * Math.sin(angleRad)]
  }).flat()

/**
 * Shape of a level as parts of a `mark` (px frame, y UP), centred on its origin.
 * `sizePx`: 23 with a number, 15 alone, 11 on a flag. A number is drawn from 14 px on.
 */
export const levelShape = (level: LevelName, sizePx: number, number: string | null = null): readonly Primitive[] => {
  const r = sizePx / 2
  const shape = outline(level, sizePx, number !== null && sizePx >= 14)
  if (number === null || sizePx < 14) return shape
  const ink = ({ STOP: 'stopInk', FIX: 'fixInk', CHECK: 'checkInk', NOTE: 'ink' } as const)[level]
  // The triangle carries its figure low, where it is wide.
  const baselinePx = level === 'FIX' ? -r * 0.62 : -r * 0.38
  return [...shape, { t: 'text', xM: 0, yM: baselinePx, text: number, sizePx: Math.max(10, sizePx * 0.56), ink, align: 'center', bold: true }]
}

const outline = (level: LevelName, sizePx: number, hasNumber: boolean): Primitive[] => {
  const r = sizePx / 2
  switch (level) {
    case 'STOP':
      return [{ t: 'path', points: octagon(r * 1.08), closed: true, fill: 'stop', stroke: 'levelEdge', weight: 'ticks' }]
    case 'FIX':
      // Yellow stands only 1.6 to 1 on the paper, so the ink edge is never left out.
      return [{ t: 'path', points: [0, r * 1.13, r * 1.2, -r * 0.95, -r * 1.2, -r * 0.95], closed: true, fill: 'fix', stroke: 'ink', weight: 'gear' }]
    case 'CHECK':
      return sizePx < RING_BELOW_PX && !hasNumber
        ? [
            { t: 'circle', xM: 0, yM: 0, radiusM: r * 0.95, fill: 'check' },
            { t: 'circle', xM: 0, yM: 0, radiusM: r * 0.5, fill: 'sheet' },
          ]
        : [{ t: 'circle', xM: 0, yM: 0, radiusM: r, fill: 'check', stroke: 'levelEdge', weight: 'ticks' }]
    case 'NOTE':
      return [{ t: 'rect', xM: -r * 0.86, yM: -r * 0.86, widthM: r * 1.72, heightM: r * 1.72, fill: 'note', stroke: 'ink', weight: 'boundary' }]
  }
}
