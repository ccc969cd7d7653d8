/** Where the puller stands while the nose is on its way (docs/formulas/stages.md, 'rope out of line'). */
import { add, rotate, subtract } from '../../geometry/vector.ts'
import type { PlacedItem, SiteModel, Stage } from '../types.ts'
import { pullerOf } from './puller.ts'

/**
 * The first puller as it stands with the nose at `noseM`: what drives goes ahead by the length of its rope along the run,
 * turned against it as drawn. Null where it stays as drawn: no puller, a winch, no rope length, a phase without a pull, no nose.
 */
export function pullerAhead(site: SiteModel, { phase }: Stage, noseM: number | null): PlacedItem | null {
  if (noseM === null || (phase !== 'pull' && phase !== 'move')) return null
  const item = pullerOf(site)?.item
  const ropeM = item?.record.figures.ropeLengthM.value ?? null
  if (item === undefined || ropeM === null || item.record.pullerKind === 'winch' || item.runningM === null) return null
  const { xM, yM, ...way } = site.atRunning(noseM + ropeM)
  const headingRad = way.headingRad + item.turnRad
  const outlineM: number[] = []
  for (let i = 0; i + 1 < item.outlineM.length; i += 2) {
    const corner = add({ xM, yM }, rotate(subtract({ xM: item.outlineM[i]!, yM: item.outlineM[i + 1]! }, item), headingRad - item.headingRad))
    outlineM.push(corner.xM, corner.yM)
  }
  return { ...item, xM, yM, headingRad, outlineM, runningM: noseM + ropeM, offsetM: 0 }
}
