import { kindOf, type PlacedRecord } from '../../scene/kinds/index.ts'
import { placedByGear, type GearItem } from '../../scene/gear.ts'
import type { SiteModel } from '../../derive/types.ts'
import type { Finding, Source } from '../finding.ts'
import { defineCheck, finding, listOf, nameOf, q, say } from '../make.ts'

const ID = 'owned-gear'
const crewsList: Source = { class: 'jobRule', cite: 'the crew’s gear list' }

export const ownedGear = defineCheck({
  id: ID,
  title: { en: 'Gear placed and gear owned', es: 'Equipo puesto y equipo propio' },
  cost: 'quick',
  run: (site, { owned }) => {
    const counted = (owned ?? []).flatMap((item) => (item.count === null ? [] : [{ item, count: item.count }]))
    if (owned === null || counted.length === 0) return []
    const placed = placedByGear(site.document, owned)
    const found = counted.flatMap(({ item, count }): Finding[] => {
      const items = placed.get(item.id) ?? []
      return items.length > count ? [tooMany(site, item, { count, items })] : []
    })
    if (found.length > 0) return found
    return [finding(ID, { level: 'met', source: crewsList, measured: q('count', counted.reduce((sum, { item }) => sum + (placed.get(item.id)?.length ?? 0), 0)), limit: q('count', counted.reduce((sum, { count }) => sum + count, 0)), what: say('Of no counted gear more is placed than the crew owns.', 'De ningún equipo contado hay más puesto que el que tiene la cuadrilla.') })]
  },
})

/** What lies beyond the count are the last along the tape: those are drawn as far as the gear reaches. */
function tooMany(site: SiteModel, item: GearItem, { count, items }: { count: number; items: readonly PlacedRecord[] }): Finding {
  const alongTape = items.map(({ id }) => ({ id, runningM: site.placed.get(id)?.runningM ?? Number.MAX_VALUE })).toSorted((a, b) => a.runningM - b.runningM)
  const beyond = alongTape.slice(count).map(({ id }) => id)
  const kind = kindOf(item.kind)?.name ?? { en: item.kind, es: item.kind }
  const values = {
    kind, gear: item.name === '' ? kind : item.name, placed: items.length, owned: count, more: beyond.length,
    beyond: listOf(beyond.map((id) => nameOf(site, id))),
  }
  return finding(ID, {
    level: 'FIX', about: item.id, items: beyond, source: crewsList, phases: ['setUp'],
    measured: q('count', items.length), limit: q('count', count),
    what: say('{gear} ({kind}): {placed} placed, {owned} owned; {beyond} beyond that.', '{gear} ({kind}): {placed} puestos, {owned} propios; de más: {beyond}.', values),
    move: say('Get {more} more, or take them off the plan.', 'Consiga {more} más, o quítelos del plano.', values),
  })
}
