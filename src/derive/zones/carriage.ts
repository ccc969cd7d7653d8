import { enter, when } from './mayEnter.ts'
import { itemsOf } from '../itemsOf.ts'
import type { ZoneDefinition } from './zone.ts'
import type { MissingInput } from '../types.ts'
import { boxAt } from './shapes.ts'

const REACH_M = 0.9144
/** The largest machines that are moved about; where a figure is unknown. */
const LARGEST = { lengthM: 6, widthM: 3, travelM: 0.6 } as const

/** Z-04. Carriage and jaws: the machine's outline and 3 ft. */
export const carriage: ZoneDefinition = {
  id: 'Z-04',
  name: { en: 'carriage and jaws', es: 'carro y mordazas' },
  sentence: { en: 'The jaws close with tons of push and don’t feel your hand. If your hand is in there, the power is off.', es: 'Las mordazas cierran con toneladas de fuerza y no sienten su mano. Si mete la mano, la máquina va apagada.' },
  classes: { setUp: 'AMBER', load: 'AMBER', fuse: 'RED', pull: 'AMBER' },
  mayEnter: [enter('operator', when.atControls)],
  source: { class: 'houseRule', cite: 'guarding principle of 29 CFR 1926.300, from memory, confirm; 3 ft common practice, no published source' },
  size: { en: 'machine and 3 ft all round', es: 'máquina y 3 pies alrededor' },
  shapes: (site) => itemsOf(site, 'machine').map((item) => {
    const { lengthM, widthM, carriageTravelM } = item.record.figures
    const [half, side] = [(lengthM.value ?? LARGEST.lengthM) / 2 + REACH_M, (widthM.value ?? LARGEST.widthM) / 2 + REACH_M]
    const travelM = carriageTravelM.value ?? LARGEST.travelM
    const missing: MissingInput[] = [
      ...(lengthM.value === null ? [{ recordId: item.id, path: 'figures.lengthM.value', label: { en: 'length of the machine', es: 'largo de la máquina' } }] : []),
      ...(widthM.value === null ? [{ recordId: item.id, path: 'figures.widthM.value', label: { en: 'width of the machine', es: 'ancho de la máquina' } }] : []),
      ...(carriageTravelM.value === null ? [{ recordId: item.id, path: 'figures.carriageTravelM.value', label: { en: 'carriage travel', es: 'carrera del carro' } }] : []),
    ]
    const isInfeed = item.record.carriageSide === 'infeed'
    return { ownerId: item.id, rings: [boxAt(item, { fromM: -half - (isInfeed ? travelM : 0), toM: half + (isInfeed ? 0 : travelM), rightM: side, leftM: side })], itemIds: [item.id], missing }
  }),
}
