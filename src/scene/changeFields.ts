/** Fields of the records that are not placed on the plan, as a person calls them when they change. */
import type { Localized } from '../messages/localized.ts'
import type { FieldDefinition } from './kindDefinition.ts'
import { materials, noseHolds, pullEditions } from './records/frame.ts'

/** A field of the change list; `any`: its value has no short wording, it is only said that it changed. */
export interface ChangeField {
  path: string
  label: Localized
  input: FieldDefinition['input'] | { as: 'any' }
}

const length = { as: 'quantity', kind: 'length', nullable: true } as const
const short = { as: 'quantity', kind: 'shortLength', nullable: true } as const
const slope = { as: 'quantity', kind: 'slope', nullable: true } as const
const angle = { as: 'quantity', kind: 'angle', nullable: true } as const
const text = { as: 'text' } as const
const any = { as: 'any' } as const
const same = (value: string): { value: string; label: Localized } => ({ value, label: { en: value, es: value } })

const noseHoldNames: Record<(typeof noseHolds)[number], Localized> = {
  slung: { en: 'slung', es: 'colgada' }, sled: { en: 'on a sled', es: 'en trineo' }, lifted: { en: 'lifted', es: 'levantada' }, free: { en: 'free', es: 'libre' },
}

export const frameFields: Readonly<Record<string, readonly ChangeField[]>> = {
  layout: [
    { path: 'title', label: { en: 'name of the layout', es: 'nombre del plano' }, input: text },
    { path: 'revision', label: { en: 'revision', es: 'revisión' }, input: text },
    { path: 'displayUnits', label: { en: 'units', es: 'unidades' }, input: { as: 'choice', choices: [{ value: 'feetInches', label: { en: 'feet and inches', es: 'pies y pulgadas' } }, { value: 'metric', label: { en: 'metric', es: 'métricas' } }] } },
    { path: 'northRad', label: { en: 'direction of north', es: 'dirección del norte' }, input: angle },
    { path: 'note', label: { en: 'note', es: 'nota' }, input: text },
  ],
  job: [
    { path: 'pipe.size', label: { en: 'pipe size', es: 'tamaño del tubo' }, input: text },
    { path: 'pipe.system', label: { en: 'size system', es: 'sistema de tamaños' }, input: { as: 'choice', choices: ['IPS', 'DIPS', 'metric'].map(same) } },
    { path: 'pipe.dr', label: { en: 'DR', es: 'DR' }, input: { as: 'quantity', kind: 'ratio' } },
    { path: 'pipe.material', label: { en: 'material', es: 'material' }, input: { as: 'choice', choices: materials.map(same) } },
    { path: 'neededLengthM', label: { en: 'length needed', es: 'largo necesario' }, input: length },
    { path: 'stickLengthM', label: { en: 'stick length', es: 'largo del tubo' }, input: length },
    { path: 'otherStickLengthM', label: { en: 'other stick length', es: 'otro largo de tubo' }, input: length },
    { path: 'tailsM', label: { en: 'tails', es: 'colas' }, input: length },
    { path: 'jointLossM.value', label: { en: 'lost at each joint', es: 'pérdida por junta' }, input: short },
    { path: 'wallTemperatureC.value', label: { en: 'wall temperature', es: 'temperatura de pared' }, input: { as: 'quantity', kind: 'temperature', nullable: true } },
    { path: 'temperatureSwingC.value', label: { en: 'warmest wall less coldest', es: 'pared más caliente menos más fría' }, input: { as: 'quantity', kind: 'temperatureChange', nullable: true } },
    { path: 'firstStick', label: { en: 'first stick', es: 'primer tubo' }, input: { as: 'choice', choices: [{ value: 'setByLoader', label: { en: 'set by the loader', es: 'puesto con cargador' } }, { value: 'fedThrough', label: { en: 'fed through the machine', es: 'pasado por la máquina' } }] } },
    { path: 'noseHold', label: { en: 'nose while pulled', es: 'punta durante el tiro' }, input: { as: 'choice', choices: noseHolds.map((value) => ({ value, label: noseHoldNames[value] })) } },
    { path: 'method', label: { en: 'method', es: 'método' }, input: { as: 'choice', choices: [{ value: 'stationary', label: { en: 'the machine stands', es: 'la máquina queda fija' } }, { value: 'walking', label: { en: 'the machine travels', es: 'la máquina avanza' } }] } },
    { path: 'stickBowM.value', label: { en: 'bow of a stick', es: 'curvatura de un tubo' }, input: short },
    { path: 'stickBowTurnRad', label: { en: 'turn of the sticks', es: 'giro de los tubos' }, input: angle },
    { path: 'slingHeightM.value', label: { en: 'height of the slung nose', es: 'altura de la punta colgada' }, input: { as: 'quantity', kind: 'height', nullable: true } },
    { path: 'pullEdition', label: { en: 'rule for the allowable pull', es: 'regla del tiro permitido' }, input: { as: 'choice', choices: pullEditions.map(same) } },
    { path: 'pullDurationH', label: { en: 'how long a pull takes', es: 'cuánto dura un tiro' }, input: any },
    { path: 'clock', label: { en: 'working hours and breaks', es: 'horario y descansos' }, input: any },
    { path: 'procedure', label: { en: 'fusion procedure', es: 'procedimiento de fusión' }, input: any },
    { path: 'dispatch.address', label: { en: 'address for the ambulance', es: 'dirección para la ambulancia' }, input: text },
    { path: 'dispatch.muster', label: { en: 'where to meet', es: 'punto de reunión' }, input: text },
    { path: 'dispatch.caller', label: { en: 'who calls', es: 'quién llama' }, input: text },
    { path: 'test', label: { en: 'test of the line', es: 'prueba de la línea' }, input: { as: 'choice', choices: [{ value: 'none', label: { en: 'not here', es: 'no aquí' } }, { value: 'water', label: { en: 'with water', es: 'con agua' } }] } },
    { path: 'testStandOffM.value', label: { en: 'distance from the line under test', es: 'distancia a la línea en prueba' }, input: length },
    { path: 'note', label: { en: 'note on the job', es: 'nota del trabajo' }, input: text },
  ],
  setUp: [
    { path: 'datum', label: { en: 'place of the datum nail', es: 'lugar del clavo de origen' }, input: any },
    { path: 'headingRad', label: { en: 'direction of the line', es: 'dirección de la línea' }, input: angle },
    { path: 'pitchRad', label: { en: 'pitch of the machine', es: 'inclinación de la máquina' }, input: angle },
    { path: 'fallRatio', label: { en: 'fall along the strip', es: 'caída a lo largo' }, input: slope },
    { path: 'crossFallRatio', label: { en: 'fall across', es: 'caída a lo ancho' }, input: slope },
    { path: 'groundLevelM', label: { en: 'ground level at the datum', es: 'nivel del suelo en el origen' }, input: length },
  ],
  run: [
    { path: 'vertices', label: { en: 'bends of the pull path', es: 'curvas del recorrido' }, input: any },
    { path: 'surfaces', label: { en: 'ground under the string', es: 'suelo bajo la sarta' }, input: any },
  ],
  string: [
    { path: 'stickCount', label: { en: 'sticks in the string', es: 'tubos en la sarta' }, input: { as: 'quantity', kind: 'count', nullable: true } },
    { path: 'order', label: { en: 'order of the string', es: 'orden de la sarta' }, input: { as: 'quantity', kind: 'count' } },
    { path: 'parkingRow', label: { en: 'parking row', es: 'fila de espera' }, input: { as: 'quantity', kind: 'count', nullable: true } },
  ],
}
