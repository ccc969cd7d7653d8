import { anchorsUphill, carriageDragsOf, type JointDrag } from '../../derive/carriageDrags.ts'
import type { MissingInput, SiteModel } from '../../derive/types.ts'
import type { Finding } from '../finding.ts'
import { fieldName } from '../neededFields.ts'
import { atJaws, defineCheck, finding, machineIds, mechanics, nameOf, q, say } from '../make.ts'
import { sideWord } from '../words.ts'

const ID = 'negative-drag'
/** A force below this is rounding. */
const NO_FORCE_N = 1

export const negativeDrag = defineCheck({
  id: ID,
  title: { en: 'Carriage not drawn shut by the slope', es: 'La pendiente no cierra el carro' },
  cost: 'slow',
  run: (site) => {
    // An unknown fall is asked for by hold-back.
    const drags = site.ground.from === 'unknown' ? [] : carriageDragsOf(site)
    if (drags.length === 0) return []
    const worst = drags.reduce((most, one) => (one.lowN < most.lowN ? one : most))
    if (worst.lowN >= -NO_FORCE_N) return [finding(ID, { level: 'met', source: mechanics('gauge-drag'), phases: ['fuse'], what: say('The pipe in the moving jaws stays by itself.', 'El tubo en las mordazas móviles se queda quieto solo.') })]
    return [drawnShut(site, worst)]
  },
})

function drawnShut(site: SiteModel, worst: JointDrag): Finding {
  const pullN = -worst.lowN
  const end = worst.side === 'infeed' ? 'exit' : 'infeed'
  const anchors = anchorsUphill(site, end)
  const heldN = Math.max(0, ...anchors.map(({ figures }) => figures.ratedHoldN.value ?? 0))
  const open = anchors.filter(({ figures }) => figures.ratedHoldN.value === null)
  const puller = end === 'infeed' ? [...site.placed.values()].find(({ kind }) => kind === 'puller') : undefined
  const values = { side: sideWord(worst.side), pull: q('force', pullN), joint: worst.joint, held: q('force', heldN) }
  const common = { source: mechanics('gauge-drag'), phases: ['fuse'] as const, where: atJaws(site), items: machineIds(site), measured: q('force', pullN) }
  if (heldN >= pullN) return finding(ID, { ...common, level: 'met', limit: q('force', heldN), what: say('The slope draws the pipe in the moving jaws ({side}) with {pull}; the tether holds it.', 'La pendiente jala el tubo en las mordazas móviles ({side}) con {pull}; la retención lo sujeta.', values) })
  if (open.length > 0) {
    return finding(ID, {
      ...common, about: 'anchor', level: 'CHECK', missing: open.map(({ id }): MissingInput => ({ recordId: id, path: 'figures.ratedHoldN.value', label: fieldName('anchor', 'figures.ratedHoldN.value') })),
      what: say('The slope draws the pipe in the moving jaws ({side}) with {pull}; what {anchor} holds is not known.', 'La pendiente jala el tubo en las mordazas móviles ({side}) con {pull}; no se sabe cuánto aguanta {anchor}.', { ...values, anchor: nameOf(site, open[0]!.id) }),
    })
  }
  if (puller !== undefined) {
    return finding(ID, {
      ...common, about: 'puller', level: 'CHECK', items: [puller.id], limit: q('force', 0),
      what: say('The slope draws the string in the moving jaws toward the machine with {pull}; only the puller’s rope holds it.', 'La pendiente jala la sarta en las mordazas móviles hacia la máquina con {pull}; solo la retiene la cuerda de tiro.', values),
      move: say('Keep the rope tight while the carriage moves.', 'Mantenga tensa la cuerda mientras se mueve el carro.'),
    })
  }
  return finding(ID, {
    ...common, level: 'STOP', limit: q('force', heldN),
    what: say('Negative drag: the slope draws the pipe in the moving jaws ({side}) toward the joint with {pull}, and nothing holds it.', 'Arrastre negativo: la pendiente jala el tubo en las mordazas móviles ({side}) hacia la junta con {pull}, y nada lo retiene.', values),
    move: say('Hold it uphill before the carriage opens; hands stay out of the gap.', 'Reténgalo cuesta arriba antes de abrir el carro; manos fuera de la abertura.'),
    remedy: site.setUp === null ? null : {
      command: 'setHoldBack',
      args: end === 'exit' ? { setUpId: site.setUp.id } : { setUpId: site.setUp.id, runningM: Math.round(0.75 * (site.sticks.stickLengthM ?? 0) * 1000) / 1000 },
      label: say('Add tether and anchor uphill', 'Agregar retención y ancla cuesta arriba'),
    },
  })
}
