import { drawnRadiusM, guidesOf, type GuideView } from '../../derive/springBack.ts'
import { stringPullOf } from '../../derive/stringPull.ts'
import type { RunBend, SiteModel } from '../../derive/types.ts'
import { holdCurve, USUAL_GUIDE_SPACING_M } from '../../engine/bends/holdCurve.ts'
import type { Finding, Source } from '../finding.ts'
import { isUnder } from '../gearBodies.ts'
import { atRun, defineCheck, finding, listOf, mechanics, plate, q, say } from '../make.ts'

const ID = 'bend-hold'
/** Turns below this (1°) hold by themselves. */
const LEAST_TURN_RAD = 0.0175
/** A guide counts for a bend to this far before and behind it: twice the usual distance of two. */
const NEAR_M = 2 * USUAL_GUIDE_SPACING_M
const PHASES = ['pull', 'move', 'rest'] as const

export const bendHold = defineCheck({
  id: ID,
  title: { en: 'Stakes or guides at the bends', es: 'Estacas o guías en las curvas' },
  cost: 'slow',
  run: (site) => {
    const stiffnessNm2 = site.pipe.stiffnessNm2('pull')
    if (site.run === null || stiffnessNm2 === null) return []
    const bends = site.bends.filter(({ turnRad }) => Math.abs(turnRad) >= LEAST_TURN_RAD)
    const found = bends.flatMap((bend) => {
      const radiusM = drawnRadiusM(bend)
      return radiusM === null || bend.radiusM === null ? [] : ofBend(site, bend, radiusM, stiffnessNm2)
    })
    return found.length === 0 ? [] : [...found, ...pullLine(site)]
  },
})

/** Two guides at one end of a bend; where three stand at it in all the middle one serves both ends and takes double. */
interface Pair {
  guides: readonly [GuideView, GuideView]
  armM: number
}

/** First and last pair of the guides at a bend; null where fewer than three stand there. */
export function guidePairs(site: SiteModel, { fromM, toM }: Pick<RunBend, 'fromM' | 'toM'>): { first: Pair; last: Pair; near: readonly GuideView[] } | null {
  const near = guidesOf(site).filter(({ runningM }) => runningM > fromM - NEAR_M && runningM < toM + NEAR_M)
  if (near.length < 3) return null
  const pair = (a: GuideView, b: GuideView): Pair => ({ guides: [a, b], armM: b.runningM - a.runningM })
  return { first: pair(near[0]!, near[1]!), last: pair(near.at(-2)!, near.at(-1)!), near }
}

function ofBend(site: SiteModel, bend: RunBend, radiusM: number, bendingStiffnessNm2: number): Finding[] {
  const { vertex } = bend
  const pairs = guidePairs(site, bend)
  const common = { phases: PHASES, about: `${site.run!.id}#${vertex}`, where: atRun(bend.fromM), items: [site.run!.id, ...(pairs?.near ?? []).map(({ id }) => id)] }
  const armM = pairs === null ? USUAL_GUIDE_SPACING_M : Math.min(pairs.first.armM, pairs.last.armM)
  if (!(armM > 0)) return [finding(ID, { ...common, level: 'FIX', source: mechanics('bends'), what: say('Bend {bend}: two of its guides stand in one place and give no couple.', 'Curva {bend}: dos de sus guías están en el mismo lugar y no hacen par.', { bend: vertex + 1 }), move: say('Set them apart.', 'Sepárelas.') })]
  const { coupleNm, guideN } = holdCurve({ bendingStiffnessNm2, radiusM, armM })
  const values = { bend: vertex + 1, couple: q('moment', coupleNm), force: q('force', guideN), arm: q('length', armM), radius: q('length', radiusM) }
  if (pairs === null) {
    return [finding(ID, {
      ...common, level: 'CHECK', measured: q('force', guideN), source: usualArm,
      what: say('Bend {bend}: it takes two stakes or guides at either end to hold it, {force} each where they stand {arm} apart; they are not on the plan.', 'Curva {bend}: hacen falta dos estacas o guías en cada extremo, {force} en cada una a {arm} entre sí; no están en el plano.', values),
      move: say('Place them, with what each holds.', 'Colóquelas, con lo que aguanta cada una.'),
    })]
  }
  const loads = loadsOf(pairs, coupleNm)
  const unknown = loads.filter(({ guide }) => guide.holdN === null)
  const over = loads.filter(({ guide, forceN }) => guide.holdN !== null && isUnder(guide.holdN, forceN))
  const found: Finding[] = []
  if (over.length > 0) {
    const worst = over.reduce((most, one) => (one.forceN / one.guide.holdN! > most.forceN / most.guide.holdN! ? one : most))
    const hold = worst.guide.holdN!
    found.push(finding(ID, {
      ...common, level: 'FIX', items: [site.run!.id, ...over.map(({ guide }) => guide.id)], measured: q('force', worst.forceN), limit: q('force', hold), source: plate('what the stake or guide holds, as typed'), where: atRun(worst.guide.runningM),
      what: say('Bend {bend}: it pushes {guide} with {load}; it holds {hold}.', 'Curva {bend}: empuja {guide} con {load}; aguanta {hold}.', { ...values, guide: worst.guide.label, load: q('force', worst.forceN), hold: q('force', hold) }),
      move: say('Set the two at that end {need} apart, use stronger ones, or open the bend.', 'Ponga las dos de ese extremo a {need}, use más fuertes, o abra la curva.', { need: q('length', (worst.armM * worst.forceN) / hold) }),
    }))
  }
  if (unknown.length > 0) {
    found.push(finding(ID, {
      ...common, level: 'CHECK', about: `${site.run!.id}#${vertex}:unknown`, source: mechanics('bends'), measured: q('force', guideN), items: unknown.map(({ guide }) => guide.id),
      missing: unknown.map(({ guide }) => ({ recordId: guide.id, path: 'figures.ratedHoldN.value', label: { en: `${guide.label}: holds sideways`, es: `${guide.label}: aguante lateral` } })),
      what: say('Bend {bend}: it pushes {guides} with {force}; what they hold is not known.', 'Curva {bend}: empuja {guides} con {force}; no se sabe cuánto aguantan.', { ...values, guides: listOf(unknown.map(({ guide }) => guide.label)) }),
      move: say('Try one with a loader and a gauge, or read the plate.', 'Pruebe una con un cargador y un dinamómetro, o lea la placa.'),
    }))
  }
  if (found.length > 0) return found
  return [finding(ID, { ...common, level: 'met', measured: q('force', guideN), source: mechanics('bends'), what: say('Bend {bend}: held by {force} at {arm} ({couple}), within what the guides hold.', 'Curva {bend}: la sujetan {force} a {arm} ({couple}), dentro de lo que aguantan las guías.', values) })]
}

const usualArm: Source = { class: 'mechanics', cite: 'mechanics, docs/formulas/bends.md; 15 ft between two guides: common practice, no published source' }

interface GuideLoad {
  guide: GuideView
  forceN: number
  /** Arm of its pair. */
  armM: number
}

/** Force on each guide of both pairs; one that serves both takes the sum. */
function loadsOf({ first, last }: { first: Pair; last: Pair }, coupleNm: number): GuideLoad[] {
  const loads = new Map<string, GuideLoad>()
  for (const { guides, armM } of [first, last]) {
    for (const guide of guides) {
      const before = loads.get(guide.id)
      loads.set(guide.id, { guide, forceN: (before?.forceN ?? 0) + coupleNm / armM, armM: Math.min(armM, before?.armM ?? armM) })
    }
  }
  return [...loads.values()]
}

/** What the stiffness of the pipe at the bends adds to the pull, a line of its own. */
function pullLine(site: SiteModel): Finding[] {
  const { joints } = stringPullOf(site)
  const hardest = joints.reduce<(typeof joints)[number] | null>((most, one) => (most === null || one.stiffnessN > most.stiffnessN ? one : most), null)
  if (hardest === null || hardest.stiffnessN <= 0) return []
  return [finding(ID, {
    level: 'NOTE', about: 'pull', measured: q('force', hardest.stiffnessN), source: mechanics('pull'), phases: ['pull'], where: atRun(hardest.lengthM), items: [site.run!.id],
    what: say('Bending the pipe round the bends adds {stiff} to a pull of {pull}.', 'Doblar el tubo en las curvas agrega {stiff} a un tiro de {pull}.', { stiff: q('force', hardest.stiffnessN), pull: q('force', hardest.pullN) }),
    move: say('Put upright rollers at the bends in place of stakes.', 'Ponga rodillos verticales en las curvas en vez de estacas.'),
  })]
}
