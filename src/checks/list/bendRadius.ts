import { minimumBendRadiusM } from '../../engine/pipe/bendRadius.ts'
import { bendSource } from '../../engine/pipe/tables.ts'
import type { RunBend, SiteModel } from '../../derive/types.ts'
import type { Localized } from '../../messages/localized.ts'
import type { TextValue } from '../../messages/render.ts'
import { bendMarginOf } from '../bendMargin.ts'
import type { Finding, Sentence, Source } from '../finding.ts'
import { isUnder } from '../gearBodies.ts'
import type { Limits } from '../limits.ts'
import { atRun, defineCheck, finding, houseRule, nameOf, q, say } from '../make.ts'

const ID = 'bend-radius'
const handbook: Source = { class: 'published', cite: bendSource }
/** Turns below this (1°) are set by eye and need no radius. */
const LEAST_TURN_RAD = 0.0175

export const bendRadius = defineCheck({
  id: ID,
  title: { en: 'Bends of the pull path', es: 'Curvas del recorrido' },
  cost: 'quick',
  run: (site, { limits }) => {
    const bends = site.bends.filter(({ turnRad }) => Math.abs(turnRad) >= LEAST_TURN_RAD)
    if (bends.length === 0 || site.run === null) return []
    const { properties } = site.pipe
    const least = properties === null ? null : minimumBendRadiusM({ odM: properties.odM, dr: properties.dr, fittingInBend: false })
    const missing = [
      ...(properties === null ? site.pipe.missing.filter(({ path }) => path === 'pipe') : []),
      ...bends.filter(({ radiusM }) => radiusM === null).map(({ vertex }) => ({ recordId: site.run!.id, path: `vertices.${vertex}.radiusM`, label: { en: `radius of bend ${vertex + 1}`, es: `radio de la curva ${vertex + 1}` } })),
    ]
    const found: Finding[] = missing.length === 0 ? [] : [finding(ID, {
      level: 'CHECK', about: 'unknown', missing, source: handbook, items: [site.run.id], phases: ['pull'], where: atRun(bends[0]!.fromM),
      what: say('A bend of the pull path cannot be judged.', 'Una curva del recorrido no se puede juzgar.'),
      move: say('Give pipe and radius.', 'Dé el tubo y el radio.'),
    })]
    if (least !== null && least.status === 'uncovered') {
      found.push(finding(ID, {
        level: 'CHECK', about: 'uncovered', source: handbook, items: [site.run.id], phases: ['pull'], where: atRun(bends[0]!.fromM),
        what: say('No published least radius: {reason}.', 'No hay radio mínimo publicado: {reason}.', { reason: least.reason }),
        move: say('Ask the pipe maker.', 'Pregunte al fabricante del tubo.'),
      }))
    }
    for (const bend of bends) found.push(...ofBend(site, bend, least?.status === 'ok' ? least.value : null, limits))
    return found
  },
})

function ofBend(site: SiteModel, bend: RunBend, leastM: number | null, limits: Limits): Finding[] {
  const { radiusM, vertex } = bend
  if (radiusM === null) return []
  const run = site.run!
  const common = { items: [run.id], phases: ['pull', 'rest'] as const, where: atRun((bend.fromM + bend.toM) / 2) }
  const found: Finding[] = []
  if (!bend.isFitting) {
    found.push(finding(ID, {
      ...common, level: 'FIX', about: `${run.id}#${vertex}:fit`, source: { class: 'mechanics', cite: 'geometry: an arc takes R·tan(turn/2) of either leg' },
      measured: q('length', radiusM),
      what: say('Bend {bend}: an arc of {radius} finds no room on its legs.', 'Curva {bend}: un arco de {radius} no cabe en sus tramos.', { bend: vertex + 1, radius: q('length', radiusM) }),
      move: say('Move the corner, or take out the next one.', 'Mueva la esquina, o quite la siguiente.'),
    }))
  }
  found.push(...fittingUnsaid(site, bend))
  if (leastM === null) return found
  const there = fittingInBend(site, bend)
  const neededM = there?.leastM ?? leastM
  const values = { bend: vertex + 1, radius: q('length', radiusM), least: q('length', neededM), times: q('ratio', neededM / site.pipe.odM!), fitting: there?.name ?? '' }
  const measures = { measured: q('length', radiusM), limit: q('length', neededM), bound: 'least' as const }
  if (isUnder(radiusM, neededM)) {
    return [...found, finding(ID, {
      ...common, ...measures, level: 'FIX', about: `${run.id}#${vertex}`, source: handbook, items: [run.id, ...(there === null ? [] : [there.id])],
      ...tooTight(there?.how ?? null, values),
      remedy: { command: 'setRun', args: { runId: run.id, path: `vertices.${vertex}.radiusM`, value: upToTapeM(site, neededM) }, label: say('Open it to {least}', 'Abrirla a {least}', { least: q('length', upToTapeM(site, neededM)) }) },
    })]
  }
  const margin = bendMarginOf(site, limits)
  if (margin !== null && isUnder(radiusM, margin.timesRatio * neededM)) {
    return [...found, finding(ID, {
      ...common, ...measures, limit: q('length', margin.timesRatio * neededM), level: 'CHECK', about: `${run.id}#${vertex}`, source: houseRule,
      what: say('Bend {bend}: {radius} is above the table’s {least}, but the wall is {wall}; {more} is safer there.', 'Curva {bend}: {radius} pasa de los {least} de la tabla, pero la pared está a {wall}; {more} es más seguro.', { ...values, wall: q('temperature', site.pipe.wallTemperatureC), more: q('length', margin.timesRatio * neededM) }),
      move: margin.isHot ? say('Watch it for a kink, or open it.', 'Vigile que no se doble, o ábrala.') : say('Bend it slowly, or open it.', 'Dóblelo despacio, o ábrala.'),
    })]
  }
  if (found.length > 0) return found
  return [finding(ID, {
    ...common, ...measures, level: 'met', about: `${run.id}#${vertex}`, source: handbook,
    what: say('Bend {bend}: {radius}, least {least} ({times} OD).', 'Curva {bend}: {radius}, mínimo {least} ({times} DE).', values),
  })]
}

type How = 'tieIn' | 'lies' | 'passes'

function tooTight(how: How | null, values: Record<string, TextValue>): Pick<Finding, 'what' | 'move'> & { move: Sentence } {
  if (how === null) {
    return {
      what: say('Bend {bend}: {radius} is tighter than the pipe may lie cold, {least} ({times} OD).', 'Curva {bend}: {radius} es más cerrada de lo que admite el tubo en frío, {least} ({times} DE).', values),
      move: say('Open the bend to {least}.', 'Abra la curva a {least}.', values),
    }
  }
  if (how === 'passes') {
    return {
      what: say('Bend {bend}: {fitting} is drawn through it, and with a fitting in the bend the least radius is {least} ({times} OD); it is {radius}.', 'Curva {bend}: {fitting} pasa por ella al jalar, y con un accesorio en la curva el radio mínimo es {least} ({times} DE); tiene {radius}.', values),
      move: say('Fuse it on beyond the bend after the pull, or open the bend to {least}.', 'Únalo después del tiro, pasada la curva, o abra la curva a {least}.', values),
    }
  }
  return {
    what: how === 'tieIn'
      ? say('Bend {bend}: the tie-in lies in it, and with a fitting in the bend the least radius is {least} ({times} OD); it is {radius}.', 'Curva {bend}: el empate queda dentro, y con un accesorio en la curva el radio mínimo es {least} ({times} DE); tiene {radius}.', values)
      : say('Bend {bend}: {fitting} lies in it, and with a fitting in the bend the least radius is {least} ({times} OD); it is {radius}.', 'Curva {bend}: {fitting} queda dentro, y con un accesorio en la curva el radio mínimo es {least} ({times} DE); tiene {radius}.', values),
    move: how === 'tieIn' ? say('Move the tie-in out of the bend, or open it to {least}.', 'Saque el empate de la curva, o ábrala a {least}.', values) : say('Move it out of the bend, or open the bend to {least}.', 'Sáquelo de la curva, o ábrala a {least}.', values),
  }
}

interface FittingThere {
  id: string
  how: How
  name: Localized
  /** 100 OD. */
  leastM: number
}

/** What makes a bend take 100 OD: a fitting that lies in it in the end, the tie-in of the run, or a fitting drawn through it. */
function fittingInBend(site: SiteModel, { fromM, toM }: RunBend): FittingThere | null {
  const least = minimumBendRadiusM({ odM: site.pipe.odM, dr: null, fittingInBend: true })
  if (least.status !== 'ok') return null
  const of = (id: string, how: How): FittingThere => ({ id, how, name: nameOf(site, id), leastM: least.value })
  const all = fittingsOf(site)
  const lying = all.find(({ fromM: startM, toM: endM }) => endM > fromM && startM < toM)
  if (lying !== undefined) return of(lying.id, 'lies')
  const target = site.placed.get(site.run?.targetId ?? '')
  if (target !== undefined && target.runningM !== null && target.runningM >= fromM && target.runningM <= toM) return of(target.id, 'tieIn')
  const passing = all.find(({ fromM: startM, isPulledAlong }) => startM >= toM && isPulledAlong === true)
  return passing === undefined ? null : of(passing.id, 'passes')
}

/** Fittings on the run with the stretch of pipe each takes. */
const fittingsOf = (site: SiteModel): { id: string; fromM: number; toM: number; isPulledAlong: boolean | null }[] =>
  [...site.placed.values()].flatMap(({ id, record, runningM }) => {
    if (record.kind !== 'fitting' || runningM === null) return []
    const halfM = (record.figures.lengthM.value ?? 0) / 2
    return [{ id, fromM: runningM - halfM, toM: runningM + halfM, isPulledAlong: record.isPulledAlong }]
  })

/** Fittings beyond a bend too tight for one, of which nobody has said whether they go through it. */
function fittingUnsaid(site: SiteModel, { toM, radiusM, vertex }: RunBend): Finding[] {
  const least = minimumBendRadiusM({ odM: site.pipe.odM, dr: null, fittingInBend: true })
  const unsaid = fittingsOf(site).filter(({ fromM, isPulledAlong }) => fromM >= toM && isPulledAlong === null)
  if (least.status !== 'ok' || unsaid.length === 0 || radiusM === null || !isUnder(radiusM, least.value)) return []
  return [finding(ID, {
    level: 'CHECK', about: `${site.run!.id}#${vertex}:passes`, source: handbook, phases: ['pull'], where: atRun((unsaid[0]!.fromM + unsaid[0]!.toM) / 2), items: unsaid.map(({ id }) => id),
    missing: unsaid.map(({ id }) => ({ recordId: id, path: 'isPulledAlong', label: { en: 'in the string while it is pulled', es: 'va en la sarta al jalarla' } })),
    what: say('Bend {bend}: whether {fitting} is drawn through it is not known; it would take {least}.', 'Curva {bend}: no se sabe si {fitting} pasa por ella al jalar; pediría {least}.', { bend: vertex + 1, fitting: nameOf(site, unsaid[0]!.id), least: q('length', least.value) }),
    move: say('Say whether it is in the string while it is pulled.', 'Diga si va en la sarta al jalarla.'),
  })]
}

/** Rounded up to half a foot or a decimetre. */
function upToTapeM(site: SiteModel, lengthM: number): number {
  const stepM = site.layout.displayUnits === 'feetInches' ? 0.1524 : 0.1
  return Math.round(Math.ceil(lengthM / stepM - 1e-9) * stepM * 1e6) / 1e6
}
