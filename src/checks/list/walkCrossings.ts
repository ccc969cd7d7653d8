import { crossingsOf, walkOf } from '../../derive/walking.ts'
import type { MachineRecord } from '../../scene/kinds/machine.ts'
import type { Finding } from '../finding.ts'
import { atRun, defineCheck, finding, houseRule, listOf, nameOf, q, say } from '../make.ts'
import { formatRunning } from '../../units/format.ts'

const ID = 'walk-crossings'
/** Half a machine nobody gave the length of: it stands over its joint. */
const HALF_MACHINE_M = 1.7
const MOST_NAMED = 12

export const walkCrossings = defineCheck({
  id: ID,
  title: { en: 'Ways across the strung sticks', es: 'Pasos a través de los tubos tendidos' },
  cost: 'slow',
  run: (site) => {
    const walk = walkOf(site)
    if (walk === null) return []
    const crossings = crossingsOf(site, walk)
    if (crossings.length === 0) return []
    const system = site.layout.displayUnits
    const place = (id: string, atM: number) => {
      const name = nameOf(site, id)
      return { en: `${name.en} (${formatRunning(atM, { system, language: 'en' })})`, es: `${name.es} (${formatRunning(atM, { system, language: 'es' })})` }
    }
    const common = { source: houseRule, phases: ['offload', 'load', 'fuse', 'rest'] as const }
    const found: Finding[] = [finding(ID, {
      ...common, level: 'CHECK', about: 'blocked', items: [...new Set(crossings.map(({ itemId }) => itemId))], where: atRun(crossings[0]!.fromM), measured: q('count', crossings.length),
      what: say('{count} ways lie under the strung pipe: {ways}.', '{count} pasos quedan bajo el tubo tendido: {ways}.', { count: crossings.length, ways: listOf(crossings.map(({ itemId, fromM, toM }) => place(itemId, (fromM + toM) / 2)), MOST_NAMED) }),
      move: say('Tell each owner; leave the stick out until its joint is next, sleeve or plate it, or end a section there. First and last way: keep one open for an ambulance.', 'Avise a cada dueño; deje fuera ese tubo hasta su junta, póngale funda o placa, o termine ahí un tramo. Primer y último paso: deje uno abierto para una ambulancia.'),
    })]
    const halfM = ((site.placed.get(site.jaws.machineId ?? '')?.record as MachineRecord | undefined)?.figures.lengthM.value ?? 2 * HALF_MACHINE_M) / 2
    const landing = walk.joints.flatMap((joint) => crossings.filter(({ fromM, toM }) => joint.runningM > fromM - halfM && joint.runningM < toM + halfM).map(({ itemId }) => ({ joint, itemId })))
    if (landing.length > 0) {
      const isOpen = landing.some(({ itemId }) => {
        const record = site.placed.get(itemId)?.record
        return record?.kind === 'road' && record.traffic === 'open'
      })
      found.push(finding(ID, {
        ...common, level: isOpen ? 'FIX' : 'CHECK', about: 'landing', phases: ['fuse'], joints: [...new Set(landing.map(({ joint }) => joint.joint))], items: [...new Set(landing.map(({ itemId }) => itemId))], where: atRun(landing[0]!.joint.runningM), measured: q('count', landing.length),
        what: say('The machine stands on a way for {joints}.', 'La máquina queda sobre un paso en {joints}.', { joints: listOf(landing.map(({ joint, itemId }) => {
          const { en, es } = place(itemId, joint.runningM)
          return { en: `J${joint.joint} on ${en}`, es: `J${joint.joint} en ${es}` }
        }), MOST_NAMED) }),
        move: isOpen
          ? say('Shift the joints: move the far end of the line, or put a shorter stick in; else close the way while it is fused.', 'Corra las juntas: mueva la punta lejana de la línea, o ponga un tubo más corto; si no, cierre el paso al fundir.')
          : say('Close the way while it is fused and cools, or shift the joints.', 'Cierre el paso mientras se funde y enfría, o corra las juntas.'),
      }))
    }
    return found
  },
})
