/** Figures beside the findings: what each support has to carry and how exactly it has to be set. Tag, lists and the crew sheet read them. */
import type { Mechanics, SupportLoad } from '../derive/mechanics.ts'
import type { SupportView } from '../derive/types.ts'
import { limitParam } from '../engine/limits.ts'
import type { Limits } from './limits.ts'

export interface SupportFigures {
  /** How exactly the saddle has to be set, ±, between the least and the most of limit `set-out-tolerance`; null where nothing could be solved. */
  toleranceM: number | null
  /** The most it carries over the judged joints and pulls; null where nothing could be solved. */
  loadN: number | null
  /** When it carries that much; null with the load. */
  when: SupportLoad['when'] | null
}

/** Plain JSON: survives a message from the worker. */
export interface RunQuantities {
  /** By support key (the two beams of a rack each have one). */
  supports: Readonly<Record<string, SupportFigures>>
}

/** The figures of the site's supports; they were solved for the checks already. */
export function quantitiesOf(mechanics: Mechanics, limits: Limits): RunQuantities {
  const mostM = limitParam(limits.limit('set-out-tolerance'), 'mostM')
  const isSolved = mechanics.solvedJoints().length > 0
  const tolerances = new Map(mechanics.tolerances().map(({ view, toleranceM }) => [view.key, toleranceM]))
  const loads = mechanics.loads()
  const of = ({ key, levelM }: SupportView): SupportFigures => {
    const load = loads.get(key)
    // Beyond the reach of the jaws no error up to the most counts.
    return { toleranceM: isSolved && levelM !== null ? (tolerances.get(key) ?? mostM) : null, loadN: load?.loadN ?? null, when: load?.when ?? null }
  }
  return { supports: Object.fromEntries(mechanics.site.supports.map((view) => [view.key, of(view)])) }
}
