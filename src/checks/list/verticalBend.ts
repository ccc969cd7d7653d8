import { leastRadiusM } from '../../derive/arch.ts'
import { bodies, bodySolverOf, type BodySolution } from '../../derive/bodies.ts'
import type { SiteModel } from '../../derive/types.ts'
import { bentRadiusM, circleThroughM } from '../../engine/bends/verticalBend.ts'
import { minimumBendRadiusM } from '../../engine/pipe/bendRadius.ts'
import { bendSource } from '../../engine/pipe/tables.ts'
import { bendMarginOf } from '../bendMargin.ts'
import type { Finding, Source } from '../finding.ts'
import { isUnder } from '../gearBodies.ts'
import { atRun, defineCheck, finding, houseRule, nameOf, q, say } from '../make.ts'

const ID = 'vertical-bend'
const handbook: Source = { class: 'published', cite: `${bendSource}; radius by mechanics, EI/M of the beam, docs/formulas/bends.md` }
/** Steps to either side in which the pipe over or under its neighbours tells a crest from a dip. */
const LOOK_M = 0.5

export const verticalBend = defineCheck({
  id: ID,
  title: { en: 'Crests and dips', es: 'Lomos y hondonadas' },
  cost: 'slow',
  run: (site, { limits, mechanics }) => {
    const solver = bodySolverOf(site)
    const leastM = leastRadiusM(site)
    if (solver.missing.length > 0 || leastM === null) return []
    const resting = solver.solve(bodies.atRest(site))
    const all = [resting, ...mechanics.arrivals().map(({ solution }) => solution)]
    const tightest = all.flatMap((solution) => tightestOf(site, solution)).reduce<Tight | null>((least, one) => (least === null || one.radiusM < least.radiusM ? one : least), null)
    if (tightest === null) return []
    const { radiusM, atM, isCrest, phase } = tightest
    const near = nearestSupport(site, tightest)
    const common = { phases: [phase], about: 'tightest', where: atRun(atM, tightest.levelM), items: near === null ? [] : [near.itemId], measured: q('length', radiusM), bound: 'least' as const }
    const values = { radius: q('length', radiusM), least: q('length', leastM), at: { runningM: atM }, where: isCrest ? { en: 'hump', es: 'el lomo' } : { en: 'dip', es: 'la hondonada' }, label: near?.label ?? '', load: q('force', near?.reactionN ?? null), circle: q('length', near === null || !Number.isFinite(near.circleM) ? null : Math.abs(near.circleM)) }
    const [en, es] = near === null || !Number.isFinite(near.circleM) ? ['', ''] : ['; {label} carries {load} there, and the circle through it and its neighbours is {circle}', '; {label} carga ahí {load}, y el círculo por él y sus vecinos es de {circle}']
    const found: Finding[] = []
    const margin = bendMarginOf(site, limits)
    if (isUnder(radiusM, leastM)) {
      found.push(finding(ID, {
        ...common, level: 'FIX', limit: q('length', leastM), source: handbook,
        what: say(`At the {where} at {at} the pipe is bent to {radius}, tighter than it may lie cold, {least}${en}.`, `En {where} en {at} el tubo se dobla a {radius}, más de lo que admite en frío, {least}${es}.`, values),
        move: isCrest ? say('Lower what stands at the crest, or set its neighbours higher and closer.', 'Baje lo que está en el lomo, o suba y acerque a sus vecinos.') : say('Fill the dip, or set a support in it.', 'Rellene la hondonada, o ponga un apoyo en ella.'),
      }))
    } else if (margin !== null && isUnder(radiusM, margin.timesRatio * leastM)) {
      found.push(finding(ID, {
        ...common, level: 'CHECK', limit: q('length', margin.timesRatio * leastM), source: houseRule,
        what: say(`At the {where} at {at} the pipe is bent to {radius} and the wall is {wall}; {more} is safer there${en}.`, `En {where} en {at} el tubo se dobla a {radius} y la pared está a {wall}; {more} es más seguro${es}.`, { ...values, wall: q('temperature', site.pipe.wallTemperatureC), more: q('length', margin.timesRatio * leastM) }),
        move: say('Watch it for a kink, or ease the change of level.', 'Vigile que no se doble, o suavice el cambio de nivel.'),
      }))
    }
    found.push(...fittingsIn(site, resting))
    if (found.length > 0) return found
    return [finding(ID, { ...common, level: 'met', limit: q('length', leastM), source: handbook, what: say(`Bent most at the {where} at {at}: {radius}, least {least}${en}.`, `Se dobla más en {where} en {at}: {radius}, mínimo {least}${es}.`, values) })]
  },
})

interface Tight {
  radiusM: number
  atM: number
  levelM: number
  isCrest: boolean
  phase: 'pull' | 'rest'
  solution: BodySolution
}

function tightestOf(site: SiteModel, solution: BodySolution | null): Tight[] {
  if (solution === null || solution.result.status !== 'ok') return []
  const stiffnessNm2 = site.pipe.stiffnessNm2(solution.body.question)
  const { momentNm, atM } = solution.result.maxMoment
  if (stiffnessNm2 === null || momentNm === 0) return []
  const level = (xM: number): number => solution.result.at(xM).levelM
  const isCrest = level(atM) > (level(atM - LOOK_M) + level(atM + LOOK_M)) / 2
  return [{ radiusM: bentRadiusM(stiffnessNm2, momentNm), atM, levelM: level(atM), isCrest, phase: solution.body.question === 'rest' ? 'rest' : 'pull', solution }]
}

/** The support at the tightest place, what it carries, and the circle through it and the next to either side; null where none stands within reach. */
function nearestSupport(site: SiteModel, { solution, atM }: Tight): { itemId: string; label: string; reactionN: number; circleM: number } | null {
  const all = solution.supports.filter(({ view }) => view.levelM !== null)
  const index = all.findIndex(({ view }) => Math.abs(view.runningM - atM) < LOOK_M)
  const [before, here, after] = [all[index - 1], all[index], all[index + 1]]
  if (here === undefined) return null
  const point = ({ view }: (typeof all)[number]): { atM: number; levelM: number } => ({ atM: view.runningM, levelM: view.levelM! })
  const circleM = before === undefined || after === undefined || before.view.runningM >= here.view.runningM || here.view.runningM >= after.view.runningM ? Infinity : circleThroughM(point(before), point(here), point(after))
  return { itemId: here.view.itemId, label: here.view.label, reactionN: here.reactionN, circleM }
}

/** Fittings in the string at rest where it is bent up or down more than a fitting bears. */
function fittingsIn(site: SiteModel, resting: BodySolution | null): Finding[] {
  const least = minimumBendRadiusM({ odM: site.pipe.odM, dr: null, fittingInBend: true })
  const stiffnessNm2 = site.pipe.stiffnessNm2('rest')
  if (resting === null || resting.result.status !== 'ok' || least.status !== 'ok' || stiffnessNm2 === null) return []
  return [...site.placed.values()].flatMap(({ id, record, runningM }) => {
    if (record.kind !== 'fitting' || runningM === null || runningM < resting.body.startM || runningM > resting.body.endM) return []
    const halfM = (record.figures.lengthM.value ?? 0) / 2
    const radiusM = Math.min(...[runningM - halfM, runningM, runningM + halfM].map((at) => bentRadiusM(stiffnessNm2, resting.result.at(Math.min(Math.max(at, resting.body.startM), resting.body.endM)).momentNm)))
    if (!isUnder(radiusM, least.value)) return []
    return [finding(ID, {
      level: 'FIX', about: id, items: [id], phases: ['rest', 'tieIn'], where: atRun(runningM), measured: q('length', radiusM), limit: q('length', least.value), bound: 'least', source: handbook,
      what: say('{fitting} lies where the pipe is bent up or down to {radius}; with a fitting there the least is {least} (100 OD).', '{fitting} está donde el tubo se dobla hacia arriba o abajo a {radius}; con un accesorio el mínimo es {least} (100 DE).', { fitting: nameOf(site, id), radius: q('length', radiusM), least: q('length', least.value) }),
      move: say('Support the pipe to both sides of it, or move it to a straight stretch.', 'Apoye el tubo a ambos lados, o páselo a un tramo recto.'),
    })]
  })
}
