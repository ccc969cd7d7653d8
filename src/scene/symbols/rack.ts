import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import type { RackRecord } from '../kinds/rack.ts'
import { outline } from './basic.ts'

/** Beams reach from 1 ft beyond the lane on the closed side to the end of the open side. */
export const rackFootprint = (r: RackRecord): number[] => {
  const half = (r.figures.beamSpacingM.value ?? 7.112) / 2 + 0.15
  const long = (r.figures.beamLengthM.value ?? 3.048) - 0.3
  const [right, left] = r.openSide === 'R' ? [-long, 0.3] : [-0.3, long]
  return [-half, right, half, right, half, left, -half, left]
}

export const rackPlan = (r: RackRecord, _context: SymbolContext): Primitive[] => [outline(rackFootprint(r), { stroke: 'ink', weight: 'gear', fill: 'sheet' })]

export const rackSection = (r: RackRecord, { saddleM }: SymbolContext & { saddleM: number | null }): Primitive[] => {
  const half = (r.figures.beamSpacingM.value ?? 7.112) / 2
  const top = saddleM ?? 0.75
  return [-half, half].map((x) => outline([x - 0.15, 0, x + 0.15, 0, x + 0.1, top, x - 0.1, top], { stroke: 'ink', weight: 'gear', fill: 'sheet' }))
}
