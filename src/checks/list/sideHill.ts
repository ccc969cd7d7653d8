import { frictionOf, surfaceRows } from '../../engine/pipe/tables.ts'
import { sideHill as onSideHill, windOnPipeNPerM } from '../../engine/bends/sideHill.ts'
import { limitParam } from '../../engine/limits.ts'
import type { GroundStretch } from '../../derive/groundStretches.ts'
import { stringPullOf } from '../../derive/stringPull.ts'
import type { SiteModel } from '../../derive/types.ts'
import type { AnchorRecord } from '../../scene/kinds/anchor.ts'
import type { Finding } from '../finding.ts'
import { isUnder } from '../gearBodies.ts'
import { sourceOf, type Limits } from '../limits.ts'
import { atRun, defineCheck, finding, q, say } from '../make.ts'

const ID = 'side-hill'
/** Slope across is taken over this much ground, and asked for this often along the string. */
const ACROSS_M = 1
const STEP_M = 5
/** Slopes below this are the roughness of the ground. */
const LEVEL_RATIO = 0.01
/** A tether that pulls up the slope stands this far aside at least. */
const ASIDE_M = 1
const PHASES = ['rest', 'move', 'tieIn'] as const

export const sideHill = defineCheck({
  id: ID,
  title: { en: 'String on a side slope', es: 'Sarta en ladera' },
  cost: 'slow',
  run: (site, { limits }) => {
    const { ground, missing } = stringPullOf(site)
    if (missing.length > 0 || site.run === null || ground.length === 0) return []
    const source = sourceOf(limits.limit('side-hill'))
    if (site.ground.crossFallRatio === null) {
      return [finding(ID, {
        level: 'CHECK', about: 'unknown', source, phases: PHASES, where: atRun(ground[0]!.fromM), items: site.setUp === null ? [] : [site.setUp.id],
        missing: [{ recordId: site.setUp?.id ?? site.layout.id, path: 'crossFallRatio', label: { en: 'cross-fall of the ground', es: 'caída lateral del terreno' } }],
        what: say('Whether the string slides sideways on the ground is not known.', 'No se sabe si la sarta se desliza de lado en el suelo.'),
        move: say('Give the cross-fall, or levels to both sides.', 'Dé la caída lateral, o niveles a ambos lados.'),
      })]
    }
    const found = ground.flatMap((stretch) => ofStretch(site, limits, stretch))
    if (found.length > 0) return found
    return [finding(ID, { level: 'met', source, phases: PHASES, where: atRun(ground[0]!.fromM), what: say('Where the string lies on the ground, the ground does not fall across it enough to slide it.', 'Donde la sarta va en el suelo, no cae de lado tanto como para deslizarla.') })]
  },
})

interface Steepest {
  atM: number
  /** Fall to the right positive. */
  rightRatio: number
}

function steepestOf(site: SiteModel, { fromM, toM }: GroundStretch): Steepest {
  const steps = Math.max(1, Math.ceil((toM - fromM) / STEP_M))
  const places = Array.from({ length: steps + 1 }, (_, i): Steepest => {
    const atM = fromM + (i * (toM - fromM)) / steps
    return { atM, rightRatio: (site.groundLevelAt(atM, 0 - ACROSS_M) - site.groundLevelAt(atM, ACROSS_M)) / (2 * ACROSS_M) }
  })
  return places.reduce((most, one) => (Math.abs(one.rightRatio) > Math.abs(most.rightRatio) ? one : most))
}

function ofStretch(site: SiteModel, limits: Limits, stretch: GroundStretch): Finding[] {
  const { atM, rightRatio } = steepestOf(site, stretch)
  const crossSlopeRatio = Math.abs(rightRatio)
  if (crossSlopeRatio < LEVEL_RATIO) return []
  const { odM, lineLoadNPerM } = site.pipe.properties!
  const wind = limits.limit('wind-share')
  const windMPerS = site.case.whatIf?.windMPerS ?? 0
  const windNPerM = windOnPipeNPerM({ odM, windMPerS, airDensityKgPerM3: limitParam(wind, 'airDensityKgPerM3'), dragCoefficientRatio: limitParam(wind, 'dragCoefficientRatio') })
  const { drivesNPerM, holdsNPerM } = onSideHill({ lineLoadNPerM, crossSlopeRatio, frictionRatio: frictionOf(stretch.surface).likely, windNPerM })
  const lengthM = stretch.toM - stretch.fromM
  const tethers = tethersOf(site, stretch, rightRatio)
  const tetherN = tethers.reduce((sum, { figures }) => sum + (figures.ratedHoldN.value ?? 0), 0)
  const safetyRatio = (holdsNPerM * lengthM + tetherN) / (drivesNPerM * lengthM)
  const limit = limits.limit('side-hill')
  const needed = limit.fix ?? 1
  const unrated = tethers.filter(({ figures }) => figures.ratedHoldN.value === null)
  if (!isUnder(safetyRatio, needed)) return []
  const surface = surfaceRows.find(({ id }) => id === stretch.surface)?.title ?? { en: 'ground nobody has named', es: 'suelo sin nombrar' }
  const values = {
    from: { runningM: stretch.fromM }, to: { runningM: stretch.toM }, slope: q('slope', crossSlopeRatio), surface, safety: q('ratio', safetyRatio), needed: q('ratio', needed),
    wind: q('speed', windMPerS), force: q('force', (needed * drivesNPerM - holdsNPerM) * lengthM - tetherN), side: rightRatio > 0 ? { en: 'right', es: 'derecha' } : { en: 'left', es: 'izquierda' },
  }
  const common = { about: `${stretch.fromM.toFixed(1)}`, items: [site.run!.id, ...tethers.map(({ id }) => id)], phases: PHASES, where: atRun(atM), measured: q('ratio', safetyRatio), limit: q('ratio', needed), bound: 'least' as const, source: sourceOf(limit) }
  if (unrated.length > 0) {
    return [finding(ID, {
      ...common, level: 'CHECK', missing: unrated.map(({ id }) => ({ recordId: id, path: 'figures.ratedHoldN.value', label: { en: 'what the tether holds', es: 'lo que aguanta la retención' } })),
      what: say('From {from} to {to} friction alone does not hold the string on {slope} to the {side}; what the tethers hold is not known.', 'De {from} a {to} la fricción sola no sujeta la sarta con {slope} hacia la {side}; no se sabe lo que aguantan las retenciones.', values),
      move: say('Give what each holds.', 'Dé lo que aguanta cada una.'),
    })]
  }
  const [en, es] = windMPerS > 0 ? [' in a wind of {wind}', ' con viento de {wind}'] : ['', '']
  const tether = say('Tether it up the slope with {force} in all along it; no stakes through a liner.', 'Sujételo cuesta arriba con {force} en total a lo largo; sin estacas que perforen una geomembrana.', values)
  return isUnder(safetyRatio, 1)
    ? [finding(ID, { ...common, level: 'STOP', what: say(`From {from} to {to} the string slides down to the {side} by itself: {slope} across on {surface}${en}, held {safety} times.`, `De {from} a {to} la sarta se desliza sola hacia la {side}: {slope} de lado sobre {surface}${es}, sujeta {safety} veces.`, values), move: tether })]
    : [finding(ID, { ...common, level: 'FIX', what: say(`From {from} to {to} the ground falls {slope} to the {side}: on {surface}${en} the string is held only {safety} times, {needed} are asked.`, `De {from} a {to} el suelo cae {slope} hacia la {side}: sobre {surface}${es} la sarta se sujeta solo {safety} veces, se piden {needed}.`, values), move: tether })]
}

/** Tethers beside the stretch, uphill of it. */
function tethersOf(site: SiteModel, { fromM, toM }: GroundStretch, rightRatio: number): AnchorRecord[] {
  return [...site.placed.values()].flatMap(({ record, runningM, offsetM }) =>
    record.kind === 'anchor' && runningM !== null && offsetM !== null && runningM >= fromM && runningM <= toM && Math.abs(offsetM) >= ASIDE_M && Math.sign(offsetM) !== Math.sign(rightRatio) ? [record] : [],
  )
}
