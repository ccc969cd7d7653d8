import type { Finding, Remedy } from '../finding.ts'
import type { MissingInput, SiteModel } from '../../derive/types.ts'
import { limitParam } from '../../engine/limits.ts'
import { recordsOf } from '../../scene/document.ts'
import { isLocked, isUnder, stringReachM } from '../gearBodies.ts'
import { sourceOf } from '../limits.ts'
import { atRun, defineCheck, finding, q, say } from '../make.ts'
import { roomOf } from '../room.ts'
import { backOf, leadOf } from '../roomNeed.ts'
import { splitAdvice } from '../splitAdvice.ts'

const ID = 'end-room'

export const endRoom = defineCheck({
  id: ID,
  title: { en: 'Room end to end', es: 'Espacio de punta a punta' },
  cost: 'quick',
  run: (site, { limits }) => {
    // A machine that walks pulls nothing: the room of strung sticks is another check's.
    if (site.setUp === null || site.run === null || site.job.method === 'walking') return []
    const limit = limits.limit('end-room')
    const source = sourceOf(limit)
    const reach = stringReachM(site)
    if (recordsOf(site.document, 'boundary').length === 0) return [unknown(site, source, [{ recordId: site.layout.id, path: 'boundary', label: { en: 'yard boundary', es: 'límite del patio' } }])]
    if (reach === null) return [unknown(site, source, site.sticks.missing.filter(({ path }) => path === 'stickLengthM'))]
    const room = roomOf(site)
    if (room === null) {
      return [finding(ID, {
        level: 'FIX', about: 'outside', items: [site.setUp.id], where: atRun(0), source, phases: ['setUp'],
        what: say('The datum lies outside the boundary.', 'El origen está fuera del límite.'),
        move: say('Bring datum and machine inside.', 'Meta el origen y la máquina adentro.'),
      })]
    }
    const lead = leadOf(site, reach.toM, limitParam(limit, 'overRunM'))
    const [needBackM, needAheadM] = [backOf(site, reach.fromM), lead.endM]
    const needM = needBackM + needAheadM
    const roomM = room.backM + room.aheadM
    const spareM = roomM - needM
    // Of several strings another check says which are too long, this one among them.
    if (site.sticks.counts.size > 1 && isUnder(spareM, limit.fix ?? 0)) return []
    const common = { source, phases: ['pull'] as const, items: [room.boundaryId, ...lead.items], where: atRun(room.aheadM), measured: q('length', needM), limit: q('length', roomM) }
    const parts = { infeed: q('length', needBackM), string: q('length', reach.toM), lead: q('length', Math.max(0, needAheadM - reach.toM)), need: q('length', needM), room: q('length', roomM), spare: q('length', Math.abs(spareM)) }
    if (isUnder(spareM, limit.fix ?? 0)) {
      return [finding(ID, {
        ...common, level: 'FIX',
        ...splitAdvice(site, limits),
        what: say('{spare} short: {infeed} of infeed, {string} of string and {lead} of pull lead need {need}, the yard has {room}.', 'Faltan {spare}: {infeed} de entrada, {string} de sarta y {lead} de tiro piden {need}; el patio tiene {room}.', parts),
      })]
    }
    const [overBackM, overAheadM] = [needBackM - room.backM, needAheadM - room.aheadM]
    if (isUnder(0, overBackM) || isUnder(0, overAheadM)) return [offCentre(site, common, { overBackM, overAheadM, needBackM, needAheadM, backM: room.backM, aheadM: room.aheadM })]
    if (lead.missing.length > 0) return [unknown(site, source, lead.missing)]
    const isTight = isUnder(spareM, Math.max(limitParam(limit, 'noteM'), limitParam(limit, 'noteRatio') * roomM))
    return [finding(ID, {
      ...common, level: isTight ? 'NOTE' : 'met',
      what: say('{spare} spare: {infeed} of infeed, {string} of string and {lead} of pull lead in {room}.', 'Sobran {spare}: {infeed} de entrada, {string} de sarta y {lead} de tiro en {room}.', parts),
      ...(isTight ? { move: say('Keep the over-run clear to the very end.', 'Mantenga libre el tramo final hasta la última punta.') } : {}),
    })]
  },
})

interface Ends {
  overBackM: number
  overAheadM: number
  needBackM: number
  needAheadM: number
  backM: number
  aheadM: number
}

/** The yard is long enough, but one end reaches out of it: the set-up slides toward the other. */
function offCentre(site: SiteModel, common: Omit<Parameters<typeof finding>[1], 'level' | 'what'>, ends: Ends): Finding {
  const isBack = ends.overBackM > 0
  const byM = isBack ? ends.overBackM : ends.overAheadM
  const by = q('length', byM)
  return finding(ID, {
    ...common,
    level: 'FIX',
    where: atRun(isBack ? -ends.backM : ends.aheadM),
    measured: q('length', isBack ? ends.needBackM : ends.needAheadM),
    limit: q('length', isBack ? ends.backM : ends.aheadM),
    what: isBack
      ? say('The infeed end reaches {by} beyond the boundary; the yard as a whole is long enough.', 'La punta de entrada sale {by} del límite; el patio en total alcanza.', { by })
      : say('String and pull lead reach {by} beyond the boundary; the yard as a whole is long enough.', 'La sarta y el tiro salen {by} del límite; el patio en total alcanza.', { by }),
    move: isBack ? say('Slide machine and axis {by} toward the exit.', 'Corra la máquina y el eje {by} hacia la salida.', { by }) : say('Slide machine and axis {by} toward the infeed.', 'Corra la máquina y el eje {by} hacia la entrada.', { by }),
    remedy: slide(site, isBack ? byM : -byM),
  })
}

function unknown(site: SiteModel, source: Finding['source'], missing: readonly MissingInput[]): Finding {
  return finding(ID, {
    level: 'CHECK', about: 'unknown', missing, source, items: missing.map(({ recordId }) => recordId).filter((id) => site.placed.has(id)),
    what: say('Whether the strip is long enough is not known.', 'No se sabe si la franja alcanza.'),
    move: say('Give what is missing.', 'Dé lo que falta.'),
  })
}

function slide(site: SiteModel, toExitM: number): Remedy | null {
  const { setUp, run, jaws } = site
  if (setUp === null || run === null || run.vertices.length > 0 || jaws.machineId === null || isLocked(site, jaws.machineId)) return null
  // A centimetre more than needed, so that rounding leaves nothing over the line.
  const byM = toExitM + 0.01 * Math.sign(toExitM)
  return { command: 'slideBy', args: { ids: [jaws.machineId], dRunningM: byM, dOffsetM: 0 }, label: say('Slide machine and axis by {by}', 'Correr máquina y eje {by}', { by: q('length', Math.abs(byM)) }) }
}
