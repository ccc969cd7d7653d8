import type { App } from '../../state/app.ts'
import { importWords } from '../../messages/ui/importWords.ts'
import { rollOffWords } from '../../messages/ui/rollOffWords.ts'
import { zoneWords } from '../../messages/ui/zoneWords.ts'
import type { Localized } from '../../messages/localized.ts'

/**
 * What the panel 'more' lists: every tool that has no place of its own on the sheet. A new one is one line here and its
 * panel in src/ui/shell/OpenPanels.tsx, or what it does in `open`.
 */
export interface MoreEntry {
  group: keyof typeof moreGroups
  label: Localized
  about: Localized
  /** Opens this panel of OpenPanels.tsx … */
  panel?: string
  /** … or does this instead. The list closes first. */
  open?: (app: App) => void
}

export const moreGroups = {
  check: { en: 'check the plan', es: 'revisar el plano' },
  time: { en: 'time and gear', es: 'tiempo y equipo' },
  crew: { en: 'with the crew', es: 'con la cuadrilla' },
  bring: { en: 'bring in from outside', es: 'traer de fuera' },
  paper: { en: 'on paper and to others', es: 'en papel y para otros' },
  app: { en: 'this program', es: 'este programa' },
} satisfies Record<string, Localized>

export const moreEntries: readonly MoreEntry[] = [
  { group: 'check', panel: 'critical', label: { en: 'which stand must not move?', es: '¿qué soporte no debe moverse?' }, about: { en: 'each support missing or sunk in turn, ranked', es: 'cada apoyo falta o baja por turno, en orden' } },
  { group: 'check', panel: 'asSet', label: { en: 'heights as set', es: 'alturas como quedaron' }, about: { en: 'type what was measured, work it out as it stands', es: 'escriba lo medido y calcule como está' } },
  { group: 'check', panel: 'bow', label: { en: 'turn the bow', es: 'girar la curvatura' }, about: { en: 'how bowed sticks are best turned in the jaws', es: 'cómo girar mejor los tubos curvados en las mordazas' } },
  { group: 'time', panel: 'strings', label: { en: 'strings', es: 'sartas' }, about: { en: 'several strings in a short yard, rows to park them, joints between them', es: 'varias sartas en un patio corto, filas para estacionarlas, juntas entre ellas' } },
  { group: 'check', panel: 'archPit', label: { en: 'arch and pit', es: 'arco y foso' }, about: { en: 'arch into a bore, pit of a liner, string parked on a curve', es: 'arco a una perforación, foso de un revestimiento, sarta guardada en curva' } },
  { group: 'check', open: (app) => app.view.setState({ tool: { name: 'rollOff' }, leaf: 'plan' }), label: rollOffWords.title, about: rollOffWords.about },
  { group: 'check', panel: 'zones', label: zoneWords.entry, about: zoneWords.entryAbout },
  { group: 'time', panel: 'clock', label: { en: 'clock of the job', es: 'reloj del trabajo' }, about: { en: 'when each joint is done, when the last may start', es: 'cuándo queda cada junta, cuándo puede empezar la última' } },
  { group: 'time', panel: 'fusionCard', label: { en: 'fusion card', es: 'tarjeta de fusión' }, about: { en: 'bead, pressures and times of this pipe', es: 'cordón, presiones y tiempos de este tubo' } },
  { group: 'time', panel: 'mobilising', label: { en: 'what to bring', es: 'qué llevar' }, about: { en: 'gear with spares, sticks, truckloads', es: 'equipo con repuestos, tubos, viajes de camión' } },
  { group: 'time', panel: 'gear', label: { en: 'gear we own', es: 'equipo propio' }, about: { en: 'what the crew owns and its plates say', es: 'lo que tiene la cuadrilla y dicen sus placas' } },
  { group: 'bring', panel: 'levels', label: importWords.levelsEntry, about: importWords.levelsEntryAbout },
  { group: 'bring', panel: 'foreignPlan', label: importWords.planEntry, about: importWords.planEntryAbout },
  { group: 'paper', panel: 'compare', label: { en: 'what changed?', es: '¿qué cambió?' }, about: { en: 'compare revisions, points in time, files; log of releases', es: 'comparar revisiones, puntos en el tiempo, archivos; registro de entregas' } },
  { group: 'crew', panel: 'tape', label: { en: 'setting out by tape', es: 'replanteo con cinta' }, about: { en: 'one mark at a time, full screen: tick, measure, next', es: 'una marca a la vez, a pantalla completa: marcar, medir, siguiente' } },
  { group: 'crew', panel: 'talk', label: { en: 'toolbox talk', es: 'charla de seguridad' }, about: { en: 'the next stage, zone by zone, in English and Spanish', es: 'la etapa que sigue, zona por zona, en inglés y español' } },
  { group: 'app', panel: 'settings', label: { en: 'settings', es: 'ajustes' }, about: { en: 'language, theme, hand', es: 'idioma, tema, mano' } },
  { group: 'app', panel: 'keys', label: { en: 'keyboard', es: 'teclado' }, about: { en: 'every key and what it does', es: 'cada tecla y lo que hace' } },
  { group: 'app', panel: 'about', label: { en: 'about, cautions, licences', es: 'acerca de, advertencias, licencias' }, about: { en: 'what it is and what it is not', es: 'qué es y qué no es' } },
]
