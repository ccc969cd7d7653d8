import { levelOrder, type Level } from '../../checks/finding.ts'
import type { NumberedFinding } from './order.ts'

/** Notes of one level drawn before 'show all': more than anybody reads down a margin. */
export const MOST_OF_LEVEL = 40

/** Notes of one level: those drawn, and how many are left out. */
export interface LevelNotes {
  level: Level
  shown: readonly NumberedFinding[]
  more: number
}

/**
 * Numbered findings by level, each level cut off after `MOST_OF_LEVEL` unless it is in `allOf` or the finding that is
 * open (`openKey`) lies beyond. Numbers stay those of the whole list; levels without findings are left out.
 */
export const cappedNotes = (numbered: readonly NumberedFinding[], allOf: readonly Level[], openKey: string | null): LevelNotes[] =>
  levelOrder.flatMap((level) => {
    const own = numbered.filter(({ finding }) => finding.level === level)
    if (own.length === 0) return []
    const isWhole = own.length <= MOST_OF_LEVEL || allOf.includes(level) || own.findIndex(({ finding }) => finding.key === openKey) >= MOST_OF_LEVEL
    const shown = isWhole ? own : own.slice(0, MOST_OF_LEVEL)
    return [{ level, shown, more: own.length - shown.length }]
  })
