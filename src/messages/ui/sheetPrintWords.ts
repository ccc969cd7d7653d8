import type { Localized } from '../localized.ts'

/** Texts of the part of the share panel that makes crew sheets. */
export const sheetPrintWords = {
  title: { en: 'Crew sheet', es: 'Hoja de cuadrilla' },
  about: { en: 'What the crew builds from: key plan to scale, setting-out table, stages, zones, checklist. Always the plan, whatever is on the screen.', es: 'Con lo que arma la cuadrilla: planta a escala, tabla de trazo, etapas, zonas, lista de revisión. Siempre el plan, sea lo que sea que esté en pantalla.' },
  paper: { en: 'paper', es: 'papel' },
  orientation: { en: 'lies', es: 'posición' },
  landscape: { en: 'wide', es: 'horizontal' },
  portrait: { en: 'tall', es: 'vertical' },
  language: { en: 'language', es: 'idioma' },
  both: { en: 'English and Spanish', es: 'inglés y español' },
  units: { en: 'units', es: 'unidades' },
  feet: { en: 'feet and inches (metric)', es: 'pies y pulgadas (métrico)' },
  metric: { en: 'metric', es: 'métrico' },
  sheetIn: { en: 'Sheet as {form}', es: 'Hoja en {form}' },
  tableIn: { en: 'Table as {form}', es: 'Tabla en {form}' },
  planIn: { en: 'Plan as {form}', es: 'Planta en {form}' },
  others: { en: 'For other programs', es: 'Para otros programas' },
  step_checks: { en: 'waiting for the checks', es: 'esperando las revisiones' },
  step_stages: { en: 'stage {done} of {of}', es: 'etapa {done} de {of}' },
  step_pages: { en: 'page {done} of {of}', es: 'página {done} de {of}' },
  cancel: { en: 'Cancel', es: 'Cancelar' },
  stale: { en: 'not settled: a sheet made now says DRAFT on every page', es: 'sin terminar: una hoja hecha ahora dice BORRADOR en cada página' },
} satisfies Record<string, Localized>
