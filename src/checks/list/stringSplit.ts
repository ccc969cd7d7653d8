import { allowableOf } from '../../derive/stages/pull.ts'
import { pullerOf, usableTow } from '../../derive/stages/puller.ts'
import { midJointsOf, restartOf, stringsOf, type StringView } from '../../derive/strings.ts'
import type { SiteModel } from '../../derive/types.ts'
import type { Finding, Source } from '../finding.ts'
import { isUnder } from '../gearBodies.ts'
import { sourceOf, type Limits } from '../limits.ts'
import { atRun, defineCheck, finding, listOf, mechanics, q, say } from '../make.ts'
import { stringRoomOf } from '../roomNeed.ts'
import { countsText, splitAdvice, splitFor } from '../splitAdvice.ts'

const ID = 'string-split'
const restartSource: Source = { class: 'mechanics', cite: 'mechanics, docs/formulas/strings.md; friction 0.5 of ASTM F1962, from memory, confirm; start ×1.5 common practice', fromMemory: true }

export const stringSplit = defineCheck({
  id: ID,
  title: { en: 'Strings and the joints between them', es: 'Sartas y juntas entre ellas' },
  cost: 'quick',
  run: (site, tools) => {
    const strings = stringsOf(site)
    if (strings.length < 2 || site.run === null) return []
    return [...lengths(site, strings, tools.limits), ...midJoints(site, tools.limits)]
  },
})

/** Every string of known length against the room that rack and pull lead leave. */
function lengths(site: SiteModel, strings: readonly StringView[], limits: Limits): Finding[] {
  const source = sourceOf(limits.limit('end-room'))
  const room = stringRoomOf(site, limits)
  const known = strings.filter((one): one is StringView & { lengthM: number; sticks: number } => one.lengthM !== null && one.sticks !== null)
  // What the room of one string needs is asked for by its own check.
  if (room === null || known.length === 0) return []
  const tooLong = known.filter(({ lengthM }) => isUnder(room.longestM, lengthM))
  const longest = known.reduce((most, one) => (one.lengthM > most.lengthM ? one : most))
  const needM = room.roomM - room.longestM + longest.lengthM
  const common = { about: 'length', items: [room.boundaryId, ...room.items], where: atRun(longest.lengthM), source, phases: ['pull'] as const, measured: q('length', needM), limit: q('length', room.roomM) }
  const values = { counts: countsText(known.map(({ sticks }) => sticks)), sticks: longest.sticks, length: q('length', longest.lengthM), back: q('length', room.backM), lead: q('length', room.leadM(longest.lengthM)), need: q('length', needM), room: q('length', room.roomM), short: q('length', needM - room.roomM), names: listOf(tooLong.map(({ name }) => name)), strings: strings.length }
  if (tooLong.length > 0) {
    return [finding(ID, {
      ...common, level: 'FIX', ...splitAdvice(site, limits),
      what: tooLong.length === 1
        ? say('String {names} does not fit: {sticks} sticks make {length}; with {back} of infeed and {lead} of pull lead that is {need} of {room}, {short} short.', 'La sarta {names} no cabe: {sticks} tubos dan {length}; con {back} de entrada y {lead} de tiro son {need} de {room}, faltan {short}.', values)
        : say('Strings {names} do not fit: up to {sticks} sticks make {length}; with {back} of infeed and {lead} of pull lead that is {need} of {room}, {short} short.', 'Las sartas {names} no caben: hasta {sticks} tubos dan {length}; con {back} de entrada y {lead} de tiro son {need} de {room}, faltan {short}.', values),
    })]
  }
  if (room.missing.length > 0) return []
  const best = splitFor(site, limits)
  const isMore = best !== null && best.counts.length < strings.length
  return [finding(ID, {
    ...common, level: isMore ? 'NOTE' : 'met',
    what: say('{strings} strings of {counts} sticks: the longest takes {need} of {room} end to end.', '{strings} sartas de {counts} tubos: la más larga ocupa {need} de {room} de punta a punta.', values),
    ...(isMore ? { move: say('{fewer} would do: {best} sticks, a joint between strings less.', 'Bastarían {fewer}: {best} tubos, una junta entre sartas menos.', { fewer: best.counts.length, best: countsText(best.counts) }), remedy: splitAdvice(site, limits).remedy } : {}),
  })]
}

/** Time and pull of the joints between strings: the string lies still meanwhile and has to be started again. */
function midJoints(site: SiteModel, limits: Limits): Finding[] {
  const { joints, eachS } = midJointsOf(site)
  const restart = restartOf(site)
  if (eachS === null || restart === null) return []
  const allowableN = allowableOf(site)?.loadN ?? null
  const puller = pullerOf(site)
  const tow = puller === null ? null : usableTow(site, puller, limits, restart.lengthM)
  const isWinch = puller?.item.record.pullerKind === 'winch'
  const winchN = isWinch ? (tow?.usableN ?? null) : null
  const values = {
    count: joints.length, each: q('duration', eachS.likely), low: q('duration', eachS.low), high: q('duration', eachS.high),
    weight: q('force', restart.weightN), pull: q('force', restart.pullN), restart: q('force', restart.restartN), allowable: q('force', allowableN), winch: q('force', winchN),
  }
  const common = { source: restartSource, phases: ['tieIn'] as const, where: atRun(0), measured: q('force', restart.restartN) }
  const found: Finding[] = [finding(ID, {
    ...common, about: 'mid', level: 'CHECK', source: mechanics('strings'), measured: q('duration', eachS.likely),
    what: say('Joints between strings: {count}, each stops the pull for some {each} ({low} to {high}), before the strings are lined up; started again with all of it in, {weight} need some {restart}.', 'Juntas entre sartas: {count}; cada una detiene el jalado unos {each} ({low} a {high}), aparte de alinear las sartas; arrancar con todo adentro, {weight}, pide unos {restart}.', values),
    move: say('Plan who holds the string and what keeps a bore or a host open meanwhile; daylight or curfew for the last one.', 'Planee quién retiene la sarta y qué mantiene abierta la perforación o el tubo anfitrión; luz u horario para la última.'),
  })]
  if (winchN !== null && winchN < restart.restartN) {
    found.push(finding(ID, {
      ...common, about: 'winch', level: 'FIX', limit: q('force', winchN), items: [puller!.item.id],
      what: say('Starting again after a joint between strings needs some {restart}; the winch gives {winch}.', 'Arrancar tras una junta entre sartas pide unos {restart}; el malacate da {winch}.', values),
      move: say('A larger winch or a block, rollers under the tail, or all strings joined before the pull.', 'Un malacate mayor o una polea, rodillos bajo la cola, o unir todas las sartas antes de jalar.'),
    }))
  }
  if (allowableN !== null && allowableN < restart.restartN) {
    found.push(finding(ID, {
      ...common, about: 'pipe', level: 'FIX', limit: q('force', allowableN),
      what: say('Starting again after a joint between strings needs some {restart}; the pipe may take {allowable}.', 'Arrancar tras una junta entre sartas pide unos {restart}; el tubo admite {allowable}.', values),
      move: say('Join the strings before the pull, or put rollers under what lies outside.', 'Una las sartas antes de jalar, o ponga rodillos bajo lo que está afuera.'),
    }))
  }
  return found
}
