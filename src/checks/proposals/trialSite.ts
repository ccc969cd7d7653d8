/** The site with other supports on the line: solved without making a document of every trial. */
import { jawLineLevelM, typicalLeadInM } from '../../derive/supports.ts'
import type { SiteModel, SupportView } from '../../derive/types.ts'
import type { PlannedSupport } from './types.ts'

/** Saddle height of a planned support above the ground there; null while the jaw line is unknown. */
export function saddleOf(site: SiteModel, { height, runningM }: Pick<PlannedSupport, 'height' | 'runningM'>): number | null {
  if (height.rule === 'aboveGround') return height.saddleM
  const lineM = jawLineLevelM(site.jaws, runningM)
  return lineM === null ? null : lineM - (height.rule === 'belowAxis' ? height.dropM : 0) - site.groundLevelAt(runningM)
}

const viewOf = (site: SiteModel, planned: PlannedSupport, index: number): SupportView => {
  const { kind, runningM, sort } = planned
  const groundLevelM = site.groundLevelAt(runningM)
  const saddleM = saddleOf(site, planned)
  const lineM = jawLineLevelM(site.jaws, runningM)
  const id = `${kind}:trial${index}`
  return {
    key: id, itemId: id, label: '', kind, roller: 'flat', side: runningM < 0 ? 'infeed' : 'exit', runningM, offsetM: 0, turnRad: 0,
    levelM: saddleM === null ? null : groundLevelM + saddleM, groundLevelM, saddleM,
    plannedSaddleM: saddleM, measuredSaddleM: null, jawLineSaddleM: lineM === null ? null : lineM - groundLevelM,
    lowestSaddleM: kind === 'roller' ? null : sort.lowestSaddleM, highestSaddleM: kind === 'roller' ? null : sort.highestSaddleM,
    ratedLoadN: sort.ratedLoadN, leadInM: sort.leadInM ?? typicalLeadInM(site.pipe.odM), leadInIsTypical: sort.leadInM === null, rollerRadiusM: sort.rollerRadiusM,
    landingAid: 'none', groundGuessed: false, locked: false,
  }
}

/** Supports that stay whatever is proposed, and the planned ones. */
export const trialSite = (site: SiteModel, kept: readonly SupportView[], planned: readonly PlannedSupport[]): SiteModel => ({
  ...site,
  supports: [...kept, ...planned.map((one, i) => viewOf(site, one, i))].sort((a, b) => a.runningM - b.runningM || (a.key < b.key ? -1 : 1)),
})
