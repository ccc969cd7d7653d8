import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { atLeastSixPx, centredBox, detailLine, odOf, part, solid } from './basic.ts'

const ALONG_M = 0.3
/** Room between pipe and stake. */
const PLAY_M = 0.05
const LEAST_HALF_PX = 4
const widthOf = (context: SymbolContext): number => odOf(context) + 2 * (PLAY_M + ALONG_M)

export const guideFootprint = (_r: unknown, context: SymbolContext): number[] => centredBox(ALONG_M, widthOf(context))

/** From above: a stake to either side of the pipe, each with the brace that takes its push. */
export const guidePlan = (_r: unknown, context: SymbolContext): Primitive[] => {
  const half = Math.max(widthOf(context) / 2, LEAST_HALF_PX / context.pxPerM)
  const stakeM = Math.min(ALONG_M * atLeastSixPx(ALONG_M, context.pxPerM), half * 0.8)
  return [1, -1].flatMap((sign): Primitive[] => {
    const yM = sign * (half - stakeM / 2)
    return [
      { t: 'rect', xM: -stakeM / 2, yM: yM - stakeM / 2, widthM: stakeM, heightM: stakeM, ...part },
      { t: 'path', points: [-stakeM / 2, sign * half, stakeM / 2, sign * half], ...detailLine },
      { t: 'circle', xM: 0, yM, radiusM: stakeM * 0.28, ...solid },
    ]
  })
}
