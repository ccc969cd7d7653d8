import type { CriticalSupport } from '../derive/critical.ts'
import type { SiteModel } from '../derive/types.ts'
import type { Primitive } from '../drawing/primitives.ts'
import { rankShape } from '../drawing/rankShape.ts'
import type { App } from '../state/app.ts'
import { isOldRanking } from '../state/critical.ts'

/** A ranked support where it stands now; pale while the ranking belongs to an older layout. */
export interface RankMark {
  rank: number
  itemId: string
  runningM: number
  offsetM: number
  groundLevelM: number
  level: CriticalSupport['level']
  isOld: boolean
}

/** Marks of the ranking while it is wanted: of supports that are still there, the worst first. */
export const rankMarksOf = (app: App, state = app.critical.store.getState()): readonly RankMark[] => {
  if (!state.isOn || state.ranking === null) return []
  const { site, stamp } = app.site.getState()
  return rankMarks(state.ranking.supports, site, isOldRanking(state, stamp))
}

export const rankMarks = (supports: readonly CriticalSupport[], site: SiteModel, isOld: boolean): RankMark[] =>
  supports.flatMap(({ key, rank, level }) => {
    const view = site.supports.find((support) => support.key === key)
    return rank === null || view === undefined ? [] : [{ rank, level, isOld, itemId: view.itemId, runningM: view.runningM, offsetM: view.offsetM, groundLevelM: view.groundLevelM }]
  })

export const RANK_PX = 21
/** In the side view the mark hangs this far under the foot of its support, px. */
const UNDER_PX = 15

/** Marks under the feet of the supports of the side view. px frame with y UP (matrix d = −1). */
export const rankParts = (marks: readonly RankMark[], map: { alongPx: (runningM: number) => number; levelPx: (levelM: number) => number; mostPx: number }): Primitive[] =>
  marks.map(({ rank, level, isOld, runningM, groundLevelM }) => {
    const yPx = Math.min(map.levelPx(groundLevelM) + UNDER_PX, map.mostPx - RANK_PX / 2)
    return { t: 'mark', xM: map.alongPx(runningM), yM: -yPx, parts: rankShape(rank, level, RANK_PX, isOld) }
  })
