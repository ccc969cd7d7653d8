import type { CheckRun, Finding } from '../../checks/finding.ts'
import type { ArrivalFigure } from '../../derive/sectionRail.ts'
import type { SiteModel, SupportView } from '../../derive/types.ts'

/** Check that judges how a free nose comes to a support; of a row with one verdict it names the worst. */
export const ARRIVAL_CHECK_ID = 'nose-landing'

/**
 * How the nose arrives at each support, by support key, as the checks found it; null where they have said nothing of it
 * (a nose that is slung or lifted comes to no support freely).
 * Supports nearer than the end of the first stick are 'set': no nose arrives there.
 */
export const arrivalsOf = (run: CheckRun | null, site: SiteModel): ReadonlyMap<string, ArrivalFigure> | null => {
  const findings = (run?.findings ?? []).filter(({ checkId, isUnknown, measured }) => checkId === ARRIVAL_CHECK_ID && !isUnknown && measured?.kind === 'shortLength')
  if (findings.length === 0) return null
  const figures = new Map<string, ArrivalFigure>()
  for (const support of site.supports) {
    const finding = findings.find((f) => isAbout(f, support))
    if (finding !== undefined && finding.measured?.kind === 'shortLength') {
      figures.set(support.key, { aboveM: finding.measured.value === null ? null : -finding.measured.value, onGround: false, isBad: finding.level === 'FIX' || finding.level === 'STOP' })
    } else if (support.side === 'exit' && support.runningM < site.sticks.stringLengthM(1)) figures.set(support.key, { aboveM: null, onGround: false, isBad: false })
  }
  return figures
}

const isAbout = ({ itemIds, where }: Finding, support: SupportView): boolean => itemIds.includes(support.itemId) && (where?.at !== 'run' || Math.abs(where.runningM - support.runningM) < 0.05)
