import type { ToolContext } from './types.ts'

/**
 * Digits typed while a gesture runs. They collect and are echoed with their reading; Enter commits, Backspace takes one
 * back, Esc clears them before it cancels the gesture.
 */
const typable = /^[0-9.,'"/\- ftinm½¼¾⅛⅜⅝⅞′″]$/i

export type TypedOutcome = { is: 'typing'; typed: string } | { is: 'enter'; valueM: number; typed: string } | { is: 'unread'; typed: string } | { is: 'other' }

/** Reads a distance in the reader's units, m; null where it is none. A bare number is feet or metres. */
export type ReadDistance = (text: string) => { valueM: number; read: string } | null

/** What a key does to the collected text. `other`: the key is not for us. */
export const typeKey = (typed: string, key: string, read: ReadDistance): TypedOutcome => {
  if (key === 'Backspace') return typed === '' ? { is: 'other' } : { is: 'typing', typed: typed.slice(0, -1) }
  if (key === 'Escape') return typed === '' ? { is: 'other' } : { is: 'typing', typed: '' }
  if (key === 'Enter') {
    if (typed.trim() === '') return { is: 'other' }
    const value = read(typed)
    return value === null ? { is: 'unread', typed } : { is: 'enter', valueM: value.valueM, typed }
  }
  // Letters and blanks only go on with a number that was begun: alone they are shortcuts.
  if (!typable.test(key) || (typed === '' && !/[0-9.\-½¼¾⅛⅜⅝⅞]/.test(key))) return { is: 'other' }
  return typed.length >= 20 ? { is: 'typing', typed } : { is: 'typing', typed: typed + key }
}

/** Typed text and how it is read, for the echo beside the pointer; null while nothing is typed. */
export const echoOf = (typed: string, context: Pick<ToolContext, 'readDistance'>): { typed: string; read: string | null } | null =>
  typed === '' ? null : { typed, read: context.readDistance(typed)?.read ?? null }
