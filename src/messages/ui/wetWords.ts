import type { Localized } from '../localized.ts'

/** Texts of wet mode. */
export const wetWords = {
  on: { en: 'Wet mode: the plan is frozen.', es: 'Modo mojado: el plano está congelado.' },
  leave: { en: 'hold to leave', es: 'mantenga para salir' },
  leaveLabel: { en: 'hold for a second to leave wet mode', es: 'mantenga un segundo para salir del modo mojado' },
  holdFor: { en: 'hold: {what}', es: 'mantenga: {what}' },
  holdAbout: { en: 'Press and hold until the bar is full; with the keyboard, hold Enter or the space bar.', es: 'Mantenga pulsado hasta llenar la barra; con el teclado, mantenga Entrar o la barra espaciadora.' },
} satisfies Record<string, Localized>
