import { walkOf } from '../../derive/walking.ts'
import type { SiteModel } from '../../derive/types.ts'
import type { MachineRecord } from '../../scene/kinds/machine.ts'
import { recordsOf } from '../../scene/document.ts'
import { containment } from '../../geometry/polygon.ts'
import type { Vec } from '../../geometry/vector.ts'
import type { Localized } from '../../messages/localized.ts'
import { gapBetween, obstaclesOf, ROUNDING_M, runStripBeside, solidKinds } from '../gearBodies.ts'
import { sourceOf } from '../limits.ts'
import { atPoint, atRun, defineCheck, finding, machineIds, nameOf, q, say } from '../make.ts'

const ID = 'walk-lane'

export const walkLane = defineCheck({
  id: ID,
  title: { en: 'Lane for the machine beside the line', es: 'Carril para la máquina junto a la línea' },
  cost: 'quick',
  run: (site, { limits }) => {
    const walk = walkOf(site)
    const machine = site.placed.get(site.jaws.machineId ?? '')?.record as MachineRecord | undefined
    const { odM } = site.pipe
    if (walk === null || machine === undefined || odM === null) return []
    const limit = limits.limit('walk-lane')
    const source = sourceOf(limit)
    const common = { source, phases: ['move', 'fuse'] as const, items: machineIds(site) }
    const widthM = machine.figures.widthM.value
    if (widthM === null) {
      return [finding(ID, {
        ...common, level: 'CHECK', about: 'unknown', missing: [{ recordId: machine.id, path: 'figures.widthM.value', label: { en: 'width of the machine', es: 'ancho de la máquina' } }],
        what: say('How wide a lane the machine needs is not known.', 'No se sabe qué ancho de carril pide la máquina.'),
        move: say('Give its width.', 'Dé su ancho.'),
      })]
    }
    const besideM = limit.check ?? 0
    const needM = widthM + 2 * besideM
    const sides = ([1, -1] as const).map((side) => ({ side, stop: firstStop(site, runStripBeside(site, { fromM: Math.max(0, walk.strungFromM), toM: walk.strungToM, offsetM: side * (odM / 2 + needM / 2), halfWidthM: needM / 2 }), limits.limit('trench-edge').fix ?? 0) }))
    const free = sides.find(({ stop }) => stop === null)
    const values = { need: q('length', needM), width: q('length', widthM), side: free?.side === -1 ? { en: 'left', es: 'izquierda' } : { en: 'right', es: 'derecha' } }
    if (free !== undefined) {
      return [finding(ID, { ...common, level: 'met', where: atRun(0, null, free.side * (odM / 2 + needM / 2)), measured: q('length', needM), what: say('A lane of {need} beside the pipe is free on the {side}, end to end.', 'Un carril de {need} junto al tubo queda libre a la {side}, de punta a punta.', values) })]
    }
    const [right, left] = [sides[0]!.stop!, sides[1]!.stop!]
    return [finding(ID, {
      ...common, level: 'FIX', items: [...machineIds(site), right.id, left.id], where: atPoint(right.at.xM, right.at.yM), limit: q('length', needM),
      what: say('The machine needs a lane of {need} beside the pipe; {right} stops it on the right, {left} on the left.', 'La máquina pide un carril de {need} junto al tubo; a la derecha lo corta {right}, a la izquierda {left}.', { ...values, right: right.name, left: left.name }),
      move: say('Move the line over, take the machine round by the loader, or make the string standing still and pull it in.', 'Corra la línea, pase la máquina con el cargador, o haga la línea fija y jálela.'),
    })]
  },
})

interface Stop {
  id: string
  name: Localized
  at: Vec
}

/** What the lane meets: solid things, a trench with the legal distance from its edge, the boundary. */
function firstStop(site: SiteModel, lane: readonly Vec[], edgeM: number): Stop | null {
  for (const obstacle of obstaclesOf(site, [...solidKinds, 'trench'])) {
    const { clearM, at } = gapBetween(lane, obstacle)
    if (clearM <= (obstacle.kind === 'trench' ? edgeM - ROUNDING_M : 0)) return { id: obstacle.id, name: obstacle.name, at }
  }
  const yards = recordsOf(site.document, 'boundary')
  const out = yards.length === 0 ? undefined : lane.find((point) => yards.every(({ points }) => containment(points, point) === 'outside'))
  return out === undefined ? null : { id: yards[0]!.id, name: nameOf(site, yards[0]!.id), at: out }
}
