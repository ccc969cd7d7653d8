import type { Localized } from '../localized.ts'

/** Words of 'Place the stands' and 'Place the rollers'. */
export const proposalWords = {
  stands: { en: 'Place the stands', es: 'Colocar los soportes' },
  rollers: { en: 'Place the rollers', es: 'Colocar los rodillos' },
  group: { en: 'Let the planner place', es: 'Que el planificador coloque' },
  working: { en: 'Trying layouts, {share} done.', es: 'Probando disposiciones, {share} hecho.' },
  cancel: { en: 'Cancel', es: 'Cancelar' },
  accept: { en: 'Accept', es: 'Aceptar' },
  clear: { en: 'Clear', es: 'Quitar' },
  shown: { en: 'Shown dashed; nothing is changed yet.', es: 'Se ve en línea cortada; nada ha cambiado aún.' },
  now: { en: 'now', es: 'ahora' },
  proposed: { en: 'proposed', es: 'propuesto' },
  standCount: { en: 'pipe stands', es: 'soportes' },
  rollerCount: { en: 'ground rollers', es: 'rodillos' },
  clears: { en: 'It clears', es: 'Resuelve' },
  clearsNone: { en: 'It clears no note; it saves {count} supports.', es: 'No resuelve ninguna nota; ahorra {count} apoyos.' },
  raisesNone: { en: 'It raises no STOP, FIX or CHECK.', es: 'No causa ningún ALTO, CORREGIR ni REVISAR.' },
  toConfirm: { en: 'To confirm on site', es: 'Por confirmar en el sitio' },
  reasons: { en: 'Why each stands there', es: 'Por qué está cada uno ahí' },
  nothing: { en: 'What stands there does: no layout tried clears more with fewer supports.', es: 'Lo que hay sirve: ninguna disposición probada resuelve más con menos apoyos.' },
  nothingCounts: { en: 'Stands there: {stands} pipe stands and {rollers} ground rollers.', es: 'Hay {stands} soportes y {rollers} rodillos.' },
  impossible: { en: 'No layout tried meets all limits', es: 'Ninguna disposición probada cumple todos los límites' },
  by: { en: 'short by {by}', es: 'faltan {by}' },
  gear: { en: 'What would do it: {gear}', es: 'Lo que serviría: {gear}' },
  missing: { en: 'Needed first', es: 'Hace falta primero' },
  failed: { en: 'The search stopped ({reason}). Nothing is changed.', es: 'La búsqueda se detuvo ({reason}). Nada ha cambiado.' },
} as const satisfies Record<string, Localized>
