import { sourceOf } from '../limits.ts'
import { atJaws, defineCheck, finding, levelFor, machineIds, q, say } from '../make.ts'

export const machinePitch = defineCheck({
  id: 'machine-pitch',
  title: { en: 'Pitch of the machine', es: 'Inclinación de la máquina' },
  cost: 'quick',
  run: (site, { limits }) => {
    if (site.jaws.machineId === null) return []
    const limit = limits.limit('machine-pitch')
    const pitchRad = Math.atan(Math.abs(site.jaws.slopeRatio))
    const level = levelFor(limit, pitchRad)
    const values = { pitch: q('angle', pitchRad) }
    return [finding('machine-pitch', {
      level,
      measured: q('angle', pitchRad),
      limit: q('angle', limit.check),
      source: sourceOf(limit),
      phases: ['setUp', 'fuse'],
      where: atJaws(site),
      items: machineIds(site),
      what: level === 'met'
        ? say('The machine stands level enough.', 'La máquina está suficientemente a nivel.')
        : site.jaws.pitchIsGround
          ? say('The machine follows the ground at {pitch}.', 'La máquina sigue el terreno a {pitch}.', values)
          : say('The machine is pitched {pitch}.', 'La máquina está inclinada {pitch}.', values),
      ...(level === 'met' ? {} : { move: say('Pack it up nearer to level, and check that it is chocked.', 'Cálcela más a nivel y revise que esté acuñada.') }),
    })]
  },
})
