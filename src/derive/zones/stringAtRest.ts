import { enter } from './mayEnter.ts'
import { thermalChangeM } from '../../engine/pipe/thermal.ts'
import type { MissingInput } from '../types.ts'
import { noseAt, odOf, pipeMissing, stripAlong } from './shapes.ts'
import type { ZoneDefinition } from './zone.ts'

const SIDE_M = 1.8288
const END_M = 0.9144
const GAP_FACTOR = 1.25
/** Wall between a cold night and the sun, where nobody has said: 60 °F of swing and more. */
const LARGEST_SWING_C = 50

/** Z-21. A string at rest rolls, crawls and grows: 6 ft beside it, and past its ends 1.25 times its growth and 3 ft. */
export const stringAtRest: ZoneDefinition = {
  id: 'Z-21',
  name: { en: 'string at rest', es: 'sarta en reposo' },
  sentence: { en: 'The string grows and crawls with the sun, even when nobody touches it. Don’t sit on it and don’t block the ends.', es: 'La sarta crece y camina con el sol aunque nadie la toque. No se siente encima ni bloquee las puntas.' },
  follows: 'noseAndPhase',
  classes: { fuse: 'AMBER', rest: 'AMBER', tieIn: 'AMBER' },
  mayEnter: [enter('operator'), enter('infeedHand'), enter('exitHand'), enter('noseSpotter')],
  source: { class: 'mechanics', cite: 'growth: PPI Handbook, chapter 3 (expansion from memory); 6 ft, 3 ft and 1.25 are house rules' },
  size: { en: '6 ft each side; past the ends 1.25 times the growth, and 3 ft', es: '6 pies a cada lado; más allá de las puntas 1.25 veces la dilatación, y 3 pies' },
  shapes: (site, stage) => {
    const { toM } = noseAt(site, stage)
    if (site.run === null || toM <= 0) return []
    const swingC = site.job.temperatureSwingC.value
    const growth = thermalChangeM({ material: site.pipe.properties?.material ?? null, lengthM: toM, temperatureChangeC: Math.abs(swingC ?? LARGEST_SWING_C) })
    const endM = GAP_FACTOR * (growth.status === 'ok' ? growth.value : 0) + END_M
    const missing: MissingInput[] = [...pipeMissing(site), ...(swingC === null ? [{ recordId: site.job.id, path: 'temperatureSwingC.value', label: { en: 'swing of the wall temperature', es: 'variación de temperatura de la pared' } }] : [])]
    const halfWidthM = odOf(site) / 2 + SIDE_M
    // At the machine the string is held in the jaws; past the machine it has no end to grow from.
    const fromM = stage.phase === 'fuse' ? site.jaws.outerClampM : 0 - endM
    return [{ ownerId: site.run.id, rings: [stripAlong(site, [{ runningM: fromM, halfWidthM }, { runningM: toM + endM, halfWidthM }])], itemIds: [], missing }]
  },
}
