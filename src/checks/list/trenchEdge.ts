import { trenchRules, type TrenchRules } from '../../engine/safety/trenchRules.ts'
import type { SiteModel } from '../../derive/types.ts'
import type { Phase } from '../../scene/parts.ts'
import { valueFromZero } from '../../scene/parts.ts'
import type { TrenchRecord } from '../../scene/kinds/trench.ts'
import { clearShift, roomLack } from '../clearShift.ts'
import type { Finding, Remedy } from '../finding.ts'
import {
  awayRad, gapBetween, isLocked, isUnder, laneBodies, loaderBodies, machineBodies, obstaclesOf, offloadBodies, pullerBodies, pullerSweeps, rackBodies, ROUNDING_M, solidKinds, stringBody, worstOfEach, type GearBody, type Gap, type SiteObstacle,
} from '../gearBodies.ts'
import { sourceOf, type Limits } from '../limits.ts'
import { atPoint, defineCheck, finding, q, say } from '../make.ts'
import { parkedBodies } from '../parkedBodies.ts'

const ID = 'trench-edge'
/** Weight that can bring the edge down: kept back by the depth of the trench as a house rule. The string alone keeps the legal distance. */
const isHeavy = ({ role }: GearBody): boolean => role !== 'string' && role !== 'parked'
const phasesOf = ({ role }: GearBody): readonly Phase[] => (role === 'string' || role === 'puller' ? ['pull', 'rest'] : role === 'offload' || role === 'lane' ? ['offload', 'load'] : ['setUp', 'load', 'fuse', 'pull'])

export const trenchEdge = defineCheck({
  id: ID,
  title: { en: 'Trench edge', es: 'Borde de zanja' },
  cost: 'quick',
  run: (site, { limits }) => {
    const trenches = [...site.placed.values()].flatMap(({ record }) => (record.kind === 'trench' ? [record] : []))
    if (trenches.length === 0) return []
    const string = stringBody(site)
    const bodies = [...(string === null ? [] : [string]), ...machineBodies(site), ...rackBodies(site), ...loaderBodies(site), ...offloadBodies(site), ...laneBodies(site), ...pullerBodies(site), ...pullerSweeps(site), ...parkedBodies(site)]
    const edges = new Map(obstaclesOf(site, ['trench']).map((edge) => [edge.id, edge]))
    return [...unknownOf(site, trenches, limits), ...trenches.flatMap((trench) => {
      const edge = edges.get(trench.id)
      return edge === undefined ? [] : ofTrench(site, { edge, rules: trenchRules(valueFromZero(trench.figures.depthM)), bodies, limits })
    })]
  },
})

interface Scene {
  edge: SiteObstacle
  rules: TrenchRules
  bodies: readonly GearBody[]
  limits: Limits
}

function ofTrench(site: SiteModel, scene: Scene): Finding[] {
  const { edge, rules, bodies, limits } = scene
  const legalM = limits.limit('trench-edge').fix ?? rules.edgeM
  const machineM = rules.machineM === null ? null : Math.max(legalM, (limits.limit('trench-machine').fix ?? 1) * (rules.machineM ?? 0))
  const found: Finding[] = []
  let least: { body: GearBody; gap: Gap } | null = null
  for (const body of bodies) {
    const gap = gapBetween(body.points, edge)
    if (least === null || gap.clearM < least.gap.clearM) least = { body, gap }
    if (isUnder(gap.clearM, legalM)) found.push(tooNear(site, scene, { body, gap, neededM: legalM, isLegal: true }))
    else if (machineM !== null && isHeavy(body) && isUnder(gap.clearM, machineM)) found.push(tooNear(site, scene, { body, gap, neededM: machineM, isLegal: false }))
  }
  if (found.length === 0 && least !== null && machineM !== null) {
    found.push(finding(ID, {
      level: 'met', about: edge.id, items: [edge.id], measured: q('length', least.gap.clearM), limit: q('length', legalM), bound: 'least', source: sourceOf(limits.limit('trench-edge')), where: atPoint(least.gap.at.xM, least.gap.at.yM),
      what: say('Everything keeps its distance from the edge of {trench}; nearest is {body}, {clear}.', 'Todo guarda su distancia al borde de {trench}; lo más cercano es {body}, a {clear}.', { trench: edge.name, body: least.body.name, clear: q('length', least.gap.clearM) }),
    }))
  }
  return worstOfEach(found)
}

function tooNear(site: SiteModel, { edge, limits }: Scene, near: { body: GearBody; gap: Gap; neededM: number; isLegal: boolean }): Finding {
  const { body, gap, neededM, isLegal } = near
  const values = { body: body.name, trench: edge.name, clear: q('length', Math.max(0, gap.clearM)), needed: q('length', neededM) }
  return finding(ID, {
    level: isLegal ? 'STOP' : 'FIX',
    about: `${body.role}:${body.itemIds[0] ?? ''}${body.isSweep === true ? ':way' : ''}:${edge.id}`,
    items: [...body.itemIds, edge.id],
    where: atPoint(gap.at.xM, gap.at.yM),
    measured: q('length', gap.clearM),
    limit: q('length', neededM),
    bound: 'least',
    source: sourceOf(limits.limit(isLegal ? 'trench-edge' : 'trench-machine')),
    phases: phasesOf(body),
    what: isLegal
      ? say('{body} comes {clear} from the edge of {trench}; the law asks for {needed}.', '{body} queda a {clear} del borde de {trench}; la ley pide {needed}.', values)
      : say('{body} comes {clear} from the edge of {trench}; as far as it is deep, {needed}, is the house rule for machines and stacks.', '{body} queda a {clear} del borde de {trench}; tanto como su profundidad, {needed}, es la regla de la casa para máquinas y pilas.', values),
    move: isLegal
      ? say('Move {body} back to {needed} or more, or close the trench first.', 'Retire {body} a {needed} o más, o cierre antes la zanja.', values)
      : say('Move {body} back to {needed}, or have the shoring designed for it.', 'Retire {body} a {needed}, o haga diseñar el ademe para eso.', values),
    remedy: moveBack(site, body, gap, neededM),
  })
}

/** Least move of one item that keeps its distance from every trench and hits nothing solid. */
function moveBack(site: SiteModel, body: GearBody, gap: Gap, neededM: number): Remedy | null {
  const [id] = body.itemIds
  const isMovable = body.isSweep !== true && (body.role === 'loader' || body.role === 'offload' || body.role === 'puller')
  if (!isMovable || id === undefined || isLocked(site, id)) return null
  const edges = obstaclesOf(site, ['trench'])
  const solids = obstaclesOf(site, solidKinds)
  const rooms = [...edges.map((obstacle) => ({ obstacle, roomM: neededM })), ...solids.map((obstacle) => ({ obstacle, roomM: 0.05 + 2 * ROUNDING_M }))]
  const by = clearShift(roomLack(body.points, rooms), awayRad(gap.at, gap.to, 0))
  return by === null ? null : { command: 'moveBy', args: { ids: [id], dxM: by.xM, dyM: by.yM }, label: say('Move {what} back by {by}', 'Retirar {what} {by}', { what: body.name, by: q('length', Math.hypot(by.xM, by.yM)) }) }
}

/** The legal distance needs no depth; the house rule for machines does. Without its width a trench has no edge. */
function unknownOf(site: SiteModel, trenches: readonly TrenchRecord[], limits: Limits): Finding[] {
  const missing = trenches.flatMap(({ id, figures }) => [
    ...(figures.widthM.value === null ? [{ recordId: id, path: 'figures.widthM.value', label: { en: 'width of the trench', es: 'ancho de la zanja' } }] : []),
    ...(valueFromZero(figures.depthM) === null ? [{ recordId: id, path: 'figures.depthM.value', label: { en: 'depth of the trench', es: 'profundidad de la zanja' } }] : []),
  ])
  if (site.run !== null && site.pipe.odM === null) missing.push(...site.pipe.missing.filter(({ path }) => path === 'pipe'))
  if (site.run !== null && site.sticks.stickLengthM === null) missing.push(...site.sticks.missing.filter(({ path }) => path === 'stickLengthM'))
  return missing.length === 0 ? [] : [finding(ID, {
    level: 'CHECK', about: 'unknown', missing, items: trenches.map(({ id }) => id), source: sourceOf(limits.limit('trench-machine')), phases: ['setUp'],
    what: say('How far machines have to stay from the trench is not known.', 'No se sabe cuánto deben alejarse las máquinas de la zanja.'),
    move: say('Give width and depth of the trench.', 'Dé ancho y profundidad de la zanja.'),
  })]
}
