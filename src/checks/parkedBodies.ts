/** Strings parked beside the line as what they cover in plan: bodies that must be clear of things, and things that others must be clear of. */
import { parkedStringsOf } from '../derive/strings.ts'
import type { SiteModel } from '../derive/types.ts'
import { runStripBeside, type GearBody, type SiteObstacle } from './gearBodies.ts'

const nameOfString = (name: string): GearBody['name'] => ({ en: `parked string ${name}`, es: `sarta ${name} estacionada` })

export const parkedBodies = (site: SiteModel): GearBody[] => parkedStringsOf(site).map(({ view, offsetM, fromM, toM }) => ({
  role: 'parked', itemIds: [view.record.id], name: nameOfString(view.name), points: runStripBeside(site, { fromM, toM, offsetM, halfWidthM: site.pipe.odM! / 2 }),
}))

export const parkedObstacles = (site: SiteModel): SiteObstacle[] => parkedBodies(site).map(({ itemIds, name, points }) => ({ id: itemIds[0]!, kind: 'string', name, shape: { kind: 'polygon', points }, halfWidthM: 0 }))
