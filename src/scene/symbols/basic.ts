import type { Pen, Primitive } from '../../drawing/primitives.ts'

/** Rectangle about the item's origin: length along the heading, width across it. Flat points, counter-clockwise. */
export const centredBox = (lengthM: number, widthM: number): number[] => {
  const [l, w] = [lengthM / 2, widthM / 2]
  return [-l, -w, l, -w, l, w, -l, w]
}

export const outline = (points: readonly number[], pen: Pen): Primitive => ({ t: 'path', points, closed: true, ...pen })

/** Site points of a feature as a flat list. */
export const flat = (points: readonly { xM: number; yM: number }[]): number[] => points.flatMap(({ xM, yM }) => [xM, yM])
