import type { Localized } from '../localized.ts'

/** Texts of what the device keeps: nudges to save a file, and the room that is used. */
export const keepWords = {
  battery: { en: 'The battery is low, and {count} edits are in no file.', es: 'Queda poca batería y hay {count} cambios que no están en ningún archivo.' },
  edits: { en: '{count} edits are in no file, and the browser may clear what this device keeps.', es: 'Hay {count} cambios que no están en ningún archivo, y el navegador puede borrar lo que guarda este equipo.' },
  room: { en: 'This device has little room left: {used} of {allowed} MB are used. Save a file.', es: 'Queda poco espacio en este equipo: se usan {used} de {allowed} MB. Guarde un archivo.' },
  save: { en: 'Save a file', es: 'Guardar archivo' },
  later: { en: 'Later', es: 'Después' },
  inNoFile: { en: '{count} edits of this layout are in no file yet.', es: '{count} cambios de este plano aún no están en un archivo.' },
} satisfies Record<string, Localized>
