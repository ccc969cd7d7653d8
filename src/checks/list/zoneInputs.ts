import type { MissingInput, SiteModel } from '../../derive/types.ts'
import { pullerOperatorMayEnter } from '../../derive/zones/rope.ts'
import type { Localized } from '../../messages/localized.ts'
import { kindOf } from '../../scene/kinds/index.ts'
import type { Phase } from '../../scene/parts.ts'
import { defineCheck, finding, houseRule, listOf, say } from '../make.ts'
import { zoneStagesOf } from '../../derive/zoneStages.ts'

const ID = 'zone-inputs'

interface Lack {
  missing: Map<string, MissingInput>
  zones: Map<string, Localized>
  phases: Set<Phase>
}

export const zoneInputs = defineCheck({
  id: ID,
  title: { en: 'What zones need to know', es: 'Lo que las zonas necesitan saber' },
  cost: 'slow',
  run: (site) => [...lacksByKind(site)].map(([kind, lack]) => {
    const missing = [...lack.missing.values()]
    const name = kindOf(kind)?.name ?? (kind === 'job' ? { en: 'job', es: 'obra' } : { en: 'set-up', es: 'montaje' })
    return finding(ID, {
      level: 'CHECK', about: kind, missing, items: [...new Set(missing.map(({ recordId }) => recordId))].filter((id) => site.placed.has(id)), source: houseRule, phases: [...lack.phases],
      what: say('{zones}: drawn at the largest usual size, because the {kind} lacks {inputs}.', '{zones}: dibujada con el mayor tamaño usual, porque a {kind} le falta {inputs}.', { zones: listOf([...lack.zones.values()]), kind: name, inputs: listOf(unique(missing.map(({ label }) => label))) }),
      move: say('Give it; until then nothing is judged by that zone.', 'Délo; hasta entonces nada se juzga con esa zona.'),
    })
  }),
})

const unique = (labels: readonly Localized[]): Localized[] => [...new Map(labels.map((label) => [label.en, label])).values()]

/** Missing inputs by kind of the record that lacks them. What a check of its own asks for (overhead lines, trenches, public ways) is left to it. */
function lacksByKind(site: SiteModel): Map<string, Lack> {
  const lacks = new Map<string, Lack>()
  const take = (input: MissingInput, zone: { id: string; name: Localized }, phase: Phase): void => {
    const kind = site.document.records[input.recordId]?.kind ?? 'setUp'
    const lack = lacks.get(kind) ?? { missing: new Map(), zones: new Map(), phases: new Set() }
    lacks.set(kind, lack)
    lack.missing.set(`${input.recordId}:${input.path}`, input)
    lack.zones.set(zone.id, zone.name)
    lack.phases.add(phase)
  }
  for (const { stage, zones } of zoneStagesOf(site)) for (const zone of zones) if (zone.askedBy === null) for (const input of zone.missing) take(input, zone, stage.phase)
  // Whether the cab is guarded decides who may sit in the rope's line; the rope's zone itself is known without it.
  for (const { record } of site.placed.values()) {
    if (record.kind !== 'puller') continue
    for (const input of pullerOperatorMayEnter(record).missing) take(input, { id: 'Z-09', name: { en: 'rope tight', es: 'cuerda tensa' } }, 'pull')
  }
  return lacks
}
