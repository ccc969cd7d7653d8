/** Zones of the whole job under one number each: those that say the same thing share it. */
import { stagesOf } from '../../derive/stages/stagesOf.ts'
import type { SiteModel } from '../../derive/types.ts'
import { zonesAt, type Zone } from '../../derive/zones.ts'
import type { Lettering } from '../lettering.ts'
import { localizedOf } from '../../messages/ui/text.ts'
import type { Phase } from '../../scene/parts.ts'
import { sheetWords } from '../words.ts'
import { heading, paragraph } from './blocks.ts'
import type { Section } from './flow.ts'
import type { CrewReader } from './reader.ts'
import { BOLD } from './text.ts'

export interface NumberedZone {
  number: number
  /** The first of those that share the number. */
  zone: Zone
  /** All of their outlines; a zone that moves with the nose is drawn as in its last stage. */
  rings: Zone['rings']
  isUnknown: boolean
}

/**
 * Zones of every phase, RED first, then as the catalogue has them. One look a phase, at its last stage: that is where the string
 * is longest.
 */
export const numberedZones = (site: SiteModel): readonly NumberedZone[] => {
  const lastOf = new Map<Phase, number>()
  for (const { phase, joint } of stagesOf(site)) lastOf.set(phase, joint ?? Math.max(1, site.sticks.stickCount - 1))
  const byKey = new Map<string, Zone>()
  for (const [phase, joint] of lastOf) for (const zone of zonesAt(site, { phase, joint })) byKey.set(zone.key, zone)
  const shared = new Map<string, Zone[]>()
  for (const zone of byKey.values()) {
    const says = `${zone.zoneClass}|${zone.name.en}|${zone.sentence.en}`
    shared.set(says, [...(shared.get(says) ?? []), zone])
  }
  const order = ['RED', 'AMBER', 'BLUE'] as const
  return [...shared.values()]
    .toSorted((a, b) => order.indexOf(a[0]!.zoneClass) - order.indexOf(b[0]!.zoneClass))
    .map((zones, i) => ({ number: i + 1, zone: zones[0]!, rings: zones.flatMap(({ rings }) => rings), isUnknown: zones.some(({ missing }) => missing.length > 0) }))
}

export const zonesSection = (zones: readonly NumberedZone[], reader: CrewReader, lettering: Lettering): Section => ({
  as: 'columns',
  blocks: (widthPt) => [
    heading(reader.say('zones'), widthPt, lettering),
    ...(zones.length === 0 ? paragraph(reader.say('zonesNone'), widthPt, lettering) : zones.flatMap((numbered) => zoneBlocks(numbered, widthPt, reader, lettering))),
  ],
})

const INDENT_PT = 20

const zoneBlocks = ({ number, zone, isUnknown }: NumberedZone, widthPt: number, reader: CrewReader, lettering: Lettering): ReturnType<typeof paragraph> => {
  const phases = zone.phases.map((phase) => reader.local(localizedOf(`phase_${phase}`))).join(', ')
  const name = reader.say('zoneLine', { name: reader.local(zone.name), zoneClass: reader.local(sheetWords[zone.zoneClass]) }) + (isUnknown ? ` (? ${reader.say('zoneUnknown')})` : '')
  const indented = { indentPt: INDENT_PT }
  return [
    ...paragraph(name, widthPt, lettering, { look: BOLD, ...indented, mark: (x, baseline) => lettering.line(String(number), x, baseline, BOLD) }).map((block) => ({ ...block, isHead: true })),
    ...reader.localLines(zone.sentence).flatMap((text) => paragraph(text, widthPt, lettering, indented)),
    ...paragraph(reader.say('zoneLive', { phases }), widthPt, lettering, indented),
  ]
}
