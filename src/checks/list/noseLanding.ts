import type { NoseArrival } from '../../derive/noseArrivals.ts'
import type { Mechanics } from '../../derive/mechanics.ts'
import type { SiteModel } from '../../derive/types.ts'
import type { Draft } from '../make.ts'
import type { Finding, Level, Remedy } from '../finding.ts'
import { sourceOf, type Limits } from '../limits.ts'
import { atSupport, defineCheck, downToTapeM, finding, q, say, stretchOf } from '../make.ts'
import { loaderPlateN } from '../../derive/loaders.ts'
import { strikesOthers } from '../noseStrike.ts'

interface Judged {
  arrival: NoseArrival
  level: Level
  liftN: number | null
}

/** Nobody sets a stand finer than this: a nose that much lower still counts as taken in. */
const SLACK_M = 0.0005
/** A row of rollers is judged as one from this many on. */
const ROW_FROM = 3

export const noseLanding = defineCheck({
  id: 'nose-landing',
  title: { en: 'Nose on to the next support', es: 'Punta al siguiente soporte' },
  cost: 'slow',
  run: (site, { limits, mechanics }) => {
    const arrivals = mechanics.arrivals()
    if (arrivals.length === 0) return []
    const hold = site.job.noseHold ?? 'slung'
    return hold === 'slung' || hold === 'lifted' ? held(site, arrivals, mechanics, limits) : free(site, arrivals, mechanics, limits)
  },
})

/**
 * A nose slung at a height somebody gave: too low for a support it comes on to, it meets it below its top whatever the crew
 * does; otherwise the load at the sling at that height counts. Null where none is too low.
 */
function slungTooLow(site: SiteModel, arrivals: readonly NoseArrival[], slingM: number, limits: Limits): Finding | null {
  const short = arrivals.map((arrival) => ({ arrival, shortM: arrival.view.levelM! - Math.max(site.groundLevelAt(arrival.tipM) + slingM, arrival.view.levelM! - arrival.droopM) })).filter(({ arrival, shortM }) => shortM > arrival.leadInM + SLACK_M)
  if (short.length === 0) return null
  const { arrival, shortM } = short.reduce((most, one) => (one.shortM > most.shortM ? one : most))
  const neededM = Math.max(...arrivals.map(({ view, tipM }) => view.levelM! - site.groundLevelAt(tipM)))
  const values = { labels: stretchOf(short.map((one) => one.arrival.view)), label: arrival.view.label, sling: q('height', slingM), short: q('shortLength', shortM), needed: q('height', neededM) }
  return finding('nose-landing', {
    level: 'FIX', about: 'sling', measured: q('shortLength', shortM), limit: q('shortLength', arrival.leadInM), source: arrival.view.leadInIsTypical ? sourceOf(limits.limit('nose-lead-in')) : { class: 'plate', cite: 'lead-in depth on the plate of the support' },
    phases: ['pull'], where: atSupport(arrival.view), items: [...new Set(short.map((one) => one.arrival.view.itemId))],
    what: say('Slung {sling} above the ground the nose comes to {label} {short} below its top.', 'Colgada a {sling} del suelo la punta llega a {label} {short} bajo su tope.', values),
    move: say('Sling it {needed} above the ground, or lift it over {labels}.', 'Cuélguela a {needed} del suelo, o levántela sobre {labels}.', values),
    remedy: { command: 'setJob', args: { path: 'slingHeightM.value', value: neededM }, label: say('Sling the nose {needed} up', 'Colgar la punta a {needed}', values) },
  })
}

/** Slung or carried: the droop is only worth knowing, the load at the sling is what counts. */
function held(site: SiteModel, arrivals: readonly NoseArrival[], mechanics: Mechanics, limits: Limits): Finding[] {
  const slingM = (site.job.noseHold ?? 'slung') === 'slung' ? site.job.slingHeightM.value : null
  const tooLow = slingM === null ? null : slungTooLow(site, arrivals, slingM, limits)
  if (tooLow !== null) return [tooLow]
  const lowest = arrivals.toSorted((a, b) => b.droopM - a.droopM).slice(0, 3)
  const liftOf = (arrival: NoseArrival): number => (slingM === null ? mechanics.liftN(arrival) : mechanics.heldN(arrival, site.groundLevelAt(arrival.tipM) + slingM)) ?? 0
  const [worst] = lowest.map((arrival) => ({ arrival, liftN: liftOf(arrival) })).toSorted((a, b) => b.liftN - a.liftN)
  if (worst === undefined) return []
  const { arrival, liftN } = worst
  const source = sourceOf(limits.limit('nose-lead-in'))
  const common = { source, phases: ['pull'] as const, where: atSupport(arrival.view), items: [arrival.view.itemId] }
  if (arrival.droopM <= arrival.leadInM + SLACK_M) return [finding('nose-landing', { ...common, level: 'met', measured: q('shortLength', arrival.droopM), limit: q('shortLength', arrival.leadInM), what: say('Each support takes the nose in by itself.', 'Cada soporte recibe la punta por sí solo.') })]
  const plateN = loaderPlateN(site)
  const values = { label: arrival.view.label, droop: q('shortLength', arrival.droopM), lift: q('force', liftN) }
  const isOver = plateN !== null && liftN > plateN
  return [finding('nose-landing', {
    ...common,
    joints: [arrival.pull],
    level: isOver ? 'FIX' : 'NOTE',
    measured: q('force', liftN),
    ...(plateN === null ? {} : { limit: q('force', plateN) }),
    source: isOver ? { class: 'plate', cite: 'rated load at that reach on the plate of the loader' } : source,
    what: arrival.isOnGround
      ? say('Let go, the nose would lie on the ground short of {label}, {droop} low; the sling carries {lift}.', 'Suelta, la punta quedaría en el suelo antes de {label}, {droop} abajo; la eslinga carga {lift}.', values)
      : say('Let go, the nose would come to {label} {droop} low; the sling carries {lift}.', 'Suelta, la punta llegaría a {label} {droop} abajo; la eslinga carga {lift}.', values),
    move: isOver ? say('Use a loader rated for it at that reach.', 'Use un cargador con esa capacidad a ese alcance.') : say('Keep the nose slung over each support until it has landed.', 'Mantenga la punta colgada sobre cada soporte hasta que asiente.'),
  })]
}

function free(site: SiteModel, arrivals: readonly NoseArrival[], mechanics: Mechanics, limits: Limits): Finding[] {
  const plateN = loaderPlateN(site)
  const judged = arrivals.map((arrival): Judged => {
    const needsLift = arrival.droopM > arrival.leadInM + SLACK_M
    const liftN = needsLift && arrival.view.landingAid !== 'none' ? mechanics.liftN(arrival) : null
    return { arrival, liftN, level: levelOf(arrival, liftN, limits, plateN) }
  })
  const low = judged.filter(({ level }) => level !== 'met')
  if (low.length === 0) {
    const worst = arrivals.reduce((most, one) => (one.droopM - one.leadInM > most.droopM - most.leadInM ? one : most))
    return [finding('nose-landing', {
      level: 'met', measured: q('shortLength', worst.droopM), limit: q('shortLength', worst.leadInM), source: sourceOf(limits.limit('nose-lead-in')), phases: ['pull'],
      where: atSupport(worst.view), items: [worst.view.itemId], what: say('Each support takes the free nose in by itself.', 'Cada soporte recibe la punta libre por sí solo.'),
    })]
  }
  return grouped(judged).map((group) => findingFor(site, group, mechanics, limits))
}

function levelOf({ droopM, leadInM, view }: NoseArrival, liftN: number | null, limits: Limits, plateN: number | null): Level {
  if (droopM <= leadInM + SLACK_M) return 'met'
  if (view.landingAid === 'ramp') return 'CHECK'
  if (view.landingAid === 'liftByHand') return liftN !== null && liftN <= (limits.limit('hand-lift').fix ?? Infinity) ? 'CHECK' : 'FIX'
  if (view.landingAid === 'liftByLoader') return liftN !== null && plateN !== null && liftN > plateN ? 'FIX' : 'CHECK'
  // A nose above the roller's centre rides up by itself.
  return view.rollerRadiusM !== null && droopM <= view.rollerRadiusM ? 'CHECK' : 'FIX'
}

/** Pulls in which supports are met; 0 while stick 1 is fed through. */
const pullsOf = (arrivals: readonly NoseArrival[]): number[] => [...new Set(arrivals.map(({ pull }) => pull))]

/** Neighbouring supports with the same verdict, kind and aid make one finding. */
function grouped(judged: readonly Judged[]): Judged[][] {
  const groups: Judged[][] = []
  let open: Judged[] | null = null
  for (const one of judged) {
    const before = open?.at(-1)
    const isSame = before !== undefined && before.level === one.level && before.arrival.view.kind === one.arrival.view.kind && before.arrival.view.landingAid === one.arrival.view.landingAid
    if (one.level === 'met') open = null
    else if (open !== null && isSame) open.push(one)
    else groups.push((open = [one]))
  }
  return groups
}

function findingFor(site: SiteModel, group: readonly Judged[], mechanics: Mechanics, limits: Limits): Finding {
  const worst = group.reduce((most, one) => (one.arrival.droopM - one.arrival.leadInM > most.arrival.droopM - most.arrival.leadInM ? one : most))
  const { arrival, level } = worst
  const views = group.map((one) => one.arrival.view)
  const leadIn = limits.limit('nose-lead-in')
  const common = {
    about: views[0]!.key,
    level,
    measured: q('shortLength', arrival.droopM),
    limit: q('shortLength', arrival.leadInM),
    source: arrival.view.leadInIsTypical ? sourceOf(leadIn) : { class: 'plate' as const, cite: 'lead-in depth on the plate of the support' },
    phases: ['pull'] as const,
    joints: pullsOf(group.map((one) => one.arrival)),
    where: atSupport(arrival.view),
    items: [...new Set(views.map(({ itemId }) => itemId))],
  }
  const values = { labels: stretchOf(views), label: arrival.view.label, droop: q('shortLength', arrival.droopM) }
  if (arrival.view.landingAid !== 'none') return aided(common, group, values, limits)
  if (level === 'CHECK') return finding('nose-landing', { ...common, what: say('The free nose meets {label} {droop} below its top, above the roller’s centre.', 'La punta libre llega a {label} {droop} bajo su tope, sobre el centro del rodillo.', values), move: say('Watch it ride up; have a bar or strap ready.', 'Vea que suba sola; tenga lista una barra o correa.') })
  if (views.length >= ROW_FROM && arrival.view.kind === 'roller') return row(site, common, group, mechanics, limits, values)
  const liftN = mechanics.liftN(arrival)
  const reach = mechanics.reachable(arrival)
  const lift = { ...values, lift: q('force', liftN) }
  const danger = views.map((view) => strikesOthers(site, view, mechanics)).find((one) => one !== null) ?? null
  if (danger !== null) return finding('nose-landing', { ...common, level: 'STOP', source: { class: 'mechanics', cite: 'mechanics, docs/formulas/tipping.md; 10 ft is the width of the zone ahead of the nose, a house rule' }, what: say(`A free nose strikes {label}, {droop} below its top, ${danger.en}.`, `La punta libre golpea {label}, {droop} bajo su tope, ${danger.es}.`, values), move: say('Sling the nose or plan a lift there, and keep everybody off.', 'Cuelgue la punta o planee un levante ahí, y aleje a todos.'), remedy: planLift(common.items, liftN, limits) })
  return finding('nose-landing', {
    ...common,
    what: arrival.isOnGround
      ? say('A free nose lies on the ground short of {label}, {droop} below its roller.', 'La punta libre queda en el suelo antes de {label}, {droop} bajo su rodillo.', values)
      : say('A free nose comes to {label} {droop} low.', 'La punta libre llega a {label} {droop} abajo.', values),
    move: reach === null
      ? say('Plan a lift there, {lift}.', 'Planee un levante ahí, {lift}.', lift)
      : say('Plan a lift there, {lift}, or slide {label} to {at}.', 'Planee un levante ahí, {lift}, o corra {label} a {at}.', { ...lift, at: { runningM: downToTapeM(site, reach.runningM) } }),
    remedy: planLift(common.items, liftN, limits),
  })
}

function aided(common: Draft0, group: readonly Judged[], values: NonNullable<Finding['what']['values']>, limits: Limits): Finding {
  const aid = group[0]!.arrival.view.landingAid
  const liftN = Math.max(...group.map((one) => one.liftN ?? 0))
  const all = { ...values, lift: q('force', liftN) }
  if (aid === 'ramp') return finding('nose-landing', { ...common, what: say('The ramp at {labels} has to take the nose {droop} up.', 'La rampa en {labels} debe subir la punta {droop}.', all), move: say('See that the ramp reaches below the nose and stays put.', 'Vea que la rampa llegue bajo la punta y no se mueva.') })
  const handN = limits.limit('hand-lift').fix
  if (common.level === 'FIX') {
    const byHand = aid === 'liftByHand'
    return finding('nose-landing', {
      ...common,
      measured: q('force', liftN),
      limit: q('force', byHand ? handN : null),
      source: byHand ? sourceOf(limits.limit('hand-lift')) : { class: 'plate', cite: 'rated load at that reach on the plate of the loader' },
      what: byHand ? say('Lifting the nose on to {labels} takes {lift}: too much by hand.', 'Levantar la punta a {labels} pide {lift}: demasiado a mano.', all) : say('Lifting the nose on to {labels} takes {lift}: over the loader’s plate.', 'Levantar la punta a {labels} pide {lift}: más que la placa del cargador.', all),
      move: byHand ? say('Lift it with the loader.', 'Levántela con el cargador.') : say('Use a loader rated for it at that reach.', 'Use un cargador con esa capacidad a ese alcance.'),
      remedy: byHand ? planLift(common.items, liftN, limits) : null,
    })
  }
  return finding('nose-landing', {
    ...common,
    what: aid === 'liftByHand' ? say('Lift the nose {droop} on to {labels} by hand, {lift}.', 'Levante la punta {droop} a {labels} a mano, {lift}.', all) : say('Lift the nose {droop} on to {labels} with the loader, {lift}.', 'Levante la punta {droop} a {labels} con el cargador, {lift}.', all),
    move: say('Stop the pull short of it, lift, then go on.', 'Pare el jalado antes, levante y siga.'),
  })
}

type Draft0 = Omit<Draft, 'what'> & { items: readonly string[] }

function planLift(itemIds: readonly string[], liftN: number | null, limits: Limits): Remedy {
  const byHand = liftN !== null && liftN <= (limits.limit('hand-lift').fix ?? 0)
  return {
    command: 'setField',
    args: { ids: itemIds, path: 'landingAid', value: byHand ? 'liftByHand' : 'liftByLoader' },
    label: byHand ? say('Plan a lift by hand there', 'Planear un levante a mano ahí') : say('Plan a lift with the loader there', 'Planear un levante con el cargador ahí'),
  }
}

/** A row of ground rollers too far apart: set at the spacing that takes the nose in, and filled up to where it ended. */
function row(site: SiteModel, common: Draft0, group: readonly Judged[], mechanics: Mechanics, limits: Limits, values: NonNullable<Finding['what']['values']>): Finding {
  const views = group.map((one) => one.arrival.view)
  const least = Math.min(...views.map(({ leadInM }) => leadInM ?? Infinity))
  const spacingM = downToTapeM(site, mechanics.evenSpacing(least) ?? 0)
  const [first, last] = [views[0]!, views.at(-1)!]
  const nowM = (last.runningM - first.runningM) / (views.length - 1)
  const before = site.supports.filter(({ runningM }) => runningM < first.runningM - 0.02).at(-1)
  const startM = Math.min(first.runningM, (before?.runningM ?? first.runningM - spacingM) + spacingM)
  const count = spacingM > 0.3 ? Math.floor((last.runningM - startM) / spacingM + 1e-6) + 1 : 0
  const more = count - views.length
  const onGround = group.some(({ arrival }) => arrival.isOnGround)
  // On the ground the droop is only the height of the roller; what the spacing does shows without the ground.
  const hangsM = onGround ? (mechanics.evenDroop(nowM) ?? 0) : 0
  const droop = Math.max(hangsM, ...group.map(({ arrival }) => arrival.droopM))
  const all = { ...values, droop: q('shortLength', droop), now: q('length', nowM), spacing: q('length', spacingM), more }
  const what = onGround
    ? say('{labels} stand {now} apart: a free nose would hang {droop} below the next one, so it lies on the ground.', '{labels} están a {now}: la punta libre colgaría {droop} bajo el siguiente, así que queda en el suelo.', all)
    : say('{labels} stand {now} apart: a free nose comes to the next one {droop} low.', '{labels} están a {now}: la punta libre llega al siguiente {droop} abajo.', all)
  // Close enough already: the nose comes down from the stands before them, and no spacing helps that.
  if (nowM <= spacingM + SLACK_M) return comingDown(common, group, mechanics, limits, values)
  if (spacingM <= 0.3) return finding('nose-landing', { ...common, measured: q('shortLength', droop), what, move: say('Sling the nose, or plan a lift at each.', 'Cuelgue la punta o planee un levante en cada uno.') })
  return finding('nose-landing', {
    ...common,
    measured: q('shortLength', droop),
    what,
    move: more > 0 ? say('Set them {spacing} apart, {more} more rollers; or sling the nose.', 'Póngalos a {spacing}, {more} rodillos más; o cuelgue la punta.', all) : say('Set them {spacing} apart, or sling the nose.', 'Póngalos a {spacing}, o cuelgue la punta.', all),
    remedy: views.some(({ locked }) => locked) ? null : respace(site, views, { startM, spacingM, more }, all),
  })
}

/** Rollers close enough together on which the nose still comes down, from the stands that let it down. */
function comingDown(common: Draft0, group: readonly Judged[], mechanics: Mechanics, limits: Limits, values: NonNullable<Finding['what']['values']>): Finding {
  const liftN = Math.max(...group.map(({ arrival }) => mechanics.liftN(arrival) ?? 0))
  const all = { ...values, lift: q('force', liftN) }
  return finding('nose-landing', {
    ...common,
    what: group.some(({ arrival }) => arrival.isOnGround)
      ? say('Coming down from the stands a free nose lies on the ground short of {labels}, {droop} low.', 'Al bajar de los soportes la punta libre queda en el suelo antes de {labels}, {droop} abajo.', all)
      : say('Coming down from the stands a free nose comes to {labels} {droop} low.', 'Al bajar de los soportes la punta libre llega a {labels} {droop} abajo.', all),
    move: say('Plan a lift at each, {lift} at most; or sling the nose.', 'Planee un levante en cada uno, {lift} como máximo; o cuelgue la punta.', all),
    remedy: planLift(common.items, liftN, limits),
  })
}

function respace(site: SiteModel, views: readonly NoseArrival['view'][], row: { startM: number; spacingM: number; more: number }, values: NonNullable<Finding['what']['values']>): Remedy {
  const { startM, spacingM, more } = row
  const label = more > 0 ? say('Space them {spacing} apart with {more} more', 'Ponerlos a {spacing} con {more} más', values) : say('Space them {spacing} apart', 'Ponerlos a {spacing}', values)
  const space = { command: 'spaceAt', args: { ids: views.map(({ itemId }) => itemId), spacingM, fromRunningM: startM } }
  if (more <= 0 || site.run === null) return { ...space, label }
  const record = site.document.records[views[0]!.itemId]
  const patch = record !== undefined && record.kind === 'roller' ? { height: record.height, figures: record.figures } : {}
  const fill = { command: 'placeRow', args: { kind: 'roller', fromRunningM: startM + views.length * spacingM, spacingM, count: more, runId: site.run.id, patch } }
  return { command: 'sequence', args: { commands: [space, fill], label: { text: { en: 'space the rollers', es: 'espaciar los rodillos' } } }, label }
}
