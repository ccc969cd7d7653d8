import type { LoaderRecord } from '../../scene/kinds/loader.ts'
import type { ZoneDefinition } from './zone.ts'
import { circleAt } from './shapes.ts'

const MARGIN_M = 0.9144

/** Z-07. What a stick carried crosswise sweeps when the loader turns: R = √((stick/2)² + reach²) + 3 ft about the loader. */
export const loaderSweep: ZoneDefinition = {
  id: 'Z-07',
  name: { en: 'loader swing', es: 'giro del cargador' },
  sentence: { en: 'A pipe on a loader sweeps a circle bigger than a house. If you can’t see the driver’s eyes, he can’t see you.', es: 'Un tubo en el cargador barre un círculo más grande que una casa. Si usted no le ve los ojos al operador, él no lo ve a usted.' },
  classes: { setUp: 'RED', offload: 'RED', load: 'RED', move: 'RED', tieIn: 'RED' },
  mayEnter: ['loaderOperator'],
  source: { class: 'houseRule', cite: 'circle from mechanics; 3 ft common practice, no published source' },
  size: { en: 'half a stick and the reach, and 3 ft', es: 'medio tubo y el alcance, y 3 pies' },
  shapes: (site) => [...site.placed.values()].filter(({ kind }) => kind === 'loader').map((item) => {
    const stickM = site.sticks.stickLengthM
    const reachM = (item.record as LoaderRecord).figures.reachM.value
    const radiusM = Math.hypot((stickM ?? 15.24) / 2, reachM ?? 4.27) + MARGIN_M
    const missing = [
      ...(stickM === null ? [{ recordId: site.job.id, path: 'stickLengthM', label: { en: 'stick length', es: 'largo del tubo' } }] : []),
      ...(reachM === null ? [{ recordId: item.id, path: 'figures.reachM.value', label: { en: 'reach to the stick', es: 'alcance al tubo' } }] : []),
    ]
    return { ownerId: item.id, rings: [circleAt(item, radiusM)], itemIds: [item.id], missing }
  }),
}
