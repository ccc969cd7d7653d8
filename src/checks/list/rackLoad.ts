import type { MissingInput, PlacedItem, SiteModel } from '../../derive/types.ts'
import type { RackRecord } from '../../scene/kinds/rack.ts'
import type { Finding, Remedy } from '../finding.ts'
import { isLocked, isUnder } from '../gearBodies.ts'
import { sourceOf, type Limits } from '../limits.ts'
import { atRun, defineCheck, finding, nameOf, plate, q, say } from '../make.ts'

const ID = 'rack-load'

export const rackLoad = defineCheck({
  id: ID,
  title: { en: 'Pipe on the rack', es: 'Tubos en la cama' },
  cost: 'quick',
  run: (site, { limits }) => [...site.placed.values()].flatMap((item) => (item.record.kind === 'rack' && item.record.stickCount > 0 ? ofRack(site, item, item.record, limits) : [])),
})

function ofRack(site: SiteModel, item: PlacedItem, rack: RackRecord, limits: Limits): Finding[] {
  const limit = limits.limit('rack-load')
  const { ratedLoadN, capacityCount } = rack.figures
  const { properties } = site.pipe
  const { stickLengthM } = site.sticks
  const common = { items: [rack.id], phases: ['load'] as const, where: item.runningM === null ? null : atRun(item.runningM, null, item.offsetM ?? 0) }
  const found: Finding[] = []
  if (capacityCount.value !== null && rack.stickCount > capacityCount.value) {
    found.push(finding(ID, {
      ...common, about: `${rack.id}:count`, level: 'FIX', measured: q('count', rack.stickCount), limit: q('count', capacityCount.value), source: capacityCount.basis === 'plate' ? plate('sticks the rack holds, from its plate') : { class: 'houseRule', cite: 'typical figure, replace with the plate' },
      what: say('{rack}: {count} sticks on it, it holds {most}.', '{rack}: {count} tubos encima, caben {most}.', { rack: nameOf(site, rack.id), count: rack.stickCount, most: capacityCount.value }),
      move: say('Keep the rest in the stack.', 'Deje el resto en la pila.'),
      remedy: fewer(site, rack.id, capacityCount.value),
    }))
  }
  const missing: MissingInput[] = [
    ...(ratedLoadN.value === null ? [{ recordId: rack.id, path: 'figures.ratedLoadN.value', label: { en: 'rated load of the rack', es: 'carga nominal de la cama' } }] : []),
    ...(properties === null ? site.pipe.missing.filter(({ path }) => path === 'pipe') : []),
    ...(stickLengthM === null ? site.sticks.missing.filter(({ path }) => path === 'stickLengthM') : []),
  ]
  if (ratedLoadN.value === null || properties === null || stickLengthM === null) {
    found.push(finding(ID, {
      ...common, about: `${rack.id}:unknown`, level: 'CHECK', missing, source: sourceOf(limit),
      what: say('{rack}: whether it carries {count} sticks is not known.', '{rack}: no se sabe si aguanta {count} tubos.', { rack: nameOf(site, rack.id), count: rack.stickCount }),
      move: say('Read its plate.', 'Lea su placa.'),
    }))
    return found
  }
  const stickN = properties.lineLoadNPerM * stickLengthM
  const loadN = rack.stickCount * stickN
  const mostN = (limit.fix ?? 1) * ratedLoadN.value
  const values = { rack: nameOf(site, rack.id), count: rack.stickCount, load: q('force', loadN), plate: q('force', ratedLoadN.value) }
  const measures = { about: rack.id, measured: q('force', loadN), limit: q('force', mostN), source: sourceOf(limit) }
  if (!isUnder(mostN, loadN)) return found.length > 0 ? found : [finding(ID, { ...common, ...measures, level: 'met', what: say('{rack}: {count} sticks weigh {load}, plate {plate}.', '{rack}: {count} tubos pesan {load}, placa {plate}.', values) })]
  const fit = Math.floor(mostN / stickN + 1e-9)
  found.push(finding(ID, {
    ...common, ...measures, level: 'FIX',
    what: say('{rack}: {count} sticks weigh {load}, its plate says {plate}.', '{rack}: {count} tubos pesan {load}, su placa dice {plate}.', values),
    move: say('{fit} sticks at most.', '{fit} tubos como máximo.', { fit }),
    remedy: fewer(site, rack.id, fit),
  }))
  return found
}

const fewer = (site: SiteModel, id: string, count: number): Remedy | null =>
  isLocked(site, id) ? null : { command: 'setField', args: { ids: [id], path: 'stickCount', value: Math.max(0, Math.floor(count)) }, label: say('Load {count} sticks', 'Cargar {count} tubos', { count: Math.max(0, Math.floor(count)) }) }
