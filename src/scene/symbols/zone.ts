import type { Pen, Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { centroid } from '../../geometry/polygon.ts'
import type { DrawnRing } from './boundary.ts'
import { flat, outline } from './basic.ts'
import { words } from './words.ts'

export interface DrawnZone extends DrawnRing {
  zoneClass: 'RED' | 'AMBER' | 'BLUE'
  sentence: string
}

/** Pens of the classes: hatch, edge and word each tell them apart without colour. Used for derived zones too. */
export const zonePens: Readonly<Record<DrawnZone['zoneClass'], Pen>> = {
  RED: { hatch: 'red', stroke: 'red', weight: 'gear' },
  AMBER: { hatch: 'amber', stroke: 'amber', weight: 'ticks', dash: 'amber' },
  BLUE: { hatch: 'blue', stroke: 'blue', weight: 'ticks', dash: 'blue' },
}
const inks = { RED: 'red', AMBER: 'amber', BLUE: 'blue' } as const

/** The zone hatched by its class, named in place by what to do there. */
export const zonePlan = (r: DrawnZone, context: SymbolContext): Primitive[] => {
  const middle = centroid(r.points)
  const text = r.sentence !== '' ? r.sentence : r.name !== '' ? r.name : r.zoneClass
  return [
    outline(flat(r.points), zonePens[r.zoneClass]),
    ...(middle === null ? [] : words(text, middle.xM, middle.yM, context, { ink: inks[r.zoneClass], bold: r.zoneClass === 'RED' })),
  ]
}
