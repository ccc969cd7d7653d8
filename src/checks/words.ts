/** Words several findings share. */
import type { Localized } from '../messages/localized.ts'
import type { Phase } from '../scene/parts.ts'

export const sideWord = (side: 'infeed' | 'exit'): Localized => (side === 'infeed' ? { en: 'infeed', es: 'entrada' } : { en: 'exit', es: 'salida' })

export const phaseWords: Record<Phase, Localized> = {
  setUp: { en: 'set-up', es: 'montaje' },
  offload: { en: 'offload', es: 'descarga' },
  load: { en: 'load', es: 'carga' },
  fuse: { en: 'fuse', es: 'fusión' },
  pull: { en: 'pull', es: 'jalado' },
  move: { en: 'move', es: 'traslado' },
  rest: { en: 'rest', es: 'reposo' },
  tieIn: { en: 'tie-in', es: 'empate' },
}
