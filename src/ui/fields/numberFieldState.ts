/**
 * What a number field does, without a page: a draft is only there after typing, so a field nobody touched can never write back
 * its own rounded text. What can't be read leaves the old value and says what could be.
 */
export type Reading =
  | { as: 'value'; value: number }
  | { as: 'empty' }
  /** Reads two ways, e.g. a bare 12 in a feet-and-inches field. */
  | { as: 'ask'; choices: readonly { text: string; value: number }[] }
  | { as: 'unreadable'; reason: string }

export interface FieldState {
  /** null: not touched, the field shows the value itself. */
  draft: string | null
  problem: Extract<Reading, { as: 'ask' | 'unreadable' }> | null
  /** How the last accepted text was understood. */
  echo: { typed: string; value: number } | null
}

export type FieldEvent =
  | { type: 'typed'; text: string }
  | { type: 'left' }
  | { type: 'escaped' }
  | { type: 'answered'; value: number }

export interface FieldRules {
  /** Text shown while untouched; typing it again is no change. */
  shown: string
  read: (text: string) => Reading
  isNullable: boolean
  /** Reason in words where a value is out of bounds; null where it is fine. */
  outOfBounds: (value: number) => string | null
}

export interface FieldStep {
  state: FieldState
  /** Value to write; absent: nothing to write. */
  commit?: { value: number | null }
}

export const idleField: FieldState = { draft: null, problem: null, echo: null }

export const stepField = (state: FieldState, event: FieldEvent, rules: FieldRules): FieldStep => {
  switch (event.type) {
    case 'typed':
      return { state: { draft: event.text, problem: null, echo: null } }
    case 'escaped':
      return { state: idleField }
    case 'answered':
      return accept(state.draft ?? '', event.value, rules)
    case 'left': {
      const { draft } = state
      if (draft === null || draft.trim() === rules.shown.trim()) return { state: { ...idleField, echo: state.echo } }
      const reading = rules.read(draft)
      switch (reading.as) {
        case 'value': return accept(draft, reading.value, rules)
        case 'empty': return rules.isNullable ? { state: idleField, commit: { value: null } } : { state: idleField }
        default: return { state: { draft, problem: reading, echo: null } }
      }
    }
  }
}

const accept = (typed: string, value: number, rules: FieldRules): FieldStep => {
  const reason = rules.outOfBounds(value)
  if (reason !== null) return { state: { draft: typed, problem: { as: 'unreadable', reason }, echo: null } }
  return { state: { draft: null, problem: null, echo: { typed, value } }, commit: { value } }
}
