import { enter } from './mayEnter.ts'
import { phases } from '../../scene/parts.ts'
import type { MissingInput } from '../types.ts'
import { itemsOf } from '../itemsOf.ts'
import { aroundLine } from './shapes.ts'
import type { ZoneDefinition } from './zone.ts'

const TYPICAL_WIDTH_M = 1.5

/** Z-17. A way the public walks: kept clear of gear while it is open. A way closed or diverted is no longer the public's. */
export const publicWalk: ZoneDefinition = {
  id: 'Z-17',
  name: { en: 'public walkway', es: 'paso público' },
  sentence: { en: 'People will walk through anything. If there’s no fence and no friendly face, it isn’t closed.', es: 'La gente pasa por donde sea. Si no hay cerca ni alguien avisando, no está cerrado.' },
  classes: Object.fromEntries(phases.map((phase) => [phase, 'BLUE' as const])),
  mayEnter: [enter('marshal')],
  keepsOut: 'gear',
  source: { class: 'published', cite: 'MUTCD Part 6 and PROWAG, from memory, confirm: 4 ft clear, a passing place each 200 ft' },
  size: { en: 'the way itself', es: 'el paso mismo' },
  askedBy: 'public-way',
  shapes: (site) => itemsOf(site, 'walkway').flatMap((item) => {
    const { points, figures, access } = item.record
    if (access === 'closed' || access === 'diverted') return []
    const missing: MissingInput[] = [
      ...(access === null ? [{ recordId: item.id, path: 'access', label: { en: 'whether the walkway is open', es: 'si el paso está abierto' } }] : []),
      ...(figures.widthM.value === null ? [{ recordId: item.id, path: 'figures.widthM.value', label: { en: 'width of the walkway', es: 'ancho del paso' } }] : []),
    ]
    return [{ ownerId: item.id, rings: aroundLine(points, (figures.widthM.value ?? TYPICAL_WIDTH_M) / 2), itemIds: [item.id], missing }]
  }),
}
