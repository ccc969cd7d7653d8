import { noseStrikesOf, standPushesOf, type NoseStrike, type StandPush, type TipCause } from '../../derive/standTips.ts'
import type { MissingInput } from '../../derive/types.ts'
import type { Localized } from '../../messages/localized.ts'
import type { Finding } from '../finding.ts'
import { sourceOf, type Limits } from '../limits.ts'
import { atSupport, defineCheck, finding, inRuns, levelFor, mechanics, q, say, stretchOf } from '../make.ts'
import { fieldName } from '../neededFields.ts'

const ID = 'stand-tips'

const causeWords: Record<TipCause, Localized> = {
  drag: { en: 'the drag of the pipe', es: 'el arrastre del tubo' },
  nose: { en: 'the nose riding up', es: 'la punta al subir' },
  bend: { en: 'the pull round the bend', es: 'el tiro en la curva' },
  offLine: { en: 'the pipe off its line', es: 'el tubo fuera de su línea' },
  turned: { en: 'its turned roller', es: 'su rodillo girado' },
}
const pulled: ReadonlySet<TipCause> = new Set(['drag', 'nose', 'bend', 'turned'])

export const standTips = defineCheck({
  id: ID,
  title: { en: 'Stands stay on their feet', es: 'Los soportes no vuelcan' },
  cost: 'slow',
  run: (site, { limits, mechanics: solves }) => {
    const limit = limits.limit('tip-factor')
    const pushes = standPushesOf(site, solves, limits)
    const isWeak = ({ ratio }: StandPush): boolean => ratio === null || levelFor(limit, ratio) !== 'met'
    const weak = pushes.filter(isWeak)
    // What would only be told by a figure nobody gave is asked for once; what tips with every figure known is said.
    const open = weak.filter(({ missing }) => missing.length > 0)
    const known = weak.filter(({ missing }) => missing.length === 0)
    const found = [...struck(noseStrikesOf(site, solves)), ...inRuns(worstOfEach(known), (a, b) => a.cause === b.cause).map((group) => tips(group, limits)), ...unknown(open, limits)]
    if (found.length > 0 || pushes.length === 0) return found
    const least = leastOf(pushes)
    return [finding(ID, {
      level: 'met', measured: q('ratio', least.ratio), limit: q('ratio', limit.fix), bound: 'least', source: sourceOf(limit), phases: ['pull'], where: atSupport(least.view), items: [least.view.itemId],
      what: say('No stand tips; {label} is pushed hardest, by {cause}.', 'Ningún soporte vuelca; {label} recibe el mayor empuje, por {cause}.', { label: least.view.label, cause: causeWords[least.cause] }),
    })]
  },
})

const leastOf = (pushes: readonly StandPush[]): StandPush => pushes.reduce((least, one) => ((one.ratio ?? 0) < (least.ratio ?? 0) ? one : least))

/** One push a stand, the one it withstands least. */
function worstOfEach(pushes: readonly StandPush[]): StandPush[] {
  const worst = new Map<string, StandPush>()
  for (const push of pushes) {
    const before = worst.get(push.view.key)
    worst.set(push.view.key, before === undefined ? push : leastOf([before, push]))
  }
  return [...worst.values()]
}

function tips(group: readonly StandPush[], limits: Limits): Finding {
  const limit = limits.limit('tip-factor')
  const most = leastOf(group)
  const values = { labels: stretchOf(group.map(({ view }) => view)), label: most.view.label, cause: causeWords[most.cause], push: q('force', most.pushN), height: q('height', most.heightM), ratio: q('ratio', most.ratio), wanted: q('ratio', limit.fix) }
  return finding(ID, {
    about: `${group[0]!.view.key}:${most.cause}`, level: levelFor(limit, most.ratio!), measured: q('ratio', most.ratio), limit: q('ratio', limit.fix), bound: 'least', source: sourceOf(limit),
    phases: pulled.has(most.cause) ? ['pull'] : ['fuse'], where: atSupport(most.view), items: group.map(({ view }) => view.itemId),
    what: most.ratio! < 1
      ? say('{labels}: {cause} tips {label}, {push} at {height}.', '{labels}: {cause} vuelca {label}, {push} a {height}.', values)
      : say('{labels}: {cause} pushes {label} with {push} at {height}; it stands against {ratio} times that, {wanted} are wanted.', '{labels}: {cause} empuja {label} con {push} a {height}; aguanta {ratio} veces eso, se piden {wanted}.', values),
    move: say('Use a stand with a longer or wider base, load its base, or stake it down.', 'Use un soporte de base más larga o ancha, cargue la base o estáquelo.'),
  })
}

function struck(strikes: readonly NoseStrike[]): Finding[] {
  return inRuns(strikes, () => true).map((group) => {
    const [first] = group
    const known = group.map(({ tipsAtN }) => tipsAtN).filter((one) => one !== null)
    const values = { labels: stretchOf(group.map(({ view }) => view)), force: q('force', known.length === 0 ? null : Math.min(...known)), droop: q('shortLength', Math.max(...group.map(({ droopM }) => droopM))) }
    return finding(ID, {
      about: 'nose', level: 'FIX', source: mechanics('tipping'), phases: ['pull'], where: atSupport(first!.view), items: group.map(({ view }) => view.itemId),
      what: known.length === group.length
        ? say('The free nose strikes {labels}, up to {droop} low: {force} along the line tips it.', 'La punta libre golpea {labels}, hasta {droop} abajo: {force} a lo largo de la línea lo vuelca.', values)
        : say('The free nose strikes {labels}, up to {droop} low, and pushes it over.', 'La punta libre golpea {labels}, hasta {droop} abajo, y lo vuelca.', values),
      move: say('Sling the nose, or plan a lift there.', 'Cuelgue la punta, o planee un levante ahí.'),
      remedy: { command: 'setJob', args: { path: 'noseHold', value: 'slung' }, label: say('Sling it', 'Colgarla') },
    })
  })
}

/** Once for all stands: what they weigh, or how wide they stand. */
function unknown(open: readonly StandPush[], limits: Limits): Finding[] {
  if (open.length === 0) return []
  const missing = new Map<string, MissingInput>()
  for (const { view, missing: fields } of open) for (const field of fields) missing.set(`${view.itemId} ${field}`, { recordId: view.itemId, path: `figures.${field}.value`, label: fieldName('stand', `figures.${field}.value`) })
  const views = [...new Map(open.map(({ view }) => [view.key, view])).values()]
  const most = leastOf(open)
  return [finding(ID, {
    about: 'unknown', level: 'CHECK', missing: [...missing.values()], source: sourceOf(limits.limit('tip-factor')), phases: ['pull'], where: atSupport(most.view), items: views.map(({ itemId }) => itemId),
    what: say('Whether {labels} stay on their feet is not known: {cause} pushes {label} with {push} at {height}.', 'No se sabe si {labels} se mantienen en pie: {cause} empuja {label} con {push} a {height}.', { labels: stretchOf(views), cause: causeWords[most.cause], label: most.view.label, push: q('force', most.pushN), height: q('height', most.heightM) }),
    move: say('Give the mass and the base of the stands.', 'Dé la masa y la base de los soportes.'),
  })]
}
