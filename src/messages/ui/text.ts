/**
 * Texts of the screen by key. `en` is complete; `es` must have every key of `en` (its type says so).
 * The pseudo-language marks every letter and adds about a third of length, to show what is not in the tables and what does not fit.
 */
import type { FormatOptions } from '../../units/format.ts'
import type { Language, Localized } from '../localized.ts'
import { renderText } from '../render.ts'
import type { TextValue } from '../render.ts'
import { en } from './en.ts'
import { es } from './es.ts'

export type UiKey = keyof typeof en
export type UiValues = Readonly<Record<string, TextValue>>

export interface TextOptions extends FormatOptions {
  pseudo?: boolean
}

const accents: Readonly<Record<string, string>> = {
  a: 'á', b: 'ƀ', c: 'ç', d: 'đ', e: 'é', f: 'ƒ', g: 'ĝ', h: 'ĥ', i: 'í', j: 'ĵ', k: 'ķ', l: 'ł', m: 'ɱ', n: 'ñ', o: 'ó', p: 'þ', q: 'ǫ', r: 'ŕ', s: 'š', t: 'ŧ', u: 'ú', v: 'ṽ', w: 'ŵ', x: 'ẋ', y: 'ý', z: 'ž',
}
const filler = ' ~·'

/** Accented and about 35 % longer; `{name}` places stay as they are. */
export function pseudoText(text: string): string {
  const marked = text.split(/(\{[^}]*\})/).map((part) => (part.startsWith('{') ? part : part.replace(/[a-z]/g, (letter) => accents[letter] ?? letter))).join('')
  const extra = Math.ceil(text.replace(/\{[^}]*\}/g, '').length * 0.35)
  return extra === 0 ? marked : marked + filler.repeat(Math.ceil(extra / filler.length)).slice(0, extra)
}

export function localizedOf(key: UiKey): Localized {
  return { en: en[key], es: es[key] }
}

/** A localized text from anywhere, as the reader sees it. */
export function localText(text: Localized, options: TextOptions, values: UiValues = {}): string {
  const shown: Localized = options.pseudo === true ? { en: pseudoText(text.en), es: pseudoText(text.es) } : text
  return renderText(shown, values, options)
}

/** A text of the tables with its values written in the reader's units. */
export function uiText(key: UiKey, options: TextOptions, values: UiValues = {}): string {
  return localText(localizedOf(key), options, values)
}

/** Short form for texts without quantities, e.g. labels outside React. */
export function t(language: Language, key: UiKey, values: Readonly<Record<string, string | number>> = {}): string {
  return uiText(key, { language, system: 'metric' }, values)
}
