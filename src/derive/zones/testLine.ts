import type { MissingInput } from '../types.ts'
import { noseAt, odOf, pipeMissing, stripAlong } from './shapes.ts'
import type { ZoneDefinition } from './zone.ts'

/** Drawn where no engineer has given a distance yet: 25 ft. */
const UNSAID_M = 7.62

/** Z-23. A line under test pressure: the whole of it and past both ends by the distance the engineer gives. No air test by default. */
export const testLine: ZoneDefinition = {
  id: 'Z-23',
  name: { en: 'line under test', es: 'línea en prueba' },
  sentence: { en: 'A line under test is not just full of water, it’s full of push. Stay out until the gauge reads zero.', es: 'Una línea en prueba no solo tiene agua, tiene presión. Nadie entra hasta que el manómetro marque cero.' },
  follows: 'nose',
  classes: { tieIn: 'RED' },
  mayEnter: [],
  source: { class: 'published', cite: 'water test: ASTM F2164, from memory, confirm; the distance is the engineer’s' },
  size: { en: 'the distance the engineer gives, round the line and its ends', es: 'la distancia que da el ingeniero, alrededor de la línea y sus puntas' },
  shapes: (site, stage) => {
    const { test, testStandOffM } = site.job
    const { toM } = noseAt(site, stage)
    if (site.run === null || toM <= 0 || test === 'none') return []
    const missing: MissingInput[] = [
      ...pipeMissing(site),
      ...(test === null ? [{ recordId: site.job.id, path: 'test', label: { en: 'whether the line is tested here', es: 'si la línea se prueba aquí' } }] : []),
      ...(test !== null && testStandOffM.value === null ? [{ recordId: site.job.id, path: 'testStandOffM.value', label: { en: 'distance from the line under test', es: 'distancia a la línea en prueba' } }] : []),
    ]
    const awayM = testStandOffM.value ?? UNSAID_M
    const halfWidthM = odOf(site) / 2 + awayM
    return [{ ownerId: site.run.id, rings: [stripAlong(site, [{ runningM: 0 - awayM, halfWidthM }, { runningM: toM + awayM, halfWidthM }])], itemIds: [], missing }]
  },
}
