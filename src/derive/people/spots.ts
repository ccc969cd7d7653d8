/** Crew spots as they stand, and the stage a phase is judged at for them. */
import type { Phase } from '../../scene/parts.ts'
import { itemsOf, type ItemOf } from '../itemsOf.ts'
import type { SiteModel, Stage } from '../types.ts'

export type Spot = ItemOf<'crew'>

export const spotsOf = (site: SiteModel): readonly Spot[] => itemsOf(site, 'crew')

/** The last joint: the string is at its longest and the nose at its farthest. */
export const lastStage = (site: SiteModel, phase: Phase): Stage => ({ phase, joint: Math.max(1, site.sticks.stickCount - 1) })
