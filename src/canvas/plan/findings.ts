import { levelOrder, type CheckRun, type Finding } from '../../checks/finding.ts'
import type { SiteModel } from '../../derive/types.ts'
import type { LevelName } from '../../drawing/levelShapes.ts'

export interface MarkedFinding {
  key: string
  number: number
  level: LevelName
  xM: number
  yM: number
}

/** Open findings in reading order: STOP, FIX, CHECK, NOTE, each in the order of the checks; missing input and what is met are told apart. */
export const openFindings = (run: CheckRun | null): readonly Finding[] => {
  const open = (run?.findings ?? []).filter(({ level, isUnknown }) => level !== 'met' && !isUnknown)
  return levelOrder.flatMap((level) => open.filter((finding) => finding.level === level))
}

/** Open findings that have a place on the plan, with the number their margin note carries. */
export const markedFindings = (run: CheckRun | null, site: SiteModel): MarkedFinding[] =>
  openFindings(run).flatMap(({ key, level, where, itemIds }, at) => {
    const item = site.placed.get(itemIds[0] ?? '')
    const place = where === null ? item : where.at === 'site' ? where : site.setUp === null ? undefined : site.atRunning(where.runningM, where.offsetM)
    return place === undefined || level === 'met' ? [] : [{ key, number: at + 1, level, xM: place.xM, yM: place.yM }]
  })
