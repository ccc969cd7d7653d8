/** One line of a list of changes. */
import type { Localized } from '../messages/localized.ts'
import type { TextValue } from '../messages/render.ts'

/** In the order they are told. */
export const changeGroups = ['job', 'added', 'removed', 'moved', 'height', 'field', 'ground', 'measured', 'other'] as const
export type ChangeGroup = (typeof changeGroups)[number]

/** One thing that changed; a sentence without a capital and without a full stop, to stand in a list. */
export interface Change {
  group: ChangeGroup
  /** Record it is about; it may be in only one of the two documents. */
  recordId: string
  text: Localized
  values: Readonly<Record<string, TextValue>>
}

/** A line about one record before it is named: its text carries `{what}`. */
export type ChangeLine = Omit<Change, 'recordId'>
