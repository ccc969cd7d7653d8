/** The limits in force for a layout: the starting table with the layout's changes laid over it. */
import { limitWith, startingLimits, type Limit } from '../engine/limits.ts'
import type { LimitLookup } from '../derive/mechanics.ts'
import { recordsOf, type YardDocument } from '../scene/document.ts'
import type { Source } from './source.ts'

export interface Limits extends LimitLookup {
  /** A limit by its id. Fails: RangeError for an id that is not in the table. */
  limit: (id: string) => Limit
}

/**
 * Limits of a document. A change of a limit that no longer exists is passed over: the file keeps it, nothing reads it.
 * The later of two changes of one bound wins.
 */
export function limitsOf(document: YardDocument): Limits {
  const changes = recordsOf(document, 'limitChange')
  const made = new Map<string, Limit>()
  return {
    limit: (id) => {
      let limit = made.get(id)
      if (limit === undefined) made.set(id, (limit = limitWith(id, changes)))
      return limit
    },
  }
}

/** Every limit in force, in the order of the table. */
export const allLimits = (limits: Limits): readonly Limit[] => startingLimits.map(({ id }) => limits.limit(id))

/** The source of a limit as a finding shows it. */
export const sourceOf = (limit: Limit): Source => ({
  class: limit.sourceClass,
  cite: limit.cite,
  ...(limit.cite.includes('from memory') ? { fromMemory: true } : {}),
  ...(limit.isEdited === true ? { edited: true } : {}),
})
