import { archOf, type ArchView } from '../../derive/arch.ts'
import type { SiteModel } from '../../derive/types.ts'
import { bendSource } from '../../engine/pipe/tables.ts'
import { bendMarginOf } from '../bendMargin.ts'
import type { Finding } from '../finding.ts'
import { isUnder } from '../gearBodies.ts'
import type { Limits } from '../limits.ts'
import { atRun, defineCheck, finding, houseRule, mechanics, q, say } from '../make.ts'

const ID = 'break-over'

export const breakOver = defineCheck({
  id: ID,
  title: { en: 'Arch into the bore', es: 'Arco de entrada a la perforación' },
  cost: 'quick',
  run: (site, { limits }) => {
    const view = archOf(site)
    if (view === null) return []
    const where = atRun(site.sticks.stringLengthM(site.sticks.stickCount))
    if ('missing' in view) {
      return [finding(ID, {
        level: 'CHECK', about: 'unknown', missing: view.missing, source: mechanics('bends'), phases: ['pull'], where,
        what: say('The arch into the bore cannot be worked out.', 'No se puede calcular el arco de entrada.'),
        move: say('Give entry angle and pipe.', 'Dé el ángulo de entrada y el tubo.'),
      })]
    }
    const tight = tooTight(site, view, limits)
    return [...(tight === null ? [] : [tight]), rise(site, view)].map((one) => ({ ...one, where, opens: { panel: 'archPit', label: say('Look at the arch', 'Ver el arco') } }))
  },
})

function tooTight(site: SiteModel, { radiusM, leastM, ownerM }: ArchView, limits: Limits): Finding | null {
  const common = { about: 'radius', phases: ['pull'] as const, measured: q('length', radiusM), bound: 'least' as const }
  const values = { radius: q('length', radiusM), least: q('length', leastM), owner: q('length', ownerM), times: q('ratio', site.job.arch?.ownerTimesOd ?? null) }
  if (leastM === null) {
    return finding(ID, { ...common, level: 'CHECK', source: { class: 'published', cite: bendSource }, what: say('No published least radius for this pipe; the arch has {radius}.', 'No hay radio mínimo publicado para este tubo; el arco tiene {radius}.', values), move: say('Ask the pipe maker.', 'Pregunte al fabricante del tubo.') })
  }
  if (isUnder(radiusM, leastM)) {
    return finding(ID, {
      ...common, level: 'FIX', limit: q('length', leastM), source: { class: 'published', cite: bendSource },
      what: say('The arch has a radius of {radius}, tighter than the pipe may lie cold, {least}.', 'El arco tiene un radio de {radius}, más cerrado de lo que admite el tubo en frío, {least}.', values),
      move: say('Lift it higher on a wider arch.', 'Levántelo más, en un arco más abierto.'),
      remedy: { command: 'setJob', args: { path: 'arch.radiusM', value: Math.max(leastM, ownerM ?? 0) }, label: say('Take {least}', 'Tomar {least}', { least: q('length', Math.max(leastM, ownerM ?? 0)) }) },
    })
  }
  if (ownerM !== null && isUnder(radiusM, ownerM)) {
    return finding(ID, {
      ...common, level: 'FIX', limit: q('length', ownerM), source: { class: 'jobRule', cite: 'least radius the owner asks for, as typed in the job' },
      what: say('The arch has a radius of {radius}; the owner asks for {owner} ({times} OD).', 'El arco tiene un radio de {radius}; el dueño pide {owner} ({times} DE).', values),
      move: say('Lift it higher on a wider arch.', 'Levántelo más, en un arco más abierto.'),
      remedy: { command: 'setJob', args: { path: 'arch.radiusM', value: ownerM }, label: say('Take {owner}', 'Tomar {owner}', { owner: q('length', ownerM) }) },
    })
  }
  const margin = bendMarginOf(site, limits)
  if (margin === null || !isUnder(radiusM, margin.timesRatio * leastM)) return null
  const more = q('length', margin.timesRatio * leastM)
  return finding(ID, {
    ...common, level: 'CHECK', limit: more, source: houseRule,
    what: say('The arch has a radius of {radius} and the wall is {wall}; {more} is safer there.', 'El arco tiene un radio de {radius} y la pared está a {wall}; {more} es más seguro.', { ...values, wall: q('temperature', site.pipe.wallTemperatureC), more }),
    move: say('Lift it slowly and watch it for a kink.', 'Levántelo despacio y vigile que no se doble.'),
  })
}

function rise(site: SiteModel, { arch, supports, radiusM }: ArchView): Finding {
  const highest = supports.reduce((most, one) => (one.levelM > most.levelM ? one : most))
  const heaviestN = Math.max(...supports.map(({ loadN }) => loadN ?? 0))
  return finding(ID, {
    level: 'NOTE', about: 'rise', measured: q('height', arch.riseM), source: mechanics('bends'), phases: ['pull', 'tieIn'],
    what: say('An entry of {angle} at a radius of {radius} lifts the pipe {rise} and takes {ground} of ground; {count} slings or rollers, the highest at {high}, the heaviest with {load}.', 'Una entrada de {angle} con radio de {radius} levanta el tubo {rise} y toma {ground} de terreno; {count} eslingas o rodillos, el más alto a {high}, el más cargado con {load}.', {
      angle: q('angle', site.job.arch?.entryAngleRad ?? null), radius: q('length', radiusM), rise: q('height', arch.riseM), ground: q('length', arch.lengthM), count: supports.length, high: q('height', highest.levelM), load: q('force', heaviestN),
    }),
    move: say('Have the lifting gear for it there before the pull.', 'Tenga el equipo para levantarlo antes del tiro.'),
  })
}
