/** The scale at which a whole yard fits a box along the tape. */
import type { SiteModel } from '../derive/types.ts'
import type { BoxPx } from '../drawing/paint.ts'

export interface PlanFit {
  pxPerM: number
  /** Running distance at the left edge of the box (at its right edge where the sheet is turned round). */
  leftRunningM: number
  /** Offset from the axis shown at mid height, right positive looking down-string. */
  midOffsetM: number
}

/** Kept free on each side, as a share of the box. */
const MARGIN_RATIO = 0.04
/** Room shown where next to nothing stands yet. */
const LEAST_ALONG_M = 30
const LEAST_ACROSS_M = 6
/** Bends of the string are followed in steps no longer than this share of it. */
const STRING_STEPS = 64

/**
 * Fits all outlines and points of features, supports, levels, and the string at its longest with the stick before it.
 *
 * Frame: along the straight axis through the datum and across it, as the plan along the tape is drawn. The tape unrolls bends,
 * so running distances are kept in view too. Without a set-up the site frame itself is taken, x along.
 * Output: px of the page. Never throws; an empty document gives 30 m about the datum.
 */
export const fitPlan = (site: SiteModel, box: BoxPx): PlanFit => {
  const datum = site.setUp?.datum ?? { xM: 0, yM: 0 }
  const headingRad = site.setUp?.headingRad ?? 0
  const [cos, sin] = [Math.cos(headingRad), Math.sin(headingRad)]
  const bounds = { fromM: Infinity, toM: -Infinity, leftM: Infinity, rightM: -Infinity }
  const along = (atM: number): void => {
    bounds.fromM = Math.min(bounds.fromM, atM)
    bounds.toM = Math.max(bounds.toM, atM)
  }
  const point = (xM: number, yM: number): void => {
    const [dx, dy] = [xM - datum.xM, yM - datum.yM]
    const acrossM = dx * sin - dy * cos
    along(dx * cos + dy * sin)
    bounds.leftM = Math.min(bounds.leftM, acrossM)
    bounds.rightM = Math.max(bounds.rightM, acrossM)
  }
  for (const { xM, yM, outlineM, record } of site.placed.values()) {
    // A feature has no place of its own: its points are its outline.
    if (outlineM.length === 0 || 'place' in record) point(xM, yM)
    for (let i = 0; i + 1 < outlineM.length; i += 2) point(outlineM[i]!, outlineM[i + 1]!)
  }
  if (site.setUp !== null) {
    const tailM = site.sticks.stickLengthM ?? 0
    const tipM = site.sticks.stringLengthM(site.sticks.stickCount)
    for (let i = 0; i <= STRING_STEPS; i++) {
      const { xM, yM } = site.atRunning(-tailM + ((tipM + tailM) * i) / STRING_STEPS)
      point(xM, yM)
    }
    along(tipM)
    for (const { runningM } of site.supports) along(runningM)
  }
  if (bounds.fromM > bounds.toM) point(datum.xM, datum.yM)

  const lengthM = Math.max(LEAST_ALONG_M, bounds.toM - bounds.fromM)
  const widthM = Math.max(LEAST_ACROSS_M, bounds.rightM - bounds.leftM)
  const [widthPx, heightPx] = [box.x1 - box.x0, box.y1 - box.y0]
  const share = 1 - 2 * MARGIN_RATIO
  const pxPerM = Math.min((widthPx * share) / lengthM, (heightPx * share) / widthM)
  return { pxPerM, leftRunningM: (bounds.fromM + bounds.toM) / 2 - widthPx / pxPerM / 2, midOffsetM: (bounds.leftM + bounds.rightM) / 2 }
}
