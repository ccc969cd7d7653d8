import { itemsOf } from '../../derive/itemsOf.ts'
import { padWays, waysOut, type WayOut } from '../../derive/people/egress.ts'
import type { SiteModel } from '../../derive/types.ts'
import type { Phase } from '../../scene/parts.ts'
import { limitParam, type Limit } from '../../engine/limits.ts'
import type { Finding } from '../finding.ts'
import { sourceOf } from '../limits.ts'
import { atPoint, defineCheck, finding, listOf, nameOf, q, say } from '../make.ts'
import { phaseWords } from '../words.ts'
import { roleName } from './crewInZone.ts'

const ID = 'way-out'

export const wayOut = defineCheck({
  id: ID,
  title: { en: 'Ways out', es: 'Salidas' },
  cost: 'slow',
  run: (site, { limits }) => {
    const limit = limits.limit('way-width')
    const wayM = limit.check
    if (wayM === null || wayM <= 0) return []
    const ways = waysOut(site, wayM).filter(({ leads }) => leads !== 'outside')
    if (ways.length === 0) return []
    const hasMuster = [...site.placed.values()].some(({ kind }) => kind === 'muster')
    const found = [
      ...bySpot(ways, 'shut').map((all) => ofShut(all, limit)),
      ...(hasMuster ? ofEdge(site, ways, limit) : noMuster(ways, limit)),
      ...ofPad(site, limit, wayM),
    ]
    if (found.length > 0) return found
    return [finding(ID, { level: 'met', source: sourceOf(limit), items: [...new Set(ways.map(({ spot }) => spot.id))], limit: q('length', wayM), what: say('From every crew spot a way {width} wide leads to a muster point.', 'De cada puesto sale un camino de {width} de ancho a un punto de reunión.', { width: q('length', wayM) }) })]
  },
})

function bySpot(ways: readonly WayOut[], leads: WayOut['leads']): WayOut[][] {
  const spots = new Map<string, WayOut[]>()
  for (const way of ways) if (way.leads === leads) spots.set(way.spot.id, [...(spots.get(way.spot.id) ?? []), way])
  return [...spots.values()]
}

const phasesOf = (ways: readonly WayOut[]): Phase[] => [...new Set(ways.map(({ phase }) => phase))]

function ofShut(ways: readonly WayOut[], limit: Limit): Finding {
  const [{ spot }] = ways as readonly [WayOut, ...WayOut[]]
  const phases = phasesOf(ways)
  return finding(ID, {
    level: 'FIX', about: `${spot.id}:shut`, items: [spot.id], where: atPoint(spot.xM, spot.yM), phases, limit: q('length', limit.check), source: sourceOf(limit),
    what: say('The {role} is shut in, in {phases}: no way {width} wide leads off the yard or to a muster point on this side of string, rope and fences.', 'El puesto de {role} queda encerrado, en {phases}: ningún camino de {width} de ancho sale del patio ni llega a un punto de reunión de este lado de sarta, cuerda y cercas.', { role: roleName(spot.record.role), phases: listOf(phases.map((phase) => phaseWords[phase]), 8), width: q('length', limit.check) }),
    move: say('Open a gate at once, clear a way, or stand on the other side.', 'Deje una puerta que se abra de inmediato, despeje un camino, o párese del otro lado.'),
  })
}

/** Spots whose only way is over the open edge: the string cuts them off from the muster points. One finding for all. */
function ofEdge(site: SiteModel, ways: readonly WayOut[], limit: Limit): Finding[] {
  const cut = ways.filter(({ leads }) => leads === 'edge')
  const [first] = cut
  if (first === undefined) return []
  const phases = phasesOf(cut)
  const roles = [...new Map(cut.map(({ spot }) => [spot.record.role, roleName(spot.record.role)])).values()]
  const musters = itemsOf(site, 'muster').map(({ id }) => id)
  return [finding(ID, {
    level: 'CHECK', about: 'cut-off', items: [...new Set(cut.map(({ spot }) => spot.id)), ...musters], where: atPoint(first.spot.xM, first.spot.yM), phases, limit: q('length', limit.check), source: sourceOf(limit),
    what: say('No muster point on their side of string and rope: {roles}, in {phases}.', 'Sin punto de reunión de su lado de sarta y cuerda: {roles}, en {phases}.', { roles: listOf(roles, 6), phases: listOf(phases.map((phase) => phaseWords[phase]), 8) }),
    move: say('Set a muster point on that side too. A marked crossing over the string serves while it lies still.', 'Ponga otro punto de reunión de ese lado. Un cruce marcado sobre la sarta sirve mientras esté quieta.'),
  })]
}

function noMuster(ways: readonly WayOut[], limit: Limit): Finding[] {
  return [finding(ID, {
    level: 'CHECK', about: 'no-muster', items: [...new Set(ways.map(({ spot }) => spot.id))], phases: phasesOf(ways), source: sourceOf(limit),
    what: say('No muster point is drawn: nobody knows where to go.', 'No hay punto de reunión en el plano: nadie sabe a dónde ir.'),
    move: say('Set one on each side of the string, upwind, clear of lanes and gate.', 'Ponga uno de cada lado de la sarta, contra el viento, lejos de carriles y puerta.'),
  })]
}

function ofPad(site: SiteModel, limit: Limit, wayM: number): Finding[] {
  const ways = padWays(site, wayM, limitParam(limit, 'padReachM'))
  if (ways === null || (ways.infeed && ways.exit)) return []
  const { operator, infeed, exit } = ways
  // Shut in altogether is said above.
  if (!infeed && !exit) return []
  const values = { open: infeed ? { en: 'infeed', es: 'entrada' } : { en: 'exit', es: 'salida' }, machine: site.jaws.machineId === null ? { en: 'machine', es: 'máquina' } : nameOf(site, site.jaws.machineId) }
  return [finding(ID, {
    level: 'CHECK', about: 'pad', items: [operator.id, ...(site.jaws.machineId === null ? [] : [site.jaws.machineId])], where: atPoint(operator.xM, operator.yM), phases: ['fuse'], limit: q('length', wayM), source: sourceOf(limit),
    what: say('Only one way leads off the machine pad, toward the {open}.', 'Del área de la máquina sale un solo camino, hacia la {open}.', values),
    move: say('Clear a second one, 3 ft wide, to the other end.', 'Despeje otro, de 3 pies de ancho, hacia el otro extremo.'),
  })]
}
