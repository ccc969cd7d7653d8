/** More room for a bend of a cold or hot wall, a house rule beside the published table. */
import type { SiteModel } from '../derive/types.ts'
import { limitParam } from '../engine/limits.ts'
import type { Limits } from './limits.ts'

/**
 * Times the table's radius that a cold wall, a hot one, or a hot thin one should have; null where the wall is in between or nobody
 * has measured it. Cold and hot by the figures of the limit; thin from the DR it names.
 */
export function bendMarginOf(site: SiteModel, limits: Limits): { timesRatio: number; isHot: boolean; isThin: boolean } | null {
  const limit = limits.limit('bend-radius')
  const { wallTemperatureC, temperatureAssumed, properties } = site.pipe
  const isHot = wallTemperatureC > limitParam(limit, 'hotAboveC')
  if (temperatureAssumed || (!isHot && !(wallTemperatureC < limitParam(limit, 'coldBelowC')))) return null
  const isThin = isHot && properties !== null && properties.dr >= limitParam(limit, 'thinFromDr')
  return { timesRatio: limitParam(limit, isThin ? 'thinMargin' : 'warnMargin'), isHot, isThin }
}
