/** Why no layout does: the limit that stays broken, by how much, and what gear would do it. */
import type { SiteModel } from '../../derive/types.ts'
import type { Finding, Sentence } from '../finding.ts'
import { q, say } from '../make.ts'
import { checks } from '../registry.ts'
import type { Layout, LayoutSearch } from './layouts.ts'
import type { ProposalKind, Sort, Unmet } from './types.ts'

interface Tried {
  site: SiteModel
  kind: ProposalKind
  search: LayoutSearch
  raised: readonly { layout: Layout; raises: readonly Finding[] }[]
  stands: readonly Sort[]
  rollers: readonly Sort[]
  canSling: boolean
  isSlung: boolean
}

const count = (sorts: readonly Sort[]): number => sorts.reduce((sum, one) => sum + one.count, 0)
const title = (checkId: string): Unmet['title'] => checks.find(({ id }) => id === checkId)?.title ?? { en: checkId, es: checkId }

/** The shortest way to a layout that would do: reach of the stands, how many there are, room, the nose, else what the best one tried raises. */
export function unmetOf(tried: Tried): Unmet[] {
  const { search, raised } = tried
  if (search.beyondReach !== null) return [outOfReach(search.beyondReach)]
  const best = raised.toSorted((a, b) => a.raises.length - b.raises.length)[0]
  if (best !== undefined) return best.raises.slice(0, 3).map((finding) => raisedBy(finding, tried))
  const [failure] = search.failures
  if (failure === undefined) return [noLevelPart(tried)]
  if (failure.why === 'count') return [tooFew(failure.kind, failure.atM, tried)]
  if (failure.why === 'blocked') return [noRoom(failure.atM, tried)]
  return [nose(failure, tried)]
}

function outOfReach({ saddleM, lowestM, highestM }: NonNullable<LayoutSearch['beyondReach']>): Unmet {
  const isLow = saddleM < lowestM
  const values = { saddle: q('height', saddleM), lowest: q('height', lowestM), highest: q('height', highestM), by: q('shortLength', isLow ? lowestM - saddleM : saddleM - highestM) }
  return {
    title: title('saddle-height'), by: values.by,
    what: isLow
      ? say('The jaw line is {saddle} high; these stands go no lower than {lowest}: {by} too high.', 'La línea de mordazas está a {saddle}; estos soportes no bajan de {lowest}: {by} de más.', values)
      : say('The jaw line is {saddle} high; these stands go no higher than {highest}: {by} short.', 'La línea de mordazas está a {saddle}; estos soportes no suben de {highest}: faltan {by}.', values),
    gear: isLow ? say('Stands that go down to {saddle}.', 'Soportes que bajen a {saddle}.', values) : say('Stands that go up to {saddle}, or timber under these.', 'Soportes que suban a {saddle}, o calces bajo estos.', values),
  }
}

function tooFew(kind: 'stand' | 'roller', atM: number, { site, search, stands, rollers }: Tried): Unmet {
  const have = count(kind === 'stand' ? stands : rollers)
  const endM = site.sticks.stringLengthM(site.sticks.stickCount)
  const spacingM = search.spacingM ?? 1
  // A stand over as many spacings as are left, at most.
  const more = kind === 'roller' ? Math.max(1, Math.ceil((endM - atM) / spacingM) - 1) : 1
  const values = { have, more, need: have + more, to: { runningM: endM }, at: { runningM: atM }, spacing: q('length', spacingM) }
  return {
    title: title('owned-gear'), by: q('count', more),
    what: kind === 'roller'
      ? say('The {have} rollers owned reach to {at} at {spacing}; the string ends at {to}.', 'Los {have} rodillos propios llegan a {at} con {spacing}; la sarta termina en {to}.', values)
      : say('The {have} stands owned that reach these heights are used up at {at}.', 'Los {have} soportes propios que alcanzan estas alturas se acaban en {at}.', values),
    gear: kind === 'roller' ? say('{more} more rollers.', '{more} rodillos más.', values) : say('One more stand at least.', 'Un soporte más, por lo menos.', values),
  }
}

function noRoom(atM: number, { search, site }: Tried): Unmet {
  const spacingM = search.spacingM ?? 0
  const values = { at: { runningM: atM }, spacing: q('length', spacingM) }
  const blocked = [...site.placed.values()].find(({ kind, runningM }) => ['trench', 'road', 'walkway', 'fence', 'building', 'water'].includes(kind) && runningM !== null && runningM > atM && runningM < atM + 3 * spacingM)
  return {
    title: title('nose-landing'), by: null,
    what: say('Beyond {at} nothing can stand within {spacing}, the most at which a free nose still rides on.', 'Después de {at} nada se puede poner en {spacing}, lo máximo con que una punta libre aún sube sola.', values),
    gear: blocked?.kind === 'trench' ? say('A bridge over the trench, or a loader to carry the nose across.', 'Un puente sobre la zanja, o un cargador que pase la punta.') : say('A sleeve or a planned gap there, or a loader to carry the nose across.', 'Una camisa o un hueco planeado ahí, o un cargador que pase la punta.'),
  }
}

function nose(failure: Extract<LayoutSearch['failures'][number], { ok: false }>, { stands, rollers }: Tried): Unmet {
  const lowestM = Math.min(...stands.map((one) => one.lowestSaddleM))
  const rollerM = rollers[0]?.lowestSaddleM ?? 0
  const overM = failure.droopM === null ? null : failure.droopM - (failure.leadInM ?? 0)
  const values = { at: { runningM: failure.atM }, droop: q('shortLength', failure.droopM), lead: q('shortLength', failure.leadInM), lowest: q('height', lowestM), roller: q('height', rollerM), by: q('shortLength', overM) }
  return {
    title: title('nose-landing'), by: overM === null ? null : q('shortLength', overM),
    what: say('Beyond {at} a free nose comes {droop} low to the next support wherever it stands; {lead} is taken in: {by} too low.', 'Después de {at} la punta libre llega {droop} abajo al siguiente soporte, esté donde esté; se admiten {lead}: {by} de más.', values),
    gear: lowestM > rollerM + 0.1
      ? say('Stands that go lower than {lowest}, toward the {roller} of the rollers; or a loader to sling the nose.', 'Soportes que bajen de {lowest}, hacia los {roller} de los rodillos; o un cargador que cuelgue la punta.', values)
      : say('A loader to sling the nose, or supports with a deeper lead-in.', 'Un cargador que cuelgue la punta, o apoyos con entrada más profunda.'),
  }
}

function noLevelPart({ search, stands }: Tried): Unmet {
  const have = count(stands)
  if (have < 2) return { title: title('exit-stands'), by: q('count', 2 - have), what: say('Two level stands are needed between the jaws and the lay-down; {have} are owned.', 'Hacen falta dos soportes a nivel entre las mordazas y el descenso; hay {have}.', { have }), gear: say('{more} more stands that reach the jaw line.', '{more} soportes más que alcancen la línea de mordazas.', { more: 2 - have }) }
  return { title: title('exit-stands'), by: null, what: say('No place for two level stands within a stick of the jaws.', 'No hay lugar para dos soportes a nivel a menos de un tubo de las mordazas.'), gear: search.spacingM === null ? say('Give the stiffness: pipe and wall temperature.', 'Dé la rigidez: tubo y temperatura de pared.') : say('Free the ground beside the machine, or stands with smaller bases.', 'Libere el suelo junto a la máquina, o use soportes con base menor.') }
}

const gearFor: Readonly<Record<string, Sentence>> = {
  'stand-load': say('Stands and rollers rated for twice that load.', 'Soportes y rodillos con capacidad para el doble de esa carga.'),
  'saddle-height': say('Stands with another height range.', 'Soportes con otro rango de altura.'),
  'owned-gear': say('More of that gear.', 'Más de ese equipo.'),
  'nose-landing': say('A loader rated for the nose at that reach, or supports with a deeper lead-in.', 'Un cargador con capacidad para la punta a ese alcance, o apoyos con entrada más profunda.'),
  'set-out-tolerance': say('Stands with screw jacks that hold to that height.', 'Soportes con tornillo que mantengan esa altura.'),
  'hold-back': say('A tether and an anchor before rollers go under the string.', 'Una retención y un ancla antes de poner rodillos bajo la sarta.'),
}

/** A finding the best layout would raise, with its shortfall. */
function raisedBy(finding: Finding, { raised }: Tried): Unmet {
  const by = finding.margin?.value === null || finding.margin === null ? null : q(finding.margin.kind, Math.abs(finding.margin.value))
  return { title: title(finding.checkId), what: finding.what, by, gear: gearFor[finding.checkId] ?? finding.move ?? say('{count} layouts tried; see the note.', 'Se probaron {count} planos; vea la nota.', { count: raised.length }) }
}
