import type { Primitive } from './primitives.ts'

/** The same list with every place moved; marks keep their inside. */
export const shifted = (list: readonly Primitive[], dxM: number, dyM: number): Primitive[] =>
  list.map((p) => (p.t === 'path' || p.t === 'pipe' ? { ...p, points: p.points.map((value, i) => value + (i % 2 === 0 ? dxM : dyM)) } : { ...p, xM: p.xM + dxM, yM: p.yM + dyM }))
