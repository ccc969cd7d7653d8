import type { CheckRun } from '../../checks/finding.ts'
import type { PlacedItem, SiteModel } from '../../derive/types.ts'
import type { Localized } from '../../messages/localized.ts'
import { tapeModeWords } from '../../messages/ui/tapeModeWords.ts'
import { recordsOf } from '../../scene/document.ts'
import { kindOf } from '../../scene/kinds/index.ts'
import type { UnitSystem } from '../../units/format.ts'
import { heightRows, type HeightRow } from '../asSet/measured.ts'

/** One thing to set by the tape. Distances from the datum, m: running exit +, infeed −; offset right + looking down-string. */
export interface Mark {
  key: string
  itemId: string
  /** '' for kinds without. */
  label: string
  name: Localized
  runningM: number
  offsetM: number
  /** What the pipe lies in or on: its height is measured. */
  height: HeightRow | null
  /** Top of a flat roller above the ground; null for what has none, or a roller whose top is not where the pipe lies. */
  rollerTopM: number | null
  /** Argument of the command that ticks it. */
  tick: 'isTicked' | 'isFarTicked'
  isTicked: boolean
}

/**
 * Everything along the line that is set by the tape: supports (a rack's beams one by one), the jaws, and gear for the
 * line and for lifting and pulling; no people and no ground. From the datum outwards: what stands at it, then the infeed
 * from the nail to its end, then the exit, so that one walks each side once.
 * `run`: findings of the plan, for the tolerances; null: not known yet.
 */
export function marksOf(site: SiteModel, run: CheckRun | null, system: UnitSystem): readonly Mark[] {
  const heights = new Map(heightRows(site, run, system).map((row) => [row.key, row]))
  const ticked = new Map(recordsOf(site.document, 'asSet').map((record) => [record.itemId, record]))
  const supports = site.supports.map((support): Mark => {
    const tick = support.key.endsWith('#2') ? 'isFarTicked' : 'isTicked'
    return {
      key: support.key, itemId: support.itemId, label: support.label, name: kindOf(support.kind)?.name ?? { en: '', es: '' }, runningM: support.runningM, offsetM: support.offsetM,
      height: heights.get(support.key) ?? null, rollerTopM: support.roller === 'flat' ? support.plannedSaddleM : null, tick, isTicked: ticked.get(support.itemId)?.[tick] ?? false,
    }
  })
  const supportIds = new Set(site.supports.map(({ itemId }) => itemId))
  const isAlong = (item: PlacedItem): item is PlacedItem & { runningM: number } => item.runningM !== null && !supportIds.has(item.id) && 'place' in item.record && ['line', 'lift'].includes(kindOf(item.kind)?.gear ?? '')
  const others = [...site.placed.values()].filter(isAlong).map((item): Mark => ({
    key: item.id, itemId: item.id, label: item.label, name: item.id === site.jaws.machineId ? tapeModeWords.jaws : kindOf(item.kind)?.name ?? { en: '', es: '' }, runningM: item.runningM, offsetM: item.offsetM ?? 0,
    height: heights.get(item.id) ?? null, rollerTopM: null, tick: 'isTicked', isTicked: ticked.get(item.id)?.isTicked ?? false,
  }))
  return [...supports, ...others].toSorted((a, b) => sideOf(a) - sideOf(b) || Math.abs(a.runningM) - Math.abs(b.runningM) || a.offsetM - b.offsetM)
}

/** Nearer than a tape is read: at the nail itself. */
const AT_DATUM_M = 0.001

const sideOf = ({ runningM }: Mark): number => (Math.abs(runningM) < AT_DATUM_M ? 0 : runningM < 0 ? 1 : 2)

/** Where to begin: at the first mark that is not ticked; all ticked, at the end (`marks.length`). */
export const firstOpen = (marks: readonly Mark[]): number => {
  const at = marks.findIndex(({ isTicked }) => !isTicked)
  return at < 0 ? marks.length : at
}
