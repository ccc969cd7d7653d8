import { minimumBendRadiusM } from '../../engine/pipe/bendRadius.ts'
import { bendSource } from '../../engine/pipe/tables.ts'
import { limitParam } from '../../engine/limits.ts'
import type { RunBend, SiteModel } from '../../derive/types.ts'
import type { Finding, Source } from '../finding.ts'
import { isUnder } from '../gearBodies.ts'
import type { Limits } from '../limits.ts'
import { atRun, defineCheck, finding, houseRule, q, say } from '../make.ts'

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
  if (leastM === null) return found
  const fittingM = fittingInBend(site, bend)
  const neededM = fittingM ?? leastM
  const values = { bend: vertex + 1, radius: q('length', radiusM), least: q('length', neededM), times: q('ratio', neededM / site.pipe.odM!) }
  const measures = { measured: q('length', radiusM), limit: q('length', neededM), bound: 'least' as const }
  if (isUnder(radiusM, neededM)) {
    return [...found, finding(ID, {
      ...common, ...measures, level: 'FIX', about: `${run.id}#${vertex}`, source: handbook,
      what: fittingM === null
        ? say('Bend {bend}: {radius} is tighter than the pipe may lie cold, {least} ({times} OD).', 'Curva {bend}: {radius} es más cerrada de lo que admite el tubo en frío, {least} ({times} DE).', values)
        : say('Bend {bend}: the tie-in lies in it, and with a fitting in the bend the least radius is {least} ({times} OD); it is {radius}.', 'Curva {bend}: el empate queda dentro, y con un accesorio en la curva el radio mínimo es {least} ({times} DE); tiene {radius}.', values),
      move: fittingM === null ? say('Open the bend to {least}.', 'Abra la curva a {least}.', values) : say('Move the tie-in out of the bend, or open it to {least}.', 'Saque el empate de la curva, o ábrala a {least}.', values),
      remedy: { command: 'setRun', args: { runId: run.id, path: `vertices.${vertex}.radiusM`, value: upToTapeM(site, neededM) }, label: say('Open it to {least}', 'Abrirla a {least}', { least: q('length', upToTapeM(site, neededM)) }) },
    })]
  }
  const limit = limits.limit('bend-radius')
  const [margin, coldC, hotC] = [limitParam(limit, 'warnMargin'), limitParam(limit, 'coldBelowC'), limitParam(limit, 'hotAboveC')]
  const wallC = site.pipe.wallTemperatureC
  const isExtreme = !site.pipe.temperatureAssumed && (wallC < coldC || wallC > hotC)
  if (isExtreme && isUnder(radiusM, margin * neededM)) {
    return [...found, finding(ID, {
      ...common, ...measures, limit: q('length', margin * neededM), level: 'CHECK', about: `${run.id}#${vertex}`, source: houseRule,
      what: say('Bend {bend}: {radius} is above the table’s {least}, but the wall is {wall}; {more} is safer there.', 'Curva {bend}: {radius} pasa de los {least} de la tabla, pero la pared está a {wall}; {more} es más seguro.', { ...values, wall: q('temperature', wallC), more: q('length', margin * neededM) }),
      move: wallC > hotC ? say('Watch it for a kink, or open it.', 'Vigile que no se doble, o ábrala.') : say('Bend it slowly, or open it.', 'Dóblelo despacio, o ábrala.'),
    })]
  }
  if (found.length > 0) return found
  return [finding(ID, {
    ...common, ...measures, level: 'met', about: `${run.id}#${vertex}`, source: handbook,
    what: say('Bend {bend}: {radius}, least {least} ({times} OD).', 'Curva {bend}: {radius}, mínimo {least} ({times} DE).', values),
  })]
}

/** 100 OD where the run's target (its tie-in) lies within the bend; null elsewhere. */
function fittingInBend(site: SiteModel, { fromM, toM }: RunBend): number | null {
  const target = site.run?.targetId === null || site.run === null ? undefined : site.placed.get(site.run.targetId ?? '')
  if (target === undefined || target.runningM === null || target.runningM < fromM || target.runningM > toM) return null
  const least = minimumBendRadiusM({ odM: site.pipe.odM, dr: null, fittingInBend: true })
  return least.status === 'ok' ? least.value : null
}

/** Rounded up to half a foot or a decimetre. */
function upToTapeM(site: SiteModel, lengthM: number): number {
  const stepM = site.layout.displayUnits === 'feetInches' ? 0.1524 : 0.1
  return Math.round(Math.ceil(lengthM / stepM - 1e-9) * stepM * 1e6) / 1e6
}
