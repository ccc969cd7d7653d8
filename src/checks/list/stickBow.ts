import { limitParam } from '../../engine/limits.ts'
import { createBowSolver, sweepBow, type BowSolver, type BowSweep } from '../../derive/bow.ts'
import type { SiteModel } from '../../derive/types.ts'
import { bowTurnWords } from '../../messages/bowTurn.ts'
import type { TextValue } from '../../messages/render.ts'
import type { Finding, Level, Remedy } from '../finding.ts'
import { sourceOf, type Limits } from '../limits.ts'
import { atJaws, boundFor, defineCheck, finding, levelFor, machineIds, q, say, type Draft } from '../make.ts'

const ID = 'stick-bow'
/** A better turn is worth telling from this share of the yardstick on. */
const WORTH_RATIO = 0.05
/** Turns tried where the bow itself is only supposed. */
const FEW_TURNS_RAD: readonly number[] = [0, 0.25, 0.5, 0.75, 1].map((share) => share * Math.PI)

export const stickBow = defineCheck({
  id: ID,
  title: { en: 'Bowed sticks and how they are turned', es: 'Tubos curvados y cómo se giran' },
  cost: 'slow',
  run: (site, { limits }) => {
    const wallM = site.pipe.properties?.minimumWallM
    if (wallM === undefined || site.sticks.stickLengthM === null) return []
    const gapLimit = limits.limit('face-gap')
    const scene: Scene = { site, limits, yardstickM: limitParam(gapLimit, 'yardstickOfWall') * wallM }
    const bowM = site.job.stickBowM.value
    if (bowM === null) return supposed(scene, site.sticks.stickLengthM)
    if (bowM === 0) return []
    const solver = createBowSolver(site, limits)
    if (solver.missing.length > 0) return []
    const sweep = sweepBow(solver)
    if (sweep === null) return [finding(ID, { ...common(scene), level: 'CHECK', about: 'unsettled', what: say('What a bow of {bow} does at the joint could not be worked out: the pipe comes to no rest at some turn.', 'No se pudo calcular lo que hace una curvatura de {bow} en la junta: en algún giro el tubo no queda en reposo.', { bow: q('shortLength', bowM) }), move: say('Support the stick and the string near the jaws, then look again.', 'Apoye el tubo y la sarta cerca de las mordazas y vuelva a ver.') })]
    return site.job.stickBowTurnRad === null ? asTheyLie(scene, sweep) : turned(scene, solver, sweep, site.job.stickBowTurnRad)
  },
})

interface Scene {
  site: SiteModel
  limits: Limits
  yardstickM: number
}

const common = ({ site, limits }: Scene): Pick<Draft, 'source' | 'phases' | 'where' | 'items'> => ({ source: sourceOf(limits.limit('face-gap')), phases: ['fuse'], where: atJaws(site), items: machineIds(site) })

/** Level of a gap, and the gap it is held against. */
function judged({ limits, yardstickM }: Scene, gapM: number): { level: Level; measures: Pick<Draft, 'measured' | 'limit'> } {
  const limit = limits.limit('face-gap')
  const level = levelFor(limit, gapM / yardstickM)
  const bound = boundFor(limit, level)
  return { level, measures: { measured: q('shortLength', gapM), limit: q('shortLength', bound === null ? null : bound * yardstickM) } }
}

/** The turn a crew can give, as one edit; null where it gains nothing worth the trouble. */
function betterTurn({ yardstickM }: Scene, sweep: BowSweep, gapM: number): Remedy | null {
  const { turnRad, faceGapM } = sweep.leastGapByHand
  if (gapM - faceGapM < WORTH_RATIO * yardstickM) return null
  return { command: 'setJob', args: { path: 'stickBowTurnRad', value: turnRad }, label: say('Turn the sticks {turn}', 'Girar los tubos: {turn}', { turn: bowTurnWords(turnRad) }) }
}

const better = (sweep: BowSweep, gapM: number): Draft['move'] => say('Turn the sticks {turn}: face gap {best} instead of {gap}.', 'Gire los tubos, {turn}: abertura {best} en vez de {gap}.', { turn: bowTurnWords(sweep.leastGapByHand.turnRad), best: q('shortLength', sweep.leastGapByHand.faceGapM), gap: q('shortLength', gapM) })!

const opens: NonNullable<Finding['opens']> = { panel: 'bow', label: say('Turn the bow', 'Girar la curvatura') }

/** Nobody turns the sticks: the worst turn of each face stands, and so does the worst effort. */
function asTheyLie(scene: Scene, sweep: BowSweep): Finding[] {
  const { level, measures } = judged(scene, sweep.worstGapM)
  const values = { bow: q('shortLength', sweep.bowM), gap: q('shortLength', sweep.worstGapM) }
  const remedy = level === 'met' ? null : betterTurn(scene, sweep, sweep.worstGapM)
  const gap = level === 'met'
    ? finding(ID, { ...common(scene), ...measures, level, what: say('However the sticks with their bow of {bow} are turned, the faces gape {gap} at most.', 'Como sea que se giren los tubos con curvatura de {bow}, las caras abren a lo más {gap}.', values) })
    : { ...finding(ID, {
        ...common(scene), ...measures, level, remedy,
        what: say('The sticks bow {bow}. Turned as they happen to lie, the faces gape up to {gap}, up and sideways together.', 'Los tubos tienen curvatura de {bow}. Girados como caigan, las caras abren hasta {gap}, hacia arriba y de lado juntas.', values),
        move: remedy === null ? say('No turn helps much: bring the stands closer to the jaws, or straighten the sticks.', 'Ningún giro ayuda mucho: acerque los soportes a las mordazas o enderece los tubos.') : better(sweep, sweep.worstGapM)!,
      }), opens }
  return [gap, ...effortOf(scene, sweep)]
}

/** C with straight sticks is judged by `jaw-effort`; here only where some turn makes it worse than that. */
function effortOf(scene: Scene, sweep: BowSweep): Finding[] {
  const limit = scene.limits.limit('jaw-effort')
  const worst = sweep.curve.reduce((most, one) => (one.effortRatio > most.effortRatio ? one : most))
  const level = levelFor(limit, worst.effortRatio)
  if (level === 'met' || level === levelFor(limit, sweep.straight.effortRatio)) return []
  const square = sweep.leastGapByHand
  const { leastEffort: least } = sweep
  const effortWords = (one: typeof least): Record<string, TextValue> => ({ turn: bowTurnWords(one.turnRad), effort: q('ratio', one.effortRatio), gap: q('shortLength', one.faceGapM) })
  return [{ ...finding(ID, {
    ...common(scene), level, about: 'effort', source: sourceOf(limit), measured: q('ratio', worst.effortRatio), limit: q('ratio', boundFor(limit, level)),
    what: say('The jaws fight the bow of {bow}: with {turn} a clamp holds {force} (C).', 'Las mordazas pelean con la curvatura de {bow}: con {turn} una sostiene {force} (C).', { bow: q('shortLength', sweep.bowM), turn: bowTurnWords(worst.turnRad), force: q('force', worst.clampN) }),
    move: levelFor(limit, square.effortRatio) === 'met'
      ? say('Turn all sticks the same way: with {turn} C is {effort}.', 'Gire todos los tubos igual: con {turn} C es {effort}.', effortWords(square))
      : say('With {turn} C is {effort}, and the faces gape {gap}: weigh one against the other.', 'Con {turn} C es {effort} y las caras abren {gap}: compare lo uno con lo otro.', effortWords(least)),
  }), opens }]
}

function turned(scene: Scene, solver: BowSolver, sweep: BowSweep, turnRad: number): Finding[] {
  const at = solver.at(turnRad)
  if (at === null) return []
  const { level, measures } = judged(scene, at.faceGapM)
  const values = { bow: q('shortLength', sweep.bowM), turn: bowTurnWords(turnRad), gap: q('shortLength', at.faceGapM), side: q('shortLength', at.sidewaysGapM), joint: at.joint }
  if (level === 'met') return [finding(ID, { ...common(scene), ...measures, level, what: say('With the sticks turned {turn} their bow of {bow} leaves a face gap of {gap}.', 'Con los tubos girados, {turn}, su curvatura de {bow} deja una abertura de {gap}.', values) })]
  const remedy = betterTurn(scene, sweep, at.faceGapM)
  return [{ ...finding(ID, {
    ...common(scene), ...measures, level, remedy,
    what: say('With the sticks turned {turn} their bow of {bow} leaves a face gap of {gap} at joint {joint}, {side} of it sideways.', 'Con los tubos girados, {turn}, su curvatura de {bow} deja una abertura de {gap} en la junta {joint}, {side} de lado.', values),
    move: remedy === null ? say('No other turn helps much: bring the stands closer to the jaws, or straighten the sticks.', 'Ningún otro giro ayuda mucho: acerque los soportes a las mordazas o enderece los tubos.') : better(sweep, at.faceGapM)!,
  }), opens }]
}

/** Nobody measured the bow: said once, and only where the usual bow at its worst turn would break the FIX bound that straight sticks keep. */
function supposed(scene: Scene, stickLengthM: number): Finding[] {
  const { site, limits } = scene
  const limit = limits.limit(ID)
  const usualM = limitParam(limit, 'usualRatio') * stickLengthM
  const solver = createBowSolver(site, limits, usualM)
  const straight = solver.straight()
  const gapM = straight === null ? null : solver.worstGapM(FEW_TURNS_RAD)
  if (straight === null || gapM === null) return []
  if (judged(scene, gapM).level !== 'FIX' || judged(scene, straight.faceGapM).level === 'FIX') return []
  return [finding(ID, {
    ...common(scene), ...judged(scene, gapM).measures, level: 'CHECK', source: sourceOf(limit),
    missing: [{ recordId: site.job.id, path: 'stickBowM.value', label: { en: 'bow of a stick', es: 'curvatura del tubo' } }],
    what: say('Measure the bow of a stick: with a usual {bow} the faces could gape {gap}.', 'Mida la curvatura de un tubo: con {bow}, que es usual, las caras podrían abrir {gap}.', { bow: q('shortLength', usualM), gap: q('shortLength', gapM) }),
    move: say('String from end to end of a stick; measure from the string to the pipe at the middle.', 'Tienda un hilo de punta a punta del tubo; mida del hilo al tubo a la mitad.'),
  })]
}
