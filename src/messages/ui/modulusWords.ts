import type { Localized } from '../localized.ts'

/** Texts of the modulus by time and temperature in the job panel. */
export const modulusWords = {
  title: { en: 'Stiffness of the pipe wall (E)', es: 'Rigidez de la pared del tubo (E)' },
  low: { en: 'wall temperature, lowest', es: 'temperatura de pared, la menor' },
  high: { en: 'wall temperature, highest', es: 'temperatura de pared, la mayor' },
  bandNeeds: { en: 'Give the wall temperature first; lowest and highest lie about it.', es: 'Dé primero la temperatura de pared; la menor y la mayor quedan alrededor.' },
  bandNone: { en: 'as the wall temperature', es: 'como la temperatura de pared' },
  question: { en: 'question', es: 'pregunta' },
  duration: { en: 'load lasts', es: 'dura la carga' },
  modulus: { en: 'E', es: 'E' },
  range: { en: 'low to high', es: 'baja a alta' },
  nose: { en: 'nose hanging', es: 'punta colgando' },
  pull: { en: 'pull, bends', es: 'jalado, curvas' },
  jaws: { en: 'jaws and fusing', es: 'mordazas y fusión' },
  rest: { en: 'at rest, a night', es: 'en reposo, una noche' },
  stored: { en: 'stored', es: 'almacenado' },
  readAt: { en: '{lasts} (read at {read}: a little too soft)', es: '{lasts} (leído a {read}: algo blando de más)' },
  at: { en: 'at {temperature} in the wall', es: 'con {temperature} en la pared' },
  assumed: { en: 'at {temperature}, taken because nobody gave the wall temperature', es: 'con {temperature}, supuesta porque nadie dio la temperatura de pared' },
  source: { en: 'PPI Handbook of Polyethylene Pipe, 2nd edition, chapter 3, Tables B.1.1 and B.1.2; temperature factors from memory, confirm. Low and high: ± 20 %, house rule.', es: 'PPI Handbook of Polyethylene Pipe, 2.ª edición, capítulo 3, tablas B.1.1 y B.1.2; factores de temperatura de memoria, por confirmar. Baja y alta: ± 20 %, regla de la casa.' },
} satisfies Record<string, Localized>
