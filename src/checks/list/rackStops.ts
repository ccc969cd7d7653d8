import { rollInputs, rollOffM } from '../../derive/zones/rackRollOff.ts'
import type { MissingInput, PlacedItem, SiteModel } from '../../derive/types.ts'
import type { Localized } from '../../messages/localized.ts'
import type { RackRecord } from '../../scene/kinds/rack.ts'
import type { Finding, Remedy } from '../finding.ts'
import { isLocked } from '../gearBodies.ts'
import { sourceOf, type Limits } from '../limits.ts'
import { atRun, defineCheck, finding, houseRule, nameOf, q, say } from '../make.ts'

const ID = 'rack-stops'
type Hand = 'L' | 'R'
const sideName: Record<Hand, Localized> = { L: { en: 'left', es: 'izquierda' }, R: { en: 'right', es: 'derecha' } }
const pathOf = { L: 'stopsLeft', R: 'stopsRight' } as const

export const rackStops = defineCheck({
  id: ID,
  title: { en: 'Stops of the rack and what rolls off', es: 'Topes de la cama y lo que rueda' },
  cost: 'quick',
  run: (site, { limits }) => [...site.placed.values()].flatMap((item) => (item.record.kind === 'rack' ? ofRack(site, item, item.record, limits) : [])),
})

function ofRack(site: SiteModel, item: PlacedItem, rack: RackRecord, limits: Limits): Finding[] {
  const limit = limits.limit('rack-tilt')
  const tilt = rack.figures.tiltRatio.value
  const missing: MissingInput[] = [
    ...(['L', 'R'] as const).filter((side) => rack[pathOf[side]] === null).map((side) => ({ recordId: rack.id, path: pathOf[side], label: { en: `stops up, ${sideName[side].en}`, es: `topes puestos, ${sideName[side].es}` } })),
    ...(tilt === null && (rack.stopsLeft !== true || rack.stopsRight !== true) ? [{ recordId: rack.id, path: 'figures.tiltRatio.value', label: { en: 'cross tilt of the beams', es: 'inclinación de las vigas' } }] : []),
  ]
  const found: Finding[] = missing.length === 0 ? [] : [finding(ID, {
    level: 'CHECK', about: `${rack.id}:unknown`, missing, items: [rack.id], where: placeOf(item), source: sourceOf(limit), phases: ['load'],
    what: say('{rack}: nobody has said whether a pipe can roll off it.', '{rack}: nadie ha dicho si un tubo puede rodar de ella.', { rack: nameOf(site, rack.id) }),
    move: say('Pin stops up on both sides, and say so here.', 'Ponga topes con pasador en ambos lados, e indíquelo aquí.'),
    remedy: stopsUp(site, rack.id, missing.flatMap(({ path }) => (path === 'stopsLeft' ? ['L' as const] : path === 'stopsRight' ? ['R' as const] : []))),
  })]
  for (const side of ['L', 'R'] as const) if (rack[pathOf[side]] === false) found.push(unstopped(site, item, rack, { side, tilt, limits }))
  if (found.length > 0) return found
  return [finding(ID, { level: 'met', about: rack.id, items: [rack.id], source: sourceOf(limit), where: placeOf(item), what: say('{rack}: stops up on both sides.', '{rack}: topes puestos en ambos lados.', { rack: nameOf(site, rack.id) }) })]
}

/** A side without a stop: FIX where the beams fall toward it or nothing stops what rolls, CHECK else. */
function unstopped(site: SiteModel, item: PlacedItem, rack: RackRecord, at: { side: Hand; tilt: number | null; limits: Limits }): Finding {
  const { side, tilt, limits } = at
  const limit = limits.limit('rack-tilt')
  const towardSide = tilt === null ? null : side === 'R' ? tilt : -tilt
  const common = { about: `${rack.id}:${side}`, items: [rack.id], where: placeOf(item), phases: ['load', 'fuse'] as const, remedy: stopsUp(site, rack.id, [side]) }
  const move = say('Pin a stop up on the {side}.', 'Ponga un tope con pasador a la {side}.', { side: sideName[side] })
  if (towardSide !== null && limit.fix !== null && towardSide > limit.fix + 1e-12) {
    return finding(ID, {
      ...common, level: 'FIX', measured: q('slope', towardSide), limit: q('slope', limit.fix), source: sourceOf(limit), move,
      what: say('{rack} falls {tilt} to the {side}, where no stop is up: the pipe rolls off.', '{rack} cae {tilt} a la {side}, donde no hay tope: el tubo rueda.', { rack: nameOf(site, rack.id), tilt: q('slope', towardSide), side: sideName[side] }),
    })
  }
  const { heightM, crossRatio, resistanceRatio } = rollInputs(site, item)
  const roll = rollOffM({ heightM, fallRatio: side === 'R' ? crossRatio : 0 - crossRatio, resistanceRatio })
  const values = { rack: nameOf(site, rack.id), side: sideName[side], reach: q('length', roll.reachM) }
  return finding(ID, {
    ...common, level: roll.isStopped ? 'CHECK' : 'FIX', measured: q('length', roll.reachM), source: { ...houseRule, cite: 'roll-off by mechanics, docs/formulas/zones.md; rolling resistance common practice, no published source' }, move,
    what: roll.isStopped
      ? say('{rack}: no stop on the {side}; a pipe over the edge rolls some {reach}.', '{rack}: sin tope a la {side}; un tubo que caiga rueda unos {reach}.', values)
      : say('{rack}: no stop on the {side}, and the ground does not stop a pipe that rolls off.', '{rack}: sin tope a la {side}, y el suelo no detiene un tubo que ruede.', values),
  })
}

const placeOf = (item: PlacedItem): Finding['where'] => (item.runningM === null ? null : atRun(item.runningM, null, item.offsetM ?? 0))

function stopsUp(site: SiteModel, id: string, sides: readonly Hand[]): Remedy | null {
  if (sides.length === 0 || isLocked(site, id)) return null
  const set = (side: Hand) => ({ command: 'setField', args: { ids: [id], path: pathOf[side], value: true } })
  const label = sides.length === 2 ? say('Stops up on both sides', 'Topes en ambos lados') : say('Stop up on the {side}', 'Tope a la {side}', { side: sideName[sides[0]!] })
  return sides.length === 1 ? { ...set(sides[0]!), label } : { command: 'sequence', args: { commands: sides.map(set), label: { text: label.text } }, label }
}
