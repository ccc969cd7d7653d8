import { anchorsUphill, clampedPullsOf, machineOf, type ClampedPull } from '../../derive/carriageDrags.ts'
import type { MissingInput, SiteModel } from '../../derive/types.ts'
import type { MachineRecord } from '../../scene/kinds/machine.ts'
import type { Localized } from '../../messages/localized.ts'
import type { Finding } from '../finding.ts'
import { sourceOf, type Limits } from '../limits.ts'
import { atJaws, defineCheck, finding, levelFor, machineIds, mechanics, q, say } from '../make.ts'
import { fieldName } from '../neededFields.ts'

const ID = 'machine-held'
const endWord: Record<'exit' | 'infeed', Localized> = { exit: { en: 'the exit', es: 'la salida' }, infeed: { en: 'the infeed', es: 'la entrada' } }

export const machineHeld = defineCheck({
  id: ID,
  title: { en: 'Machine held on the grade', es: 'Máquina retenida en la pendiente' },
  cost: 'slow',
  run: (site, { limits }) => {
    const machine = machineOf(site)
    // An unknown fall is asked for by hold-back.
    const pulls = site.ground.from === 'unknown' ? [] : clampedPullsOf(site)
    if (machine === null || pulls.length === 0) return []
    const worst = pulls.reduce((most, one) => (Math.abs(one.pullN) > Math.abs(most.pullN) ? one : most))
    const steepest = Math.max(...pulls.map(({ gradeRatio }) => Math.abs(gradeRatio)))
    const limit = limits.limit('roller-grade')
    if (levelFor(limit, steepest) === 'met') {
      return [finding(ID, { level: 'met', measured: q('slope', steepest), limit: q('slope', limit.check), source: sourceOf(limit), phases: ['fuse'], where: atJaws(site), items: machineIds(site), what: say('No grade to hold the machine on: {grade} at most.', 'Sin pendiente que retener: {grade} como máximo.', { grade: q('slope', steepest) }) })]
    }
    return [onGrade(site, machine, worst, limits)]
  },
})

function onGrade(site: SiteModel, machine: MachineRecord, worst: ClampedPull, limits: Limits): Finding {
  const end = worst.pullN > 0 ? 'exit' : 'infeed'
  const neededN = Math.abs(worst.pullN)
  const anchors = anchorsUphill(site, end)
  const ownN = machine.figures.holdLoadN.value
  const anchorN = Math.max(0, ...anchors.map(({ figures }) => figures.ratedHoldN.value ?? 0))
  const heldN = (ownN ?? 0) + anchorN
  const missing: MissingInput[] = [
    ...(ownN === null ? [{ recordId: machine.id, path: 'figures.holdLoadN.value', label: fieldName('machine', 'figures.holdLoadN.value') }] : []),
    ...anchors.filter(({ figures }) => figures.ratedHoldN.value === null).map(({ id }) => ({ recordId: id, path: 'figures.ratedHoldN.value', label: fieldName('anchor', 'figures.ratedHoldN.value') })),
  ]
  const values = { needed: q('force', neededN), held: q('force', heldN), end: endWord[end], joint: worst.joint }
  const common = { measured: q('force', heldN), limit: q('force', neededN), bound: 'least' as const, source: mechanics('gauge-drag'), phases: ['fuse'] as const, where: atJaws(site), items: machineIds(site) }
  if (heldN >= neededN) return finding(ID, { ...common, level: 'met', what: say('All that is clamped pulls the machine toward {end} with {needed} at joint {joint}; {held} hold it.', 'Todo lo sujeto jala la máquina hacia {end} con {needed} en la junta {joint}; {held} la retienen.', values) })
  if (missing.length > 0) {
    return finding(ID, {
      ...common, about: 'unknown', level: 'CHECK', missing, source: sourceOf(limits.limit('roller-grade')),
      what: say('All that is clamped pulls the machine toward {end} with {needed} at joint {joint}; what holds it is not known.', 'Todo lo sujeto jala la máquina hacia {end} con {needed} en la junta {joint}; no se sabe qué la retiene.', values),
      move: say('Brake, lock the tracks, chock on the downhill side, and test it by a static pull.', 'Frene, bloquee las orugas, acuñe cuesta abajo y pruebe con un tirón estático.'),
    })
  }
  return finding(ID, {
    ...common, level: 'STOP',
    what: say('The machine is not held: all that is clamped pulls it toward {end} with {needed} at joint {joint}, and {held} hold it.', 'La máquina no está retenida: todo lo sujeto la jala hacia {end} con {needed} en la junta {joint}, y {held} la retienen.', values),
    move: say('Chock and lock it for that, or tether the string uphill, before the jaws close.', 'Acúñela y bloquéela para eso, o retenga la sarta cuesta arriba, antes de cerrar las mordazas.'),
  })
}
