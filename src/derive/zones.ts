/** Zones of a stage: from the gear, with what was changed by hand, and those drawn by hand. */
import { recordsOf } from '../scene/document.ts'
import type { Phase } from '../scene/parts.ts'
import type { ZoneChangeRecord } from '../scene/records/beside.ts'
import type { SiteModel, Stage } from './types.ts'
import { noseAt, widened } from './zones/shapes.ts'
import { zoneCatalogue } from './zones/catalogue.ts'
import type { Zone, ZoneDefinition, ZoneShape } from './zones/zone.ts'

export type { CrewRole, Zone } from './zones/zone.ts'

/**
 * Zones live at a stage, catalogue order first, hand-drawn last. Derived zones are worked out, never stored; a zone
 * change of the document replaces class, phases or outline, or widens it, and its reason is carried along.
 * Cost: linear in the items. Pure.
 */
export function zonesAt(site: SiteModel, stage: Stage): readonly Zone[] {
  const changes = new Map(recordsOf(site.document, 'zoneChange').map((change) => [change.zoneKey, change]))
  // Only a change by hand makes a zone live in a phase of which its definition says nothing.
  const live = zoneCatalogue.filter(({ classes }) => changes.size > 0 || classes[stage.phase] !== undefined)
  const derived = live.flatMap((definition) => shapesOf(site, definition, stage).flatMap((shape) => {
    const zone = zoneOf(definition, shape, changes.get(`${definition.id}@${shape.ownerId}`) ?? null, stage.phase)
    return zone === null ? [] : [zone]
  }))
  return [...derived, ...handDrawn(site, stage.phase)]
}

const made = new WeakMap<SiteModel, Map<string, readonly ZoneShape[]>>()

/** Shapes follow what their definition names of a stage, so most stages share them. A nose on its way is not kept. */
function shapesOf(site: SiteModel, definition: ZoneDefinition, stage: Stage): readonly ZoneShape[] {
  const { follows } = definition
  if (stage.tipM !== undefined && follows !== undefined) return definition.shapes(site, stage)
  const known = made.get(site) ?? new Map<string, readonly ZoneShape[]>()
  made.set(site, known)
  const { fromM, toM } = follows === undefined ? { fromM: 0, toM: 0 } : noseAt(site, stage)
  const key = `${definition.id} ${follows === 'noseAndPhase' ? stage.phase : ''} ${fromM} ${toM}`
  let shapes = known.get(key)
  if (shapes === undefined) known.set(key, (shapes = definition.shapes(site, stage)))
  return shapes
}

function zoneOf(definition: ZoneDefinition, shape: ZoneShape, change: ZoneChangeRecord | null, phase: Phase): Zone | null {
  const phases = change?.phases ?? (Object.keys(definition.classes) as Phase[])
  const zoneClass = change?.zoneClass ?? shape.zoneClass ?? definition.classes[phase] ?? 'RED'
  if (!phases.includes(phase)) return null
  const { name, source, id } = definition
  const entering = [...definition.mayEnter, ...(shape.mayEnter ?? [])]
  return {
    key: `${id}@${shape.ownerId}`, id, name, source, zoneClass, phases,
    sentence: shape.sentence ?? definition.sentence,
    size: shape.size ?? definition.size,
    rings: change === null ? shape.rings : changedRings(shape, change),
    itemIds: shape.itemIds,
    entering, mayEnter: entering.map(({ task }) => task),
    // Made BLUE by hand it keeps the public out, and the crew works in it.
    keepsOut: change?.zoneClass === 'BLUE' ? 'public' : (shape.keepsOut ?? definition.keepsOut ?? 'people'),
    missing: change?.points === null || change === null ? (shape.missing ?? []) : [],
    askedBy: definition.askedBy ?? null,
    changedBecause: change?.reason ?? null,
  }
}

function changedRings(shape: ZoneShape, change: ZoneChangeRecord): Zone['rings'] {
  if (change.points !== null) return [change.points]
  const { marginM } = change
  if (marginM === null || marginM <= 0) return shape.rings
  return shape.rings.flatMap((ring) => widened(ring, marginM))
}

function handDrawn(site: SiteModel, phase: Phase): Zone[] {
  return recordsOf(site.document, 'zone').filter((zone) => zone.phases.includes(phase)).map((zone) => ({
    key: `hand@${zone.id}`, id: 'hand', name: { en: zone.name || 'zone by hand', es: zone.name || 'zona a mano' },
    sentence: zone.sentence === '' ? { en: 'Keep out while it is live.', es: 'No entre mientras esté activa.' } : { en: zone.sentence, es: zone.sentence },
    zoneClass: zone.zoneClass, phases: zone.phases, rings: [zone.points], itemIds: [zone.id], mayEnter: [], entering: [], askedBy: null, keepsOut: zone.zoneClass === 'BLUE' ? ('public' as const) : ('people' as const),
    source: { class: 'houseRule' as const, cite: 'drawn by hand' }, missing: [], changedBecause: null, size: { en: 'as drawn', es: 'según el dibujo' },
  }))
}
