/** Writes words and figures of the crew sheet in one language or both, metric in brackets beside feet and inches. */
import type { Sentence } from '../../checks/finding.ts'
import type { SiteModel } from '../../derive/types.ts'
import type { Language, Localized } from '../../messages/localized.ts'
import type { TextValue } from '../../messages/render.ts'
import { inchM } from '../../units/factors.ts'
import type { UnitSystem } from '../../units/format.ts'
import type { Quantity } from '../../units/quantity.ts'
import { readerOf, type Reader } from '../content.ts'
import type { SheetLanguage } from './types.ts'
import { crewWords, type CrewWord } from './words.ts'

export type Values = Readonly<Record<string, TextValue>>

export interface CrewReader {
  /** One a language, in the order they are written. */
  readers: readonly Reader[]
  language: Language
  system: UnitSystem
  isMetric: boolean
  /** In all languages, on one line. */
  say: (key: CrewWord, values?: Values) => string
  /** In all languages, one line each; equal ones once. */
  lines: (key: CrewWord, values?: Values) => readonly string[]
  local: (text: Localized, values?: Values) => string
  localLines: (text: Localized, values?: Values) => readonly string[]
  sentenceLines: (sentence: Sentence) => readonly string[]
  /** '28 ½ in (724 mm)'. */
  figure: (quantity: Quantity) => string
  /** The same as two lines of a narrow cell. */
  cell: (quantity: Quantity) => readonly string[]
  /** How far a height may be off, rounded down to what a tape can show: '± ⅛ in (3.3 mm)'. */
  toleranceCell: (toleranceM: number | null) => readonly string[]
  runningCell: (runningM: number | null) => readonly string[]
  offsetCell: (offsetM: number | null) => readonly string[]
}

const once = (texts: readonly string[]): readonly string[] => [...new Set(texts)]

/** 'infeed 12 ft (3.66 m)' → its figure and, on a line of its own, the other system. */
const parted = (text: string): readonly string[] => {
  const at = text.indexOf(' (')
  return at < 0 ? [text] : [text.slice(0, at), text.slice(at + 1)]
}

/** Figure of the first language under the side words of all; a text without a figure line by line. */
const sided = (texts: readonly string[]): readonly string[] => {
  const [first = '', ...others] = once(texts)
  if (others.length === 0) return parted(first)
  if (!/\d/.test(first)) return [first, ...others]
  const word = (text: string): string => text.split(' ', 1)[0] ?? ''
  const [figure = '', ...other] = parted(first.slice(word(first).length + 1))
  const words = once([word(first), ...others.map(word)]).join(' / ')
  // 'R / D 6 in' is short; 'infeed / entrada' takes a line of its own.
  return words.length < 8 ? [`${words} ${figure}`, ...other] : [words, figure, ...other]
}

/** A value inside a sentence carries both systems. */
const withBoth = (values: Values | undefined, reader: Reader): Values =>
  Object.fromEntries(Object.entries(values ?? {}).map(([name, value]) => {
    if (typeof value !== 'object') return [name, value]
    if ('kind' in value) return [name, reader.both(value)]
    if ('runningM' in value) return [name, reader.runningBoth(value.runningM)]
    return [name, 'offsetM' in value ? reader.offsetBoth(value.offsetM) : value]
  }))

export const crewReader = (site: SiteModel, language: SheetLanguage, system: UnitSystem): CrewReader => {
  const languages: readonly Language[] = language === 'both' ? ['en', 'es'] : [language]
  const readers = languages.map((one) => readerOf({ site, language: one, system }))
  const main = readers[0]!
  const localLines: CrewReader['localLines'] = (text, values) => once(readers.map((reader) => reader.local(text, withBoth(values, reader))))
  const figure = (quantity: Quantity): string => main.both(quantity)
  return {
    readers, language: languages[0]!, system, isMetric: system === 'metric',
    localLines,
    local: (text, values) => localLines(text, values).join(' / '),
    lines: (key, values) => localLines(crewWords[key], values),
    say: (key, values) => localLines(crewWords[key], values).join(' / '),
    sentenceLines: ({ text, values }) => once(readers.map((reader) => reader.sentence({ text, values: withBoth(values, reader) }))),
    figure,
    cell: (quantity) => parted(figure(quantity)),
    toleranceCell: (toleranceM) => {
      if (toleranceM === null) return ['?']
      const stepM = main.isMetric ? 0.001 : inchM / 16
      // A tolerance never grows by rounding; what is under one step is written as it is.
      const shownM = toleranceM < stepM ? toleranceM : Math.floor(toleranceM / stepM + 1e-6) * stepM
      const [shown = ''] = parted(figure({ kind: 'height', value: shownM }))
      const [, exact] = parted(figure({ kind: 'shortLength', value: toleranceM }))
      return [`± ${shown}`, ...(exact === undefined ? [] : [exact])]
    },
    runningCell: (runningM) => sided(readers.map((reader) => reader.runningLong(runningM))),
    offsetCell: (offsetM) => sided(readers.map((reader) => reader.offsetLong(offsetM))),
  }
}
