import type { CheckRun } from '../../checks/finding.ts'
import type { SiteModel } from '../../derive/types.ts'
import { recordsOf } from '../../scene/document.ts'
import { inchM } from '../../units/factors.ts'
import type { UnitSystem } from '../../units/format.ts'

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

/** Marks of a tape: 1/16 in, 1 mm. */
const MARK_M = { feetInches: inchM / 16, metric: 0.001 } as const

/** A tolerance as it is set by the tape: rounded down to its marks, never to nothing. */
export const byTheTapeM = (toleranceM: number | null, system: UnitSystem): number | null => (toleranceM === null ? null : Math.max(1, Math.floor(toleranceM / MARK_M[system] + 1e-6)) * MARK_M[system])

/** Heights to measure from the rear of the infeed down the line; tolerances come with the findings. */
export function heightRows(site: SiteModel, run: CheckRun | null, system: UnitSystem): HeightRow[] {
  const figures = run?.quantities?.supports ?? {}
  const rows: HeightRow[] = site.supports.map((support) => ({
    key: support.key, itemId: support.itemId, label: support.label, runningM: support.runningM, path: support.key.endsWith('#2') ? 'farSaddleM' : 'saddleM',
    plannedM: support.plannedSaddleM, measuredM: support.measuredSaddleM, toleranceM: byTheTapeM(figures[support.key]?.toleranceM ?? null, system),
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
