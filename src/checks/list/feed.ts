import { atRun, defineCheck, finding, machineIds, mechanics as mechanicsSource, q, say } from '../make.ts'
import { sourceOf } from '../limits.ts'
import type { FrontEnd } from '../../derive/feed.ts'
import type { Localized } from '../../messages/localized.ts'
import type { SiteModel } from '../../derive/types.ts'

const placeName = (site: SiteModel, front: FrontEnd): Localized => {
  if (front.place === 'lift') return { en: 'the pipe lift', es: 'el levantatubo' }
  if (front.place === 'outerJaw') return { en: 'the outer jaw', es: 'la mordaza exterior' }
  if (front.place === 'innerJaw') return { en: 'the inner jaw', es: 'la mordaza interior' }
  const label = site.supports.find(({ runningM }) => Math.abs(runningM - front.runningM) < 1e-6)?.label ?? ''
  return { en: label, es: label }
}

export const feed = defineCheck({
  id: 'feed',
  title: { en: 'Feeding a stick into the jaws', es: 'Meter un tubo a las mordazas' },
  cost: 'slow',
  run: (site, { limits, mechanics }) => {
    const solved = mechanics.feed()
    if (solved === null) return []
    const rackIds = [...new Set(site.supports.filter(({ kind }) => kind === 'rack').map(({ itemId }) => itemId))]
    const common = { source: mechanicsSource('feed'), phases: ['load'] as const, items: rackIds.length > 0 ? rackIds : machineIds(site) }
    const { tips } = solved
    if (tips !== null) {
      const values = { front: { runningM: tips.frontM }, over: q('length', Math.abs(tips.overByM)) }
      return [finding('feed', {
        ...common,
        about: 'tips',
        level: 'FIX',
        where: atRun(tips.frontM, null),
        ...(tips.overByM === 0 ? {} : { measured: q('length', Math.abs(tips.overByM)) }),
        what: tips.overByM > 0
          ? say('The stick tips forward when fed: with its front end {front} its weight is {over} past the last support.', 'El tubo cabecea al meterlo: con la punta {front} su peso queda {over} más allá del último apoyo.', values)
          : tips.overByM < 0
            ? say('The stick tips back when fed: with its front end {front} its weight is {over} behind the rear support.', 'El tubo se vuelca hacia atrás al meterlo: con la punta {front} su peso queda {over} detrás del último apoyo.', values)
            : say('The stick tips when fed: with its front end {front} it lies on fewer than two supports.', 'El tubo se voltea al meterlo: con la punta {front} descansa en menos de dos apoyos.', values),
        move: say('Move the rack so that it carries the stick at a fifth of its length from each end, or add an infeed stand.', 'Mueva la cama para que cargue el tubo a un quinto de su largo desde cada punta, o agregue un soporte de entrada.'),
      })]
    }
    const low = solved.frontEnds.filter(({ droopM, leadInM }) => droopM > leadInM)
    const met = finding('feed', { ...common, about: 'tips', level: 'met', what: say('The fed stick rests on two supports or more all the way in.', 'El tubo que entra descansa en dos apoyos o más todo el camino.') })
    const worst = low.toSorted((a, b) => b.droopM - b.leadInM - (a.droopM - a.leadInM))[0]
    if (worst === undefined) return [met]
    const values = { place: placeName(site, worst), droop: q('shortLength', worst.droopM) }
    return [met, finding('feed', {
      ...common,
      about: 'front',
      level: 'CHECK',
      measured: q('shortLength', worst.droopM),
      limit: q('shortLength', worst.leadInM),
      source: sourceOf(limits.limit('nose-lead-in')),
      where: atRun(worst.runningM, null),
      what: say('The front end of the fed stick comes to {place} {droop} low.', 'La punta del tubo que entra llega a {place} {droop} abajo.', values),
      move: say('Guide it up with a strap; hands stay off the rim.', 'Guíela hacia arriba con una correa; sin manos en el borde.'),
    })]
  },
})
