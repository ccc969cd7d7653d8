import { overheadClearanceM } from '../../engine/safety/overheadClearance.ts'
import { overheadRulesOf } from '../../engine/safety/tables.ts'
import { phases, valueFromZero } from '../../scene/parts.ts'
import type { Localized } from '../../messages/localized.ts'
import { footM } from '../../units/factors.ts'
import type { MissingInput, SiteModel } from '../types.ts'
import { itemsOf } from '../itemsOf.ts'
import type { ZoneDefinition } from './zone.ts'
import { aroundLine } from './shapes.ts'

const sentence = (en: string, es: string): Localized => ({
  en: `Power jumps. Today nobody and nothing, boom, load or pipe, goes nearer than ${en} to that wire.`,
  es: `La corriente brinca. Hoy nadie ni nada, ni pluma ni carga ni tubo, se acerca a menos de ${es} de ese cable.`,
})

/** Z-16. Overhead line and its clearance in plan; keeps machines, booms and loads out. The clearance in height is a check of its own. */
export const overhead: ZoneDefinition = {
  id: 'Z-16',
  name: { en: 'overhead line', es: 'línea eléctrica aérea' },
  sentence: sentence('the distance on the plan', 'la distancia del plano'),
  classes: Object.fromEntries(phases.map((phase) => [phase, 'RED' as const])),
  mayEnter: [],
  keepsOut: 'gear',
  askedBy: 'overhead-line',
  source: { class: 'published', cite: '29 CFR 1926.1408 Table A; 29 CFR 1926.600(a)(6), from memory, confirm; the larger' },
  size: { en: 'clearance by voltage each side', es: 'distancia según voltaje a cada lado' },
  shapes: (site) => itemsOf(site, 'overheadLine').map((item) => {
    const record = item.record
    const voltageV = valueFromZero(record.figures.voltageV)
    const missing: MissingInput[] = [
      ...(voltageV === null ? [{ recordId: record.id, path: 'figures.voltageV.value', label: { en: 'voltage', es: 'voltaje' } }] : []),
      ...(record.figures.lowestHeightM.value === null ? [{ recordId: record.id, path: 'figures.lowestHeightM.value', label: { en: 'lowest wire above ground', es: 'cable más bajo sobre el suelo' } }] : []),
    ]
    const { clearanceM, triggerM } = overheadClearanceM(voltageV === null ? null : voltageV / 1000, overheadRulesOf(site.layout.profile))
    const keptM = clearanceM ?? triggerM
    return { ownerId: record.id, rings: aroundLine(record.points, keptM), itemIds: [record.id], missing, sentence: spoken(site, keptM) }
  }),
}

/** The distance as the reader says it, rounded up: to the foot, or to a tenth of a metre. */
function spoken(site: SiteModel, keptM: number): Localized {
  if (site.layout.displayUnits === 'feetInches') {
    const feet = Math.ceil(keptM / footM - 1e-9)
    return sentence(`${feet} feet`, `${feet} pies`)
  }
  const metres = Math.ceil(keptM * 10 - 1e-9) / 10
  return sentence(`${metres} meters`, `${metres} metros`)
}
