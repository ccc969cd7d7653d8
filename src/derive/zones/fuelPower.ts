import { enter } from './mayEnter.ts'
import { phases } from '../../scene/parts.ts'
import type { GeneratorRecord } from '../../scene/kinds/generator.ts'
import { aroundItem, circleAt, figuresOr, lacking } from './shapes.ts'
import type { ZoneDefinition, ZoneShape } from './zone.ts'

const NO_IGNITION_M = 7.62
const HOT_M = 0.9144

/** Z-20. Fuel and generator: 25 ft without ignition round fuel, 3 ft round a running engine. Without its size fuel is taken as a large tank. */
export const fuelPower: ZoneDefinition = {
  id: 'Z-20',
  name: { en: 'fuel and generator', es: 'combustible y generador' },
  sentence: { en: 'Engine off, cooled, then fuel. Never run the generator inside or right beside the tent: the gas has no smell and it kills.', es: 'Motor apagado y frío antes de poner combustible. Nunca ponga el generador dentro o pegado a la carpa: el gas no huele y mata.' },
  classes: Object.fromEntries(phases.map((phase) => [phase, 'AMBER' as const])),
  mayEnter: [enter('operator', { en: 'to fuel, engine off and cooled', es: 'para poner combustible, motor apagado y frío' })],
  source: { class: 'houseRule', cite: '29 CFR 1926.150 and 1926.152 for extinguishers; 25 ft and 3 ft common practice, no published source' },
  size: { en: '25 ft round fuel without ignition, 3 ft round the engine', es: '25 pies alrededor del combustible sin ignición, 3 pies alrededor del motor' },
  shapes: (site) => [...site.placed.values()].flatMap((item): ZoneShape[] => {
    if (item.kind === 'fuel') {
      const { lengthM, widthM, missing } = figuresOr(item, { lengthM: 3, widthM: 2 })
      return [{ ownerId: item.id, rings: [circleAt(item, NO_IGNITION_M + Math.hypot(lengthM, widthM) / 2)], itemIds: [item.id], keepsOut: 'gear', missing }]
    }
    if (item.kind !== 'generator') return []
    const { isRunning } = item.record as GeneratorRecord
    if (isRunning === false) return []
    const size = figuresOr(item, { lengthM: 3, widthM: 1.5 })
    return [{ ownerId: item.id, rings: aroundItem(item, size, HOT_M), itemIds: [item.id], missing: [...size.missing, ...(isRunning === null ? [lacking(item, 'isRunning')] : [])] }]
  }),
}
