/** What goes on the image, and how a reader's words and figures are written on it. */
import type { CheckRun, Sentence } from '../checks/finding.ts'
import type { SectionProfile, SiteModel } from '../derive/types.ts'
import type { Zone } from '../derive/zones.ts'
import type { BoxPx, Paint2D } from '../drawing/paint.ts'
import type { Theme } from '../drawing/theme.ts'
import { textIn, type Language, type Localized } from '../messages/localized.ts'
import { asSentence, renderText, type TextValue } from '../messages/render.ts'
import { formatOffset, formatQuantity, formatRunning, type FormatOptions, type UnitSystem } from '../units/format.ts'
import type { Quantity, QuantityKind } from '../units/quantity.ts'
import { sheetWords, type SheetWord } from './words.ts'

export interface ImageContent {
  site: SiteModel
  /** Pipe of the stage drawn; loads of the table come from it. */
  profile: SectionProfile
  run: CheckRun | null
  /** False while `run` belongs to an older document. */
  isSettled: boolean
  /** Zones live at the stage drawn. */
  zones: readonly Zone[]
  /** The stage in words: 'pull, joint 7 of 7'. */
  stageWords: string
  language: Language
  system: UnitSystem
  /** Date as the reader writes it. */
  when: string
  fileName?: string
  /** Beside the heading of the side view, e.g. how much larger heights are drawn. */
  sideWords?: string
  /** The sheet is turned round: exit to the left. */
  isTurned?: boolean
  /** Default: the day theme. The painters must draw in the same one. */
  theme?: Theme
  /** The very plan, tape and side view of the screen. Clipped to the box; what they leave in the context is put back. */
  paintPlan: (context: Paint2D, box: BoxPx, pxPerM: number) => void
  paintTape: (context: Paint2D, box: BoxPx) => void
  paintSection: (context: Paint2D, box: BoxPx) => void
}

/** Writes for one reader: words of the table, figures in the layout's units, metric in brackets beside feet and inches. */
export interface Reader {
  language: Language
  isMetric: boolean
  say: (key: SheetWord, values?: Readonly<Record<string, TextValue>>) => string
  local: (text: Localized, values?: Readonly<Record<string, TextValue>>) => string
  /** What a finding says: with a capital at its start. */
  sentence: (sentence: Sentence) => string
  figure: (quantity: Quantity, over?: Partial<FormatOptions>) => string
  /** Both systems where feet and inches are shown: '28 ½ in (724 mm)'. */
  both: (quantity: Quantity, over?: Partial<FormatOptions>) => string
  runningBoth: (runningM: number | null) => string
  /** The same with the feet spelt out: 'infeed 8 ft 4 in (2.54 m)'. */
  runningLong: (runningM: number | null) => string
  offsetBoth: (offsetM: number | null) => string
  /** The same spelt out: 'R 6 in (152 mm)', 'R 27 ft 10 in (8484 mm)'. */
  offsetLong: (offsetM: number | null) => string
}

export const readerOf = ({ language, system, site }: Pick<ImageContent, 'language' | 'system' | 'site'>): Reader => {
  const systemOf = (kind: QuantityKind): UnitSystem => site.layout.unitOverrides[kind] ?? system
  const options: FormatOptions = { system, language }
  const local: Reader['local'] = (text, values = {}) => renderText({ en: textIn(text, 'en'), es: textIn(text, 'es') }, values, options)
  const bothIn = (kind: QuantityKind): FormatOptions => ({ system: systemOf(kind), language, both: systemOf(kind) === 'feetInches', style: 'tape' })
  return {
    language,
    isMetric: system === 'metric',
    local,
    sentence: ({ text, values }) => asSentence(local(text, values), language),
    say: (key, values) => local(sheetWords[key], values),
    figure: (quantity, over) => formatQuantity(quantity, { ...options, system: systemOf(quantity.kind), ...over }),
    both: (quantity, over) => formatQuantity(quantity, { ...bothIn(quantity.kind), style: 'long', ...over }),
    runningBoth: (runningM) => formatRunning(runningM, bothIn('length')),
    runningLong: (runningM) => formatRunning(runningM, { ...bothIn('length'), style: 'long' }),
    offsetBoth: (offsetM) => formatOffset(offsetM, bothIn('shortLength')),
    offsetLong: (offsetM) => formatOffset(offsetM, { ...bothIn('shortLength'), style: 'long' }),
  }
}
