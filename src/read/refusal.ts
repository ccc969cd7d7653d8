import type { Localized } from '../messages/localized.ts'

/** What a reader of foreign files answers: what was read, or why not, with the field, line or member that is wrong. */
export type Reading<T> = ({ ok: true } & T) | { ok: false; reason: Localized }

export const refused = (en: string, es: string): { ok: false; reason: Localized } => ({ ok: false, reason: { en, es } })

/** Text of somebody else's file as it may stand in a message: on one line, without controls, short. */
export const quoted = (text: string, most = 40): string => {
  // eslint-disable-next-line no-control-regex -- controls are what is taken out
  const plain = text.replace(/[\u0000-\u001f\u007f-\u009f\u200e\u200f\u202a-\u202e\u2066-\u2069]+/g, ' ').trim()
  return `"${plain.length > most ? `${plain.slice(0, most - 1)}…` : plain}"`
}
