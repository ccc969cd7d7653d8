import type { Localized } from '../localized.ts'

/** Texts of comparing two plans and of the log of releases. */
export const compareWords = {
  title: { en: 'What changed?', es: '¿Qué cambió?' },
  about: { en: 'Hold another plan against the open one. The other one is drawn thin under it.', es: 'Compare otro plano con el abierto. El otro se dibuja delgado debajo.' },
  with: { en: 'compared with', es: 'comparado con' },
  choose: { en: 'With a point in time', es: 'Con un punto en el tiempo' },
  chooseLayout: { en: 'With another layout of this device', es: 'Con otro plano de este equipo' },
  noPoints: { en: 'No point in time is kept yet. One is kept whenever the plan is printed or shared.', es: 'Aún no hay puntos en el tiempo. Se guarda uno al imprimir o compartir.' },
  keepName: { en: 'name of the point', es: 'nombre del punto' },
  file: { en: 'With a file …', es: 'Con un archivo …' },
  none: { en: 'Nothing on the plan differs.', es: 'No hay diferencias en el plano.' },
  count: { en: '{count} changes since then', es: '{count} cambios desde entonces' },
  one: { en: '1 change since then', es: '1 cambio desde entonces' },
  other: { en: 'Compare with another', es: 'Comparar con otro' },
  done: { en: 'End comparing', es: 'Terminar' },
  list: { en: 'list', es: 'lista' },
  onDrawing: { en: 'Show on the drawing', es: 'Ver en el plano' },
  more: { en: 'and {count} more', es: 'y {count} más' },
  logTitle: { en: 'Revisions that left this device', es: 'Revisiones que salieron de este equipo' },
  logNone: { en: 'This plan has not been printed or shared yet.', es: 'Este plano aún no se ha impreso ni compartido.' },
  printed: { en: 'printed', es: 'impreso' },
  shared: { en: 'shared', es: 'compartido' },
  replaces: { en: 'replaces {letter}', es: 'reemplaza {letter}' },
  same: { en: 'this is the plan as it is now', es: 'es el plano como está ahora' },
  hash: { en: 'content {hash}', es: 'contenido {hash}' },
} satisfies Record<string, Localized>

/** Headings of the groups of a list of changes (src/scene/changeLine.ts). */
export const changeGroupWords = {
  job: { en: 'Job', es: 'Trabajo' },
  added: { en: 'Added', es: 'Agregado' },
  removed: { en: 'Taken away', es: 'Quitado' },
  moved: { en: 'Moved', es: 'Movido' },
  height: { en: 'Height', es: 'Altura' },
  field: { en: 'Details', es: 'Datos' },
  ground: { en: 'Ground and line', es: 'Terreno y línea' },
  measured: { en: 'Measured', es: 'Medido' },
  other: { en: 'Other', es: 'Otros' },
} satisfies Record<string, Localized>
