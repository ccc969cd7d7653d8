import type { Pen, Primitive, SymbolContext } from '../../drawing/primitives.ts'
import type { FormatOptions } from '../../units/format.ts'

/** A figure as symbols see it; the records' figures fit. Symbols name only what they draw, so records may import them. */
export interface DrawnFigure {
  value: number | null
}

/**
 * How much of a symbol is worth drawing (docs/look.md, 'what hides when'): bounds of 2, 4 and 8 px a foot.
 * far: ticks and dots · mid: outlines at 6 px least, crew letter · near: to scale with words · close: everything.
 */
export type Detail = 'far' | 'mid' | 'near' | 'close'
const PX_PER_M_OF_ONE_PX_PER_FT = 1 / 0.3048

export const detailOf = ({ pxPerM, onShelf }: SymbolContext): Detail => {
  if (onShelf === true) return 'near'
  const pxPerFt = pxPerM / PX_PER_M_OF_ONE_PX_PER_FT
  if (pxPerFt < 2) return 'far'
  if (pxPerFt < 4) return 'mid'
  return pxPerFt < 8 ? 'near' : 'close'
}

/** Words on gear: from 4 px a foot; below, down to 2, only on the chosen item; never on the gear edge. */
export const showsWords = (context: SymbolContext): boolean => {
  if (context.onShelf === true) return false
  const detail = detailOf(context)
  return detail === 'near' || detail === 'close' || (context.isChosen === true && detail === 'mid')
}

export const readerOf = ({ reader }: SymbolContext): FormatOptions => ({ system: reader?.system ?? 'feetInches', language: reader?.language ?? 'en' })

/** What an unknown pipe is drawn with. */
export const TYPICAL_OD_M = 0.3
export const odOf = ({ pipeOuterDiameterM }: SymbolContext): number => pipeOuterDiameterM ?? TYPICAL_OD_M

/** Enlargement that makes `sizeM` at least 6 px on screen. */
export const atLeastSixPx = (sizeM: number, pxPerM: number): number => Math.max(1, 6 / (sizeM * pxPerM))

/** Rectangle about the item's origin: length along the heading, width across it. Flat points, counter-clockwise. */
export const centredBox = (lengthM: number, widthM: number): number[] => {
  const [l, w] = [lengthM / 2, widthM / 2]
  return [-l, -w, l, -w, l, w, -l, w]
}

export const outline = (points: readonly number[], pen: Pen): Primitive => ({ t: 'path', points, closed: true, ...pen })

/** The three pens of gear: a body, a thin part of it, a solid part. */
export const body: Pen = { stroke: 'ink', weight: 'gear', fill: 'sheet' }
export const part: Pen = { stroke: 'ink', weight: 'context', fill: 'sheet' }
export const solid: Pen = { fill: 'ink' }
/** Lines on a body. */
export const detailLine: Pen = { stroke: 'ink2', weight: 'context' }
export const gearLine: Pen = { stroke: 'ink', weight: 'gear' }

/** Stretches points of a drawing by a factor along and one across, then shifts them along. */
export const stretched = (points: readonly number[], alongFactor: number, acrossFactor: number, shiftM = 0): number[] =>
  points.map((value, i) => (i % 2 === 0 ? value * alongFactor + shiftM : value * acrossFactor))

/** Cubic curve from the last point on, as points to add (flat, without the start). */
export const curve = (fromX: number, fromY: number, x1: number, y1: number, x2: number, y2: number, toX: number, toY: number, steps = 6): number[] =>
  Array.from({ length: steps }, (_, i) => {
    const t = (i + 1) / steps
    const [a, b, c, d] = [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t ** 3]
    return [a * fromX + b * x1 + c * x2 + d * toX, a * fromY + b * y1 + c * y2 + d * toY]
  }).flat()

/** Site points of a feature as a flat list. */
export const flat = (points: readonly { xM: number; yM: number }[]): number[] => points.flatMap(({ xM, yM }) => [xM, yM])
