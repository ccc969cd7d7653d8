import type { Localized } from '../localized.ts'

/** Texts of the what-if band, of the case shown and of the range of a finding. */
export const whatIfWords = {
  band: { en: 'case shown', es: 'caso mostrado' },
  whatIf: { en: 'What if:', es: 'Qué pasa si:' },
  none: { en: 'What if … tap one or more. The plan stays as it is.', es: 'Qué pasa si … toque una o más. El plano queda como está.' },
  asSet: { en: 'As set: heights as they were measured, the others as planned.', es: 'Como quedó: alturas medidas; las demás, como en el plano.' },
  notThePlan: { en: 'Not the plan. Edits change the plan; files and images show it.', es: 'No es el plano. Los cambios van al plano; archivos e imágenes lo muestran.' },
  back: { en: 'back to the plan', es: 'volver al plano' },
  close: { en: 'close', es: 'cerrar' },
  taps: { en: 'what to suppose', es: 'qué suponer' },
  warmer: { en: '{by} warmer', es: '{by} más caliente' },
  missing: { en: '{items} missing', es: 'falta {items}' },
  missingOne: { en: 'critical stand missing', es: 'falta el soporte crítico' },
  noStand: { en: 'There is no support to take away.', es: 'No hay apoyo que quitar.' },
  wetGrass: { en: 'wet grass', es: 'pasto mojado' },
  noGrass: { en: 'No grass on the pull path.', es: 'No hay pasto en el recorrido.' },
  wind: { en: 'wind {speed}', es: 'viento {speed}' },
  sink: { en: '{item} {by} lower', es: '{item} {by} más bajo' },
  friction: { en: 'friction {part}', es: 'fricción {part}' },
  modulus: { en: 'modulus {part}', es: 'módulo {part}' },
  temperature: { en: 'wall temperature {part}', es: 'temperatura de pared {part}' },
  part_low: { en: 'low', es: 'baja' },
  part_likely: { en: 'likely', es: 'probable' },
  part_high: { en: 'high', es: 'alta' },
  item: { en: 'an item', es: 'un elemento' },
} satisfies Record<string, Localized>
