import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import type { RollerRecord } from '../kinds/roller.ts'
import { centredBox, outline } from './basic.ts'

export const rollerFootprint = (r: RollerRecord): number[] => centredBox(r.figures.baseLengthM.value ?? 0.35, r.figures.baseWidthM.value ?? 0.55)

export const rollerPlan = (r: RollerRecord, _context: SymbolContext): Primitive[] => [outline(rollerFootprint(r), { stroke: 'ink', weight: 'gear', fill: 'sheet' })]

export const rollerSection = (r: RollerRecord, { saddleM }: SymbolContext & { saddleM: number | null }): Primitive[] => {
  const radiusM = r.figures.rollerRadiusM.value ?? 0.05
  return [{ t: 'circle', xM: 0, yM: (saddleM ?? 0.15) - radiusM, radiusM, stroke: 'ink', weight: 'gear', fill: 'ink' }]
}
