import type { CheckRun } from '../../checks/finding.ts'
import type { SiteModel } from '../../derive/types.ts'
import { recordsOf } from '../../scene/document.ts'

/** One height to measure: a support, a beam of a rack, or the pipe in the jaws. Levels are bottom of pipe above the ground there, m. */
export interface HeightRow {
  key: string
  itemId: string
  /** Null: the jaws, which have no label of their own. */
  label: string | null
  runningM: number
  /** Argument of the command that takes it. */
  path: 'saddleM' | 'farSaddleM'
  plannedM: number | null
  measuredM: number | null
  toleranceM: number | null
}

/** Heights to measure from the rear of the infeed down the line; tolerances come with the findings. */
export function heightRows(site: SiteModel, run: CheckRun | null): HeightRow[] {
  const figures = run?.quantities?.supports ?? {}
  const rows: HeightRow[] = site.supports.map((support) => ({
    key: support.key, itemId: support.itemId, label: support.label, runningM: support.runningM, path: support.key.endsWith('#2') ? 'farSaddleM' : 'saddleM',
    plannedM: support.plannedSaddleM, measuredM: support.measuredSaddleM, toleranceM: figures[support.key]?.toleranceM ?? null,
  }))
  const { machineId } = site.jaws
  if (machineId === null) return rows
  const tolerances = rows.flatMap(({ toleranceM }) => (toleranceM === null ? [] : [toleranceM]))
  const measuredM = recordsOf(site.document, 'asSet').find(({ itemId }) => itemId === machineId)?.saddleM ?? null
  const jaws: HeightRow = { key: machineId, itemId: machineId, label: null, runningM: 0, path: 'saddleM', plannedM: site.plannedJawM, measuredM, toleranceM: tolerances.length === 0 ? null : Math.min(...tolerances) }
  return [...rows, jaws].sort((a, b) => a.runningM - b.runningM)
}

/** A tape is read to 1/16 in at best: half of that is no difference. */
const READING_M = 0.0008

export type Standing = 'open' | 'ok' | 'off' | 'unknown'

/** How a height stands: not measured, within its tolerance, off, or not to be judged. */
export const standingOf = ({ plannedM, measuredM, toleranceM }: HeightRow): Standing =>
  measuredM === null ? 'open' : plannedM === null || toleranceM === null ? 'unknown' : Math.abs(measuredM - plannedM) <= toleranceM + READING_M ? 'ok' : 'off'
