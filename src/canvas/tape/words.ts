import type { Localized } from '../../messages/localized.ts'

export const tapeWords = {
  infeed: { en: 'infeed', es: 'entrada' },
  exit: { en: 'exit', es: 'salida' },
  band: {
    en: 'Tape: distances from the datum nail. Arrow keys go from flag to flag, Shift with an arrow moves it 1 in or 10 mm, Enter opens its tag.',
    es: 'Cinta: distancias desde el clavo de origen. Las flechas van de bandera en bandera, Mayús con flecha la mueve 1 pulg o 10 mm, Intro abre su etiqueta.',
  },
  empty: { en: 'Draw the strip, and its tape lies here.', es: 'Dibuje la franja y aquí queda su cinta.' },
  after: { en: '{gap} from {label}', es: '{gap} desde {label}' },
  before: { en: '{gap} to {label}', es: '{gap} hasta {label}' },
  saddle: { en: 'saddle {height}', es: 'apoyo {height}' },
  onJawLine: { en: 'on the jaw line', es: 'en la línea de mordazas' },
} as const satisfies Record<string, Localized>
