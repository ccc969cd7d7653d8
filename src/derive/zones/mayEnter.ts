/** Who may be in a zone while it is live, and on what condition. */
import type { Localized } from '../../messages/localized.ts'
import type { CrewRecord } from '../../scene/kinds/crew.ts'

export interface MayEnter {
  task: CrewRecord['role']
  /** Null: nothing beyond the task itself. */
  condition: Localized | null
}

const condition = (en: string, es: string): Localized => ({ en, es })

/** Conditions that several zones share. */
export const when = {
  eyeContact: condition('in eye contact with the operator', 'a la vista del operador'),
  atControls: condition('at the controls, hands out of the jaws', 'en los controles, manos fuera de las mordazas'),
  inCab: condition('in the cab', 'en la cabina'),
  guardedCab: condition('in a guarded cab', 'en una cabina con protección'),
  heldBack: condition('once the hold-back is tight and someone has said so', 'cuando la retención esté tensa y alguien lo confirme'),
} as const

export const enter = (task: CrewRecord['role'], on: Localized | null = null): MayEnter => ({ task, condition: on })
