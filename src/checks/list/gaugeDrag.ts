import { carriageDragsOf, machineOf, type JointDrag } from '../../derive/carriageDrags.ts'
import type { MissingInput, SiteModel } from '../../derive/types.ts'
import type { MachineRecord } from '../../scene/kinds/machine.ts'
import type { Finding, Source } from '../finding.ts'
import { atJaws, defineCheck, finding, machineIds, plate, q, say } from '../make.ts'
import { fieldName } from '../neededFields.ts'
import { sideWord } from '../words.ts'

const ID = 'gauge-drag'
const sums: Source = { class: 'mechanics', cite: 'mechanics, docs/formulas/gauge-drag.md; 75 psi between the faces where the procedure gives none: ASTM F2620, from memory, confirm', fromMemory: true }

export const gaugeDrag = defineCheck({
  id: ID,
  title: { en: 'Drag on the gauge', es: 'Arrastre en el manómetro' },
  cost: 'slow',
  run: (site) => {
    const machine = machineOf(site)
    const drags = carriageDragsOf(site)
    if (machine === null || drags.length === 0) return []
    const worst = drags.reduce((most, one) => (one.movingN > most.movingN ? one : most))
    return [drag(site, worst), ...force(site, machine, worst)]
  },
})

const valuesOf = ({ side, joint, movingN, fusionForceN, pressurePa, fusionPressurePa }: JointDrag) => ({ side: sideWord(side), joint, drag: q('force', movingN), fusion: q('force', fusionForceN), both: q('force', movingN + fusionForceN), gauge: q('pressure', pressurePa), whole: q('pressure', fusionPressurePa) })

/** What the carriage feels of the pipe it moves, against what it fuses with. */
function drag(site: SiteModel, worst: JointDrag): Finding {
  const isHard = worst.movingN > worst.fusionForceN
  const values = valuesOf(worst)
  const common = { about: 'drag', measured: q('force', worst.movingN), limit: q('force', worst.fusionForceN), source: sums, phases: ['fuse'] as const, where: atJaws(site), items: machineIds(site) }
  if (isHard) {
    return finding(ID, {
      ...common, level: 'CHECK',
      what: say('Drag of the pipe in the moving jaws ({side}) is some {drag} at joint {joint}, more than the {fusion} it is fused with: hard to control.', 'El arrastre del tubo en las mordazas móviles ({side}) es de unos {drag} en la junta {joint}, más que los {fusion} con que se funde: difícil de controlar.', values),
      move: say('Carriage on the side of the loose stick, more or freer rollers, or less string.', 'Carro del lado del tubo suelto, más rodillos o más libres, o menos sarta.'),
    })
  }
  return finding(ID, {
    ...common, level: 'met',
    what: worst.pressurePa === null
      ? say('Drag of the pipe in the moving jaws ({side}) is some {drag} at joint {joint}; {fusion} fuse it.', 'El arrastre del tubo en las mordazas móviles ({side}) es de unos {drag} en la junta {joint}; {fusion} lo funden.', values)
      : say('Drag of the pipe in the moving jaws ({side}) is some {drag} at joint {joint}, {gauge} on the gauge; {whole} with the fusion force.', 'El arrastre del tubo en las mordazas móviles ({side}) es de unos {drag} en la junta {joint}, {gauge} en el manómetro; {whole} con la fuerza de fusión.', values),
  })
}

/** Both together against what the carriage can push, and the figures without which nobody can say. */
function force(site: SiteModel, machine: MachineRecord, worst: JointDrag): Finding[] {
  const limitN = machine.figures.fusionForceLimitN.value
  const common = { phases: ['fuse'] as const, where: atJaws(site), items: machineIds(site) }
  const fields = (['fusionForceLimitN', 'pistonAreaM2'] as const).filter((field) => machine.figures[field].value === null)
  const found: Finding[] = []
  if (limitN !== null && worst.movingN + worst.fusionForceN > limitN) {
    found.push(finding(ID, {
      ...common, about: 'force', level: 'FIX', measured: q('force', worst.movingN + worst.fusionForceN), limit: q('force', limitN), source: plate('largest force on the plate of the machine'),
      what: say('Drag and fusion force come to {both} at joint {joint}; the carriage pushes {limit} at most.', 'Arrastre y fuerza de fusión suman {both} en la junta {joint}; el carro empuja {limit} como máximo.', { ...valuesOf(worst), limit: q('force', limitN) }),
      move: say('Less drag: carriage on the side of the loose stick, more or freer rollers; or a larger machine.', 'Menos arrastre: carro del lado del tubo suelto, más rodillos o más libres; o una máquina mayor.'),
    }))
  }
  if (fields.length > 0) {
    const missing = fields.map((field): MissingInput => ({ recordId: machine.id, path: `figures.${field}.value`, label: fieldName('machine', `figures.${field}.value`) }))
    found.push(finding(ID, {
      ...common, about: 'unknown', level: 'CHECK', missing, source: plate('plate of the machine'),
      what: limitN === null
        ? say('Whether the carriage can push {both}, drag and fusion force, is not known.', 'No se sabe si el carro puede empujar {both}, arrastre y fuerza de fusión.', valuesOf(worst))
        : say('What a drag of {drag} shows on the gauge is not known.', 'No se sabe cuánto marca en el manómetro un arrastre de {drag}.', valuesOf(worst)),
      move: say('Read the plate of the machine.', 'Lea la placa de la máquina.'),
    }))
  }
  return found
}
