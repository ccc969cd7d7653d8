/** What each task must keep in sight, by phase. Source: common practice, no published source. */
import type { Localized } from '../../messages/localized.ts'
import type { CrewRecord } from '../../scene/kinds/crew.ts'
import type { Phase } from '../../scene/parts.ts'

type Role = CrewRecord['role']
/** Another task, or a thing at a place of its own. */
export type SightTarget = Role | 'jaws' | 'plateHolder' | 'nose' | 'tether' | 'nextSupport' | 'publicWay'

export const thingWords: Readonly<Partial<Record<SightTarget, Localized>>> = {
  jaws: { en: 'the jaws', es: 'las mordazas' },
  plateHolder: { en: 'the hot plate', es: 'la placa caliente' },
  nose: { en: 'the nose', es: 'la punta' },
  tether: { en: 'the tether', es: 'la retención' },
  nextSupport: { en: 'the support before the nose', es: 'el apoyo antes de la punta' },
  publicWay: { en: 'the way he closes', es: 'el paso que cierra' },
}

export const mustSee: readonly { phase: Phase; task: Role; targets: readonly SightTarget[] }[] = [
  { phase: 'offload', task: 'loaderOperator', targets: ['spotter'] },
  { phase: 'offload', task: 'spotter', targets: ['driver', 'loaderOperator'] },
  { phase: 'offload', task: 'driver', targets: ['spotter'] },
  { phase: 'load', task: 'infeedHand', targets: ['operator', 'loaderOperator'] },
  { phase: 'load', task: 'loaderOperator', targets: ['infeedHand'] },
  { phase: 'load', task: 'spotter', targets: ['infeedHand', 'loaderOperator'] },
  { phase: 'fuse', task: 'operator', targets: ['jaws', 'plateHolder'] },
  { phase: 'fuse', task: 'infeedHand', targets: ['operator'] },
  { phase: 'fuse', task: 'exitHand', targets: ['nose', 'tether'] },
  { phase: 'pull', task: 'operator', targets: ['exitHand'] },
  { phase: 'pull', task: 'pullerOperator', targets: ['noseSpotter'] },
  { phase: 'pull', task: 'noseSpotter', targets: ['pullerOperator', 'nextSupport'] },
  { phase: 'pull', task: 'marshal', targets: ['noseSpotter', 'publicWay'] },
]
