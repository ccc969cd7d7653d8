import type { CheckRun } from '../../checks/finding.ts'
import type { SectionProfile, SiteModel } from '../../derive/types.ts'
import { levelShape, type LevelName } from '../../drawing/levelShapes.ts'
import type { InkName, Primitive, WeightName } from '../../drawing/primitives.ts'
import { openFindings } from '../plan/findings.ts'

/** A finding's number standing in the side view: its place and where its mark stands over it, px of the band, y DOWN. */
export interface SectionMark {
  key: string
  level: LevelName
  number: number
  xPx: number
  yPx: number
  markXPx: number
  markYPx: number
}

/** Clear room a mark keeps to the next, px. */
const ROOM_PX = 27
const STEM_PX = 22
const SIZE_PX = 17

/**
 * Marks of the findings that have a place on the run, in reading order; each stands on a stem over its place, higher where
 * the place is taken, left out where there is no room. Stems are upright, so they never cross.
 */
export const sectionMarks = (run: CheckRun | null, site: SiteModel, profile: SectionProfile, map: { alongPx: (runningM: number) => number; levelPx: (levelM: number) => number; widthPx: number; topPx: number }): SectionMark[] => {
  const odM = site.pipe.odM ?? 0.3
  const marks: SectionMark[] = []
  openFindings(run).forEach((finding, i) => {
    const { where, level, itemIds, key } = finding
    if (level === 'met') return
    const item = site.placed.get(itemIds[0] ?? '')
    const support = site.supports.find(({ itemId }) => itemId === itemIds[0])
    const runningM = where?.at === 'run' ? where.runningM : (support?.runningM ?? (item !== undefined && item.runningM !== null && Math.abs(item.offsetM ?? 0) < 1 ? item.runningM : null))
    if (runningM === null) return
    const body = profile.bodies.find(({ startM, endM }) => runningM >= startM && runningM <= endM)
    const pipeTopM = body === undefined ? null : body.result.at(runningM).levelM + odM
    const levelM = (where?.at === 'run' ? where.levelM : null) ?? pipeTopM ?? site.groundLevelAt(runningM)
    const xPx = map.alongPx(runningM)
    if (xPx < SIZE_PX || xPx > map.widthPx - SIZE_PX) return
    const yPx = map.levelPx(levelM)
    let markYPx = Math.min(yPx, map.levelPx(pipeTopM ?? levelM)) - STEM_PX
    while (marks.some((other) => Math.abs(other.markXPx - xPx) < ROOM_PX && Math.abs(other.markYPx - markYPx) < ROOM_PX)) markYPx -= ROOM_PX
    // A stem through another mark would be read as its own.
    const crosses = marks.some((other) => Math.abs(other.markXPx - xPx) < SIZE_PX / 2 && other.markYPx > markYPx && other.markYPx < yPx && Math.abs(other.xPx - xPx) > 1)
    if (markYPx < map.topPx || crosses) return
    marks.push({ key, level, number: i + 1, xPx, yPx, markXPx: xPx, markYPx })
  })
  return marks
}

/** Marks as a drawing list, px frame with y UP (matrix d = −1). Pale while they belong to an older document. */
export const markParts = (marks: readonly SectionMark[], isStale: boolean): Primitive[] => {
  const stem = ({ xPx, yPx, markXPx, markYPx }: SectionMark, stroke: InkName, weight: WeightName): Primitive => ({ t: 'path', points: [xPx, -yPx, markXPx, -markYPx], stroke, weight })
  // All stems first: one that passes behind another mark of the same place is not read as that one's.
  return [
    ...marks.flatMap((mark) => [stem(mark, 'paper', 'pipe'), stem(mark, isStale ? 'hair' : 'ink', 'context')]),
    ...marks.map(({ markXPx, markYPx, level, number }): Primitive =>
      isStale
        ? { t: 'circle', xM: markXPx, yM: -markYPx, radiusM: 6, stroke: 'ink2', weight: 'context', dash: 'tie' }
        : { t: 'mark', xM: markXPx, yM: -markYPx, parts: levelShape(level, SIZE_PX, String(number)) }),
  ]
}
