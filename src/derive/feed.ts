/** Where a stick lies when it has been set on the rack, before it is fed into the jaws. */
import type { SiteModel } from './types.ts'

/**
 * Running distance of the front end of the loaded stick: its middle over the middle of the rack, the front end never
 * past the joint plane. Without a rack the stick is set straight into the infeed jaws (0).
 */
export function feedStartM(site: SiteModel): number {
  const beams = site.supports.filter(({ kind, side }) => kind === 'rack' && side === 'infeed')
  const stickM = site.sticks.stickLengthM ?? 0
  if (beams.length === 0) return 0
  const middleM = beams.reduce((sum, { runningM }) => sum + runningM, 0) / beams.length
  return Math.min(0, middleM + stickM / 2)
}
