import { enter, when } from './mayEnter.ts'
import type { ZoneDefinition } from './zone.ts'
import { odOf, stripAlong } from './shapes.ts'

const SIDE_M = 0.9144

/** Z-03. Between the rack and the jaws, where a stick is fed. */
export const feedCorridor: ZoneDefinition = {
  id: 'Z-03',
  name: { en: 'between rack and machine', es: 'entre la cama y la máquina' },
  sentence: { en: 'The pipe moves when you least expect it. Hands on top, feet out from under, eyes on the operator.', es: 'El tubo se mueve cuando menos lo espera. Manos arriba del tubo, pies afuera y la vista en el operador.' },
  classes: { load: 'AMBER', fuse: 'AMBER', pull: 'AMBER' },
  mayEnter: [enter('infeedHand', when.eyeContact), enter('operator')],
  source: { class: 'houseRule', cite: 'common practice, no published source' },
  size: { en: 'pipe and 3 ft each side', es: 'tubo y 3 pies a cada lado' },
  shapes: (site) => {
    const near = site.supports.filter(({ kind, runningM }) => kind === 'rack' && runningM < 0).at(-1)
    if (near === undefined) return []
    const halfWidthM = odOf(site) / 2 + SIDE_M
    const toM = -site.jaws.outerClampM
    if (near.runningM >= toM) return []
    return [{ ownerId: near.itemId, rings: [stripAlong(site, [{ runningM: near.runningM, halfWidthM }, { runningM: toM, halfWidthM }])], itemIds: [near.itemId], missing: site.pipe.odM === null ? site.pipe.missing.filter(({ path }) => path === 'pipe') : [] }]
  },
}
