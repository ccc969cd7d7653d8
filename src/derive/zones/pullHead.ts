import { lashOf, ropeAt, ropeMissing } from './rope.ts'
import { pipeMissing, stripAlong } from './shapes.ts'
import type { ZoneDefinition } from './zone.ts'

/** Z-28. Behind the pull head: where pipe and strap go when it slips. The fan of Z-09 on the side of the pipe. */
export const pullHead: ZoneDefinition = {
  id: 'Z-28',
  name: { en: 'behind the pull head', es: 'detrás del cabezal' },
  sentence: { en: 'If the strap lets go, the pipe jumps back and the rope jumps at you. Nobody stands behind either one.', es: 'Si se suelta la eslinga, el tubo brinca hacia atrás y la cuerda hacia usted. Nadie se para detrás de ninguno.' },
  follows: 'nose',
  classes: { pull: 'RED' },
  mayEnter: [],
  source: { class: 'houseRule', cite: 'marine snap-back teaching; no figure is published for construction' },
  size: { en: 'a fan one lead long, 50 ft at most, behind the pull head', es: 'un abanico de una cuerda, 50 pies cuando mucho, detrás del cabezal' },
  shapes: (site, stage) => {
    const found = ropeAt(site, stage)
    if (found === null) return []
    const { puller, fromM, noseM, leadM } = found
    const { halfWidthM, fanM, wideM } = lashOf(leadM)
    const ring = stripAlong(site, [{ runningM: fromM - fanM, halfWidthM: wideM }, { runningM: fromM, halfWidthM }, { runningM: noseM, halfWidthM }])
    return [{ ownerId: puller.id, rings: [ring], itemIds: [puller.id], missing: [...pipeMissing(site), ...ropeMissing(puller)] }]
  },
}
