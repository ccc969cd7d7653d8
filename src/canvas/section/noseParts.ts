import type { SectionProfile, SiteModel } from '../../derive/types.ts'
import { guessedWidthPx } from '../../drawing/fractionText.ts'
import type { Primitive } from '../../drawing/primitives.ts'
import { renderText } from '../../messages/render.ts'
import { formatQuantity, type FormatOptions } from '../../units/format.ts'
import { sectionWords } from './words.ts'

interface NoseMap {
  alongPx: (runningM: number) => number
  levelPx: (levelM: number) => number
  widthPx: number
  touch: boolean
  /** The nose is slung or carried: what is drawn is how it would hang if nothing held it. */
  isHeld: boolean
}

/** The support ahead counts as the one the nose comes to within this, m. */
const NEAR_M = 8
/** Nobody sets a stand finer than this. */
const SLACK_M = 0.0005

/** Run-through, pull: how low the nose hangs against the top of the support it comes to. px frame, y UP. Nothing where none is near. */
export const noseParts = (site: SiteModel, profile: SectionProfile, reader: FormatOptions, { alongPx, levelPx, widthPx, touch, isHeld }: NoseMap): Primitive[] => {
  const { tipM, stage } = profile
  const body = profile.bodies.find(({ name }) => name === 'string')
  if (stage.phase !== 'pull' || tipM === null || body === undefined) return []
  const next = site.supports.find(({ runningM, levelM, side }) => side === 'exit' && levelM !== null && runningM > tipM - 0.05 && runningM < tipM + NEAR_M)
  if (next === undefined || next.levelM === null) return []
  const tipLevelM = body.result.ends.levelM[1]
  const lowM = next.levelM - tipLevelM
  if (lowM <= (next.leadInM ?? 0) + SLACK_M) return []
  const [xPx, topPx, tipPx] = [alongPx(next.runningM), levelPx(next.levelM), levelPx(tipLevelM)]
  const text = renderText(isHeld ? sectionWords.noseLowFree : sectionWords.noseLow, { low: formatQuantity({ kind: 'shortLength', value: lowM }, reader), label: next.label }, reader)
  const sizePx = touch ? 16 : 14
  const halfPx = (guessedWidthPx(text, sizePx) * 1.08) / 2
  const middlePx = Math.min(Math.max(xPx, halfPx + 8), widthPx - halfPx - 8)
  // Level of the roller's top, the drop to the tip beside it, and the words over both.
  return [
    { t: 'path', points: [xPx - 16, -topPx, xPx + 16, -topPx], stroke: 'red', weight: 'ticks' },
    { t: 'path', points: [xPx, -topPx, xPx, -tipPx], stroke: 'red', weight: 'ticks', dash: 'missing' },
    { t: 'path', points: [xPx - 5, -tipPx, xPx + 5, -tipPx], stroke: 'red', weight: 'ticks' },
    { t: 'text', xM: middlePx, yM: -topPx + (touch ? 52 : 44), text, sizePx, ink: 'red', bold: true, align: 'center', lotEdge: true },
  ]
}
