import { crewCommands } from '../../derive/crewDefaults.ts'
import { spotsOf } from '../../derive/people/spots.ts'
import { atJaws, defineCheck, finding, houseRule, machineIds, say } from '../make.ts'

const ID = 'crew-spots'

export const crewSpots = defineCheck({
  id: ID,
  title: { en: 'Crew spots', es: 'Puestos de la cuadrilla' },
  cost: 'slow',
  run: (site) => {
    if (site.jaws.machineId === null || spotsOf(site).length > 0) return []
    const commands = crewCommands(site)
    const label = say('Usual crew spots', 'Puestos habituales')
    return [finding(ID, {
      level: 'CHECK', items: machineIds(site), where: atJaws(site), source: houseRule,
      what: say('No crew spots are drawn: nobody’s place is held against zones, sight and ways out.', 'No hay puestos en el plano: no se revisa el lugar de nadie contra zonas, vista y salidas.'),
      move: say('Set where each person stands for each task.', 'Ponga dónde se para cada persona en cada tarea.'),
      remedy: commands.length === 0 ? null : { command: 'sequence', args: { commands, label: label.text }, label },
    })]
  },
})
