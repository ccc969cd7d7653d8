import type { SiteModel } from '../../derive/types.ts'
import { containment } from '../../geometry/polygon.ts'
import { distanceBetween } from '../../geometry/distance.ts'
import type { Vec } from '../../geometry/vector.ts'
import type { Limit } from '../../engine/limits.ts'
import { clearShift, mostLacking, roomLack, shifted, type Lack } from '../clearShift.ts'
import type { Finding, Remedy } from '../finding.ts'
import {
  awayRad, gapBetween, isLocked, isUnder, loaderBodies, machineBodies, obstaclesOf, offloadBodies, pullerBodies, pullerSweeps, rackBodies, ROUNDING_M, solidKinds, stringBody, stringReachM, type GearBody, type Gap, type SiteObstacle,
} from '../gearBodies.ts'
import { sourceOf } from '../limits.ts'
import { atPoint, defineCheck, finding, houseRule, q, say } from '../make.ts'
import { parkedBodies, parkedObstacles } from '../parkedBodies.ts'
import { roomOf } from '../room.ts'

const ID = 'clearance'
/** Touching counts as hitting; half a millimetre is rounding. */
const TOUCH_M = 0.0005

/** The run and what stands on it: moving one of them means moving the axis. */
const isOnAxis = ({ role }: GearBody): boolean => role === 'string' || role === 'machine' || role === 'rack'

export const clearance = defineCheck({
  id: ID,
  title: { en: 'Clear of what stands there', es: 'Libre de lo que hay en el sitio' },
  cost: 'quick',
  run: (site, { limits }) => {
    const limit = limits.limit('path-clearance')
    const solids = obstaclesOf(site, solidKinds)
    const parked = parkedObstacles(site)
    const found: Finding[] = [...unknownOf(site, solids.length)]
    let least: { body: GearBody; obstacle: SiteObstacle; gap: Gap } | null = null
    for (const body of bodiesOf(site)) {
      // Parked strings lie a walk apart by their rows; they stand in the way of everything else.
      for (const obstacle of body.role === 'parked' ? solids : [...solids, ...parked]) {
        const gap = gapBetween(body.points, obstacle)
        if (least === null || gap.clearM < least.gap.clearM) least = { body, obstacle, gap }
        const isHit = gap.clearM <= (limit.fix ?? 0) + TOUCH_M
        if (isHit || (body.role === 'string' && limit.check !== null && isUnder(gap.clearM, limit.check))) found.push(tooNear(site, { body, obstacle, gap, isHit, limit }))
      }
      found.push(...onRoads(site, body), ...beyondBoundary(site, body))
    }
    if (found.length === 0 && least !== null) {
      found.push(finding(ID, {
        level: 'met', measured: q('length', least.gap.clearM), limit: q('length', limit.check), bound: 'least', source: sourceOf(limit), where: atPoint(least.gap.at.xM, least.gap.at.yM),
        what: say('Nothing stands in the way; nearest is {other}, {clear} from {body}.', 'Nada estorba; lo más cercano es {other}, a {clear} de {body}.', { other: least.obstacle.name, body: least.body.name, clear: q('length', least.gap.clearM) }),
      }))
    }
    return found
  },
})

function bodiesOf(site: SiteModel): GearBody[] {
  const string = stringBody(site)
  return [...(string === null ? [] : [string]), ...machineBodies(site), ...rackBodies(site), ...pullerBodies(site), ...pullerSweeps(site), ...loaderBodies(site), ...offloadBodies(site), ...parkedBodies(site)]
}

interface Meeting {
  body: GearBody
  obstacle: SiteObstacle
  gap: Gap
  isHit: boolean
  limit: Limit
}

const keyOf = (body: GearBody, otherId: string): string => `${body.role}:${body.itemIds[0] ?? ''}${body.isSweep === true ? ':way' : ''}:${otherId}`

function tooNear(site: SiteModel, { body, obstacle, gap, isHit, limit }: Meeting): Finding {
  const values = { body: body.name, other: obstacle.name, clear: q('length', Math.max(0, gap.clearM)) }
  return finding(ID, {
    level: isHit ? 'FIX' : 'CHECK',
    about: keyOf(body, obstacle.id),
    items: [...body.itemIds, obstacle.id],
    where: atPoint(gap.at.xM, gap.at.yM),
    measured: q('length', gap.clearM),
    limit: q('length', isHit ? limit.fix : limit.check),
    bound: 'least',
    source: sourceOf(limit),
    phases: body.role === 'parked' ? ['pull', 'move', 'rest'] : body.role === 'string' || body.isSweep === true ? ['pull'] : ['setUp', 'load', 'fuse', 'pull'],
    what: isHit
      ? say('{body} does not clear {other}.', '{body} no libra {other}.', values)
      : say('{body} passes {clear} from {other}: no room to walk beside it.', '{body} pasa a {clear} de {other}: no queda paso a su lado.', values),
    move: isOnAxis(body)
      ? say('Move the axis away from {other}, or take {other} away.', 'Aparte el eje de {other}, o quite {other}.', values)
      : say('Move {body} away from {other}.', 'Aparte {body} de {other}.', values),
    remedy: moveAway(site, body, gap, limit),
  })
}

/** Least move that clears every solid thing: of the item itself, or of the axis sideways where the run has no corners. */
function moveAway(site: SiteModel, body: GearBody, gap: Gap, limit: Limit): Remedy | null {
  const solids = obstaclesOf(site, solidKinds)
  const isAxis = isOnAxis(body)
  const { machineId } = site.jaws
  if (isAxis && (machineId === null || site.setUp === null || site.run === null || site.run.vertices.length > 0)) return null
  if (!isAxis && (body.role === 'parked' || body.itemIds.length !== 1 || body.isSweep === true)) return null
  const ids = isAxis ? [machineId!] : [...body.itemIds]
  if (ids.some((id) => isLocked(site, id))) return null
  const moved = isAxis ? bodiesOf(site).filter(isOnAxis) : [body]
  const neededM = (one: GearBody): number => (one.role === 'string' ? (limit.check ?? 0) : 0.05)
  const lack = mostLacking(moved.map((one) => roomLack(one.points, solids.map((obstacle) => ({ obstacle, roomM: neededM(one) })))))
  const by = clearShift(lack, isAxis ? site.setUp!.headingRad + Math.PI / 2 : awayRad(gap.at, gap.to, 0), 12, isAxis ? [0, Math.PI] : undefined)
  if (by === null) return null
  return { command: 'moveBy', args: { ids, dxM: by.xM, dyM: by.yM }, label: say('Move {what} by {by}', 'Mover {what} {by}', { what: isAxis ? { en: 'machine and axis', es: 'máquina y eje' } : body.name, by: q('length', Math.hypot(by.xM, by.yM)) }) }
}

/** Roads: gear standing on one that is open does not fit; a string across one needs its crossing planned. */
function onRoads(site: SiteModel, body: GearBody): Finding[] {
  return obstaclesOf(site, ['road']).flatMap((road) => {
    const record = site.placed.get(road.id)?.record
    const gap = gapBetween(body.points, road)
    if (record?.kind !== 'road' || gap.clearM > TOUCH_M) return []
    const isAcross = body.role === 'string' || body.role === 'parked'
    // Where the machine walks, every way under the strung pipe is told by the check of crossings.
    const isTold = body.role === 'string' && site.job.method === 'walking'
    if (body.isSweep === true || isTold || (!isAcross && record.traffic !== 'open')) return []
    const values = { body: body.name, road: road.name }
    return [finding(ID, {
      level: isAcross ? 'CHECK' : 'FIX',
      about: keyOf(body, road.id),
      items: [...body.itemIds, road.id],
      where: atPoint(gap.at.xM, gap.at.yM),
      source: houseRule,
      phases: isAcross ? ['pull', 'rest'] : ['setUp', 'load', 'fuse', 'pull'],
      what: isAcross ? say('{body} crosses {road}.', '{body} cruza {road}.', values) : say('{body} stands on {road}, which is open to traffic.', '{body} está sobre {road}, abierto al tráfico.', values),
      move: isAcross
        ? say('Plan the crossing: a gap between sticks, a sleeve under the road, or a timed closing with a marshal.', 'Planee el cruce: un hueco entre tubos, una funda bajo el camino o un cierre con controlador.')
        : say('Move {body} off {road}, or close it.', 'Saque {body} de {road}, o ciérrelo.', values),
    })]
  })
}

/** Nothing of ours leaves the boundary; how far the run reaches along its own line is the matter of the room check. */
function beyondBoundary(site: SiteModel, whole: GearBody): Finding[] {
  const yards = obstaclesOf(site, ['boundary'])
  if (yards.length === 0 || whole.isSweep === true) return []
  const body = whole.role === 'string' ? withinRoom(site, whole) : whole
  const reaches = yards.map((yard) => ({ yard, ...outside(body.points, ringOf(yard)) }))
  const best = reaches.reduce((least, one) => (one.outM < least.outM ? one : least))
  if (best.outM <= TOUCH_M) return []
  const values = { body: body.name, out: q('length', best.outM) }
  return [finding(ID, {
    level: 'FIX',
    about: keyOf(body, best.yard.id),
    items: [...body.itemIds, best.yard.id],
    where: atPoint(best.at.xM, best.at.yM),
    measured: q('length', best.outM),
    limit: q('length', 0),
    source: { class: 'houseRule', cite: 'common practice, no published source: the yard ends at its boundary' },
    phases: ['setUp'],
    what: say('{body} reaches {out} beyond the boundary.', '{body} sale {out} del límite.', values),
    move: say('Bring {body} inside, or get the use of that ground.', 'Meta {body} adentro, o consiga permiso para ese terreno.', values),
    remedy: moveInside(site, body, ringOf(best.yard)),
  })]
}

const ringOf = ({ shape }: SiteObstacle): readonly Vec[] => (shape.kind === 'polygon' ? shape.points : [])

function withinRoom(site: SiteModel, body: GearBody): GearBody {
  const [reach, room] = [stringReachM(site), roomOf(site)]
  if (reach === null || room === null) return body
  return stringBody(site, { fromM: Math.max(reach.fromM, -room.backM), toM: Math.min(reach.toM, room.aheadM) }) ?? body
}

/** How far a body reaches out of a ring, and where; 0 where its corners lie within. */
function outside(points: readonly Vec[], ring: readonly Vec[]): { outM: number; at: Vec } {
  let worst = { outM: 0, at: points[0]! }
  for (const point of points) {
    if (containment(ring, point) !== 'outside') continue
    const outM = distanceBetween({ kind: 'point', point }, { kind: 'polygon', points: ring }).distanceM
    if (outM > worst.outM) worst = { outM, at: point }
  }
  return worst
}

function moveInside(site: SiteModel, body: GearBody, ring: readonly Vec[]): Remedy | null {
  if (isOnAxis(body) || body.role === 'parked' || body.itemIds.length !== 1 || isLocked(site, body.itemIds[0]!)) return null
  const solids = roomLack(body.points, obstaclesOf(site, solidKinds).map((obstacle) => ({ obstacle, roomM: TOUCH_M + 2 * ROUNDING_M })))
  const within: Lack = (shift) => {
    const { outM } = outside(shifted(body.points, shift), ring)
    return outM === 0 ? null : outM
  }
  const by = clearShift(mostLacking([within, solids]), 0, 15)
  return by === null ? null : { command: 'moveBy', args: { ids: [...body.itemIds], dxM: by.xM, dyM: by.yM }, label: say('Move {what} by {by}', 'Mover {what} {by}', { what: body.name, by: q('length', Math.hypot(by.xM, by.yM)) }) }
}

/** What cannot be judged: the string without its size, roads and trees without theirs. */
function unknownOf(site: SiteModel, solidCount: number): Finding[] {
  const hasString = solidCount > 0 && site.run !== null
  const missing = [
    ...(hasString && site.pipe.odM === null ? site.pipe.missing.filter(({ path }) => path === 'pipe') : []),
    ...(hasString && site.sticks.stickLengthM === null ? site.sticks.missing.filter(({ path }) => path === 'stickLengthM') : []),
    ...[...site.placed.values()].flatMap(({ record }) => {
      if (record.kind === 'road' && record.figures.widthM.value === null) return [{ recordId: record.id, path: 'figures.widthM.value', label: { en: 'width of the road', es: 'ancho del camino' } }]
      return record.kind === 'tree' && record.figures.radiusM.value === null ? [{ recordId: record.id, path: 'figures.radiusM.value', label: { en: 'radius of the tree', es: 'radio del árbol' } }] : []
    }),
  ]
  return missing.length === 0 ? [] : [finding(ID, {
    level: 'CHECK', about: 'unknown', missing, source: houseRule, items: missing.map(({ recordId }) => recordId),
    what: say('Not all of what stands there can be measured against the gear.', 'No todo lo que hay se puede comparar con el equipo.'),
    move: say('Give the missing sizes.', 'Dé los tamaños que faltan.'),
  })]
}
