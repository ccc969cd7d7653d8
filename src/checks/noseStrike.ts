/** Where a nose that strikes a stand is more than a stand to be set up again. */
import type { Mechanics } from '../derive/mechanics.ts'
import { noseStrikesOf } from '../derive/standTips.ts'
import { stringPullOf } from '../derive/stringPull.ts'
import type { SiteModel, SupportView } from '../derive/types.ts'
import { distanceBetween } from '../geometry/distance.ts'
import type { Localized } from '../messages/localized.ts'
import { obstaclesOf } from './gearBodies.ts'
import { nameOf } from './make.ts'

/** What stands this near a struck stand is hit by it or by the pipe: 10 ft, as far as the zone ahead of the nose reaches aside. */
const NEAR_M = 3.048

/**
 * What makes a strike at this stand dangerous, as the end of a sentence; null: nothing known does. A stand that the pull would
 * tip, a crew spot of the pull or an open way within 10 ft. House rule, common practice, no published source.
 */
export function strikesOthers(site: SiteModel, view: SupportView, mechanics: Mechanics): Localized | null {
  if (view.kind !== 'stand') return null
  const at = site.atRunning(view.runningM, view.offsetM)
  const spot = [...site.placed.values()].find(({ record, xM, yM }) => record.kind === 'crew' && record.phases.includes('pull') && Math.hypot(xM - at.xM, yM - at.yM) <= NEAR_M)
  if (spot !== undefined) return { en: 'beside a crew spot; the strike is the reason, the 10 ft of the zone ahead of the nose are a house rule', es: 'junto a un puesto; la razón es el golpe, los 10 pies de la zona delante de la punta son regla de la casa' }
  const way = obstaclesOf(site, ['walkway', 'road']).find(({ id, shape, halfWidthM }) => {
    const record = site.placed.get(id)?.record
    const isOpen = (record?.kind === 'walkway' && record.access === 'open') || (record?.kind === 'road' && record.traffic === 'open')
    return isOpen && distanceBetween({ kind: 'point', point: at }, shape).distanceM - halfWidthM <= NEAR_M
  })
  if (way !== undefined) {
    const name = nameOf(site, way.id)
    return { en: `beside ${name.en}, which is open; the strike is the reason, the 10 ft of the zone ahead of the nose are a house rule`, es: `junto a ${name.es}, que está abierto; la razón es el golpe, los 10 pies de la zona delante de la punta son regla de la casa` }
  }
  const { joints, missing } = stringPullOf(site)
  const tipsAtN = noseStrikesOf(site, mechanics).find((one) => one.view.key === view.key)?.tipsAtN ?? null
  if (missing.length > 0 || tipsAtN === null) return null
  return joints.some(({ needN }) => needN > tipsAtN) ? { en: 'and the pull tips it over', es: 'y el tiro lo vuelca' } : null
}
