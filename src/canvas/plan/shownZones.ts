import type { SiteModel, Stage } from '../../derive/types.ts'
import { zonesAt } from '../../derive/zones.ts'
import type { Localized } from '../../messages/localized.ts'
import type { ZoneClass } from '../../scene/parts.ts'

/** What the plan needs of a zone. Rings in the site frame, flat points. */
export interface ShownZone {
  key: string
  zoneClass: ZoneClass
  name: Localized
  /** Tasks that may be inside. */
  mayEnter: readonly string[]
  rings: readonly (readonly number[])[]
  /** An input is missing: drawn at its largest default, dashed, with a question mark. */
  isUnknown: boolean
}

const kept = new WeakMap<SiteModel, Map<string, readonly ShownZone[]>>()

/** Zones of a phase at a joint, kept per site; of a nose on its way only the last, for it moves with every frame. */
export const shownZones = (site: SiteModel, stage: Stage): readonly ShownZone[] => {
  const key = stage.tipM === undefined ? `${stage.phase}.${stage.joint}` : `nose ${stage.joint} ${stage.tipM}`
  let ofSite = kept.get(site)
  if (ofSite === undefined) kept.set(site, (ofSite = new Map()))
  let zones = ofSite.get(key)
  if (zones === undefined) {
    zones = zonesAt(site, stage).map((zone) => ({
      key: zone.key, zoneClass: zone.zoneClass, name: zone.name, mayEnter: zone.mayEnter, isUnknown: zone.missing.length > 0,
      rings: zone.rings.map((ring) => ring.flatMap(({ xM, yM }) => [xM, yM])),
    }))
    if (stage.tipM !== undefined) for (const old of ofSite.keys()) if (old.startsWith('nose')) ofSite.delete(old)
    ofSite.set(key, zones)
  }
  return zones
}

/** Whether two zones are drawn alike. */
export const zoneLooksSame = (a: ShownZone, b: ShownZone): boolean =>
  a === b || (a.key === b.key && a.zoneClass === b.zoneClass && a.isUnknown === b.isUnknown && a.rings.length === b.rings.length
    && a.rings.every((ring, i) => ring.length === b.rings[i]!.length && ring.every((value, j) => value === b.rings[i]![j])))
