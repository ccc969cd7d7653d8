/** The pull of each stage with low and with likely friction, beside the high one the plan counts with. */
import { deriveSite } from '../site.ts'
import { positionOf, waysOf } from '../stringPull.ts'
import type { SiteModel } from '../types.ts'
import { stagesOf } from './stagesOf.ts'

/** Moving pull at both ends of a stage's way, N. */
export interface PullBandStage {
  id: string
  low: { fromN: number; toN: number }
  likely: { fromN: number; toN: number }
}

const bands = new WeakMap<SiteModel, readonly PullBandStage[] | null>()

/**
 * Band of the pull by the friction table, stage by stage; worked out once a site.
 *
 * Model:  the same way with the low and the likely column of the table; weight, slope and what lies on the ground as planned.
 * Output: null where no pull can be worked out, or where a what-if has settled the friction already.
 * Cost:   two solves of the finished string and the sums along the way.
 */
export function pullBandOf(site: SiteModel): readonly PullBandStage[] | null {
  let band = bands.get(site)
  if (band === undefined) bands.set(site, (band = build(site)))
  return band
}

function build(site: SiteModel): readonly PullBandStage[] | null {
  const isKnown = site.pipe.properties !== null && site.sticks.stickLengthM !== null && site.setUp !== null && site.run !== null
  if (!isKnown || site.case.whatIf?.friction !== undefined) return null
  const [low, likely] = (['low', 'likely'] as const).map((friction) => deriveSite(site.document, { ...site.case, whatIf: { ...site.case.whatIf, friction } }))
  return stagesOf(site).flatMap((stage) => {
    if (stage.phase !== 'pull' || stage.noseM === null) return []
    const { from, to } = stage.noseM
    const lengthM = site.sticks.stringLengthM(stage.sticks)
    const ends = (of: SiteModel): { fromN: number; toN: number } => {
      const at = (noseM: number): number => positionOf(of, waysOf(of), noseM - lengthM, noseM).pullN
      return { fromN: at(from), toN: at(to) }
    }
    return [{ id: stage.id, low: ends(low!), likely: ends(likely!) }]
  })
}

/** The moving pull with the nose at a place of a pull, with the plan's high friction, N; null where it cannot be worked out. */
export function pullAtNoseN(site: SiteModel, sticks: number, noseM: number): number | null {
  if (site.pipe.properties === null || site.sticks.stickLengthM === null || site.setUp === null || site.run === null) return null
  return positionOf(site, waysOf(site), noseM - site.sticks.stringLengthM(sticks), noseM).pullN
}
