/** Crew spots as they stand, and the stage a phase is judged at for them. */
import type { CrewRecord } from '../../scene/kinds/crew.ts'
import type { Phase } from '../../scene/parts.ts'
import type { PlacedItem, SiteModel, Stage } from '../types.ts'

export interface Spot extends PlacedItem {
  record: CrewRecord
}

export const spotsOf = (site: SiteModel): Spot[] => [...site.placed.values()].filter((item): item is Spot => item.record.kind === 'crew')

/** The last joint: the string is at its longest and the nose at its farthest. */
export const lastStage = (site: SiteModel, phase: Phase): Stage => ({ phase, joint: Math.max(1, site.sticks.stickCount - 1) })
