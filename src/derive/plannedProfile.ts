import { profileAt } from './profile.ts'
import { deriveSite } from './site.ts'
import type { SectionProfile, SiteModel, Stage } from './types.ts'

/** The pipe over the planned heights, beside the one over the heights as set; null where the plan itself is shown. */
export const plannedProfile = (site: SiteModel, stage: Stage): SectionProfile | null =>
  site.case.variant === 'asSet' ? profileAt(deriveSite(site.document, { ...site.case, variant: 'planned' }), stage) : null
