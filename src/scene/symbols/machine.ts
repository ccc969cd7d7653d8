import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import type { MachineRecord } from '../kinds/machine.ts'
import { centredBox, outline } from './basic.ts'

export const machineFootprint = (r: MachineRecord): number[] => centredBox(r.figures.lengthM.value ?? 3.35, r.figures.widthM.value ?? 1.9)

export const machinePlan = (r: MachineRecord, _context: SymbolContext): Primitive[] => [outline(machineFootprint(r), { stroke: 'ink', weight: 'gear', fill: 'sheet' })]

export const machineSection = (r: MachineRecord, _context: SymbolContext & { saddleM: number | null }): Primitive[] => {
  const half = (r.figures.lengthM.value ?? 3.35) / 2
  return [outline([-half, 0, half, 0, half, 0.5, -half, 0.5], { stroke: 'ink', weight: 'gear', fill: 'sheet' })]
}
