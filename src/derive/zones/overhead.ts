import { overheadClearanceM } from '../../engine/safety/overheadClearance.ts'
import { phases, valueFromZero } from '../../scene/parts.ts'
import type { OverheadLineRecord } from '../../scene/kinds/overheadLine.ts'
import type { MissingInput } from '../types.ts'
import type { ZoneDefinition } from './zone.ts'
import { aroundLine } from './shapes.ts'

/** Z-16. Overhead line and its clearance in plan; keeps machines, booms and loads out. The clearance in height is a check of its own. */
export const overhead: ZoneDefinition = {
  id: 'Z-16',
  name: { en: 'overhead line', es: 'línea eléctrica aérea' },
  sentence: { en: 'Power jumps. Nobody and nothing, boom, load or pipe, goes nearer to that wire than the distance on the plan.', es: 'La corriente brinca. Nadie ni nada, ni pluma ni carga ni tubo, se acerca a ese cable a menos de la distancia del plano.' },
  classes: Object.fromEntries(phases.map((phase) => [phase, 'RED' as const])),
  mayEnter: [],
  keepsOut: 'gear',
  source: { class: 'published', cite: '29 CFR 1926.1408 Table A; 29 CFR 1926.600(a)(6), from memory, confirm; the larger' },
  size: { en: 'clearance by voltage each side', es: 'distancia según voltaje a cada lado' },
  shapes: (site) => [...site.placed.values()].filter(({ kind }) => kind === 'overheadLine').map((item) => {
    const record = item.record as OverheadLineRecord
    const voltageV = valueFromZero(record.figures.voltageV)
    const missing: MissingInput[] = [
      ...(voltageV === null ? [{ recordId: record.id, path: 'figures.voltageV.value', label: { en: 'voltage', es: 'voltaje' } }] : []),
      ...(record.figures.lowestHeightM.value === null ? [{ recordId: record.id, path: 'figures.lowestHeightM.value', label: { en: 'lowest wire above ground', es: 'cable más bajo sobre el suelo' } }] : []),
    ]
    const { clearanceM, triggerM } = overheadClearanceM(voltageV === null ? null : voltageV / 1000)
    return { ownerId: record.id, rings: aroundLine(record.points, clearanceM ?? triggerM), itemIds: [record.id], missing }
  }),
}
