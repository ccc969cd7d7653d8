/**
 * Where the tag of a chosen item hangs: on free paper below the axis, then above it, then in the margin.
 * Frame: px of the plan band, x right, y down. Never over its own item, a RED zone or the tape; other gear is covered only
 * where there is no free place at all.
 */
export interface Box {
  xPx: number
  yPx: number
  widthPx: number
  heightPx: number
}

export interface TagRequest {
  band: { widthPx: number; heightPx: number }
  tag: { widthPx: number; heightPx: number }
  item: Box
  /** Where the axis runs on screen, y at the item; null when it is off the band. */
  axisYPx: number | null
  /** Never covered: RED zones, the tape. */
  forbidden: readonly Box[]
  /** Better not covered: other gear, words. */
  gear: readonly Box[]
  /** Free width beyond the band where the tag may go when the paper is full (the margin). */
  marginWidthPx: number
}

export interface TagPlace {
  xPx: number
  yPx: number
  where: 'below' | 'above' | 'margin'
  /** Share of other gear the tag covers, px². */
  coveredPx2: number
}

const GAP_PX = 16
const EDGE_PX = 8

export const overlapPx2 = (a: Box, b: Box): number => {
  const w = Math.min(a.xPx + a.widthPx, b.xPx + b.widthPx) - Math.max(a.xPx, b.xPx)
  const h = Math.min(a.yPx + a.heightPx, b.yPx + b.heightPx) - Math.max(a.yPx, b.yPx)
  return w > 0 && h > 0 ? w * h : 0
}

/** Columns tried for the tag: beginning at the item, ending at it, centred, then stepping away both ways. */
const columns = (request: TagRequest): number[] => {
  const { item, tag, band } = request
  const start = item.xPx + item.widthPx / 2
  const wanted = [start + GAP_PX, start - tag.widthPx / 2, start - tag.widthPx - GAP_PX, item.xPx + item.widthPx + GAP_PX, item.xPx - tag.widthPx - GAP_PX]
  for (let stepPx = 60; stepPx <= 360; stepPx += 60) wanted.push(start + GAP_PX + stepPx, start - tag.widthPx - GAP_PX - stepPx)
  const last = band.widthPx - tag.widthPx - EDGE_PX
  return [...new Set(wanted.map((x) => Math.round(Math.min(last, Math.max(EDGE_PX, x)))))]
}

const ROW_STEP_PX = 24

const rows = (request: TagRequest): number[] => {
  const { item, tag, band, axisYPx } = request
  const last = band.heightPx - EDGE_PX - tag.heightPx
  const below = Math.max(item.yPx + item.heightPx, axisYPx ?? 0) + GAP_PX
  const above = Math.min(item.yPx, axisYPx ?? band.heightPx) - GAP_PX - tag.heightPx
  const found = [below, above, last, EDGE_PX]
  for (let yPx = EDGE_PX; yPx <= last; yPx += ROW_STEP_PX) found.push(yPx)
  return [...new Set(found)].filter((yPx) => yPx >= EDGE_PX && yPx <= last)
}

/** What a place costs, px: how far it is off, what it covers; above counts less than below, across the axis is the last resort. */
const ABOVE_COST_PX = 120
const ACROSS_AXIS_COST_PX = 500
const COVER_COST = 4

/** Deterministic: the same request gives the same place. Cost: rows × columns × boxes, a few thousand overlaps. */
export const placeTag = (request: TagRequest): TagPlace => {
  const { band, tag, item, axisYPx, forbidden, gear, marginWidthPx } = request
  const middleYPx = axisYPx ?? item.yPx + item.heightPx / 2
  let best: TagPlace | null = null
  let bestCost = Infinity
  for (const yPx of rows(request)) {
    for (const xPx of columns(request)) {
      const box: Box = { xPx, yPx, widthPx: tag.widthPx, heightPx: tag.heightPx }
      if (overlapPx2(box, item) > 0 || forbidden.some((zone) => overlapPx2(box, zone) > 0)) continue
      const coveredPx2 = gear.reduce((sum, other) => sum + overlapPx2(box, other), 0)
      const awayPx = Math.hypot(xPx + tag.widthPx / 2 - item.xPx - item.widthPx / 2, yPx + tag.heightPx / 2 - item.yPx - item.heightPx / 2)
      const isAcross = axisYPx !== null && yPx < axisYPx && yPx + tag.heightPx > axisYPx
      const where = yPx + tag.heightPx / 2 < middleYPx ? 'above' : 'below'
      const cost = awayPx + COVER_COST * coveredPx2 ** 0.5 + (where === 'above' ? ABOVE_COST_PX : 0) + (isAcross ? ACROSS_AXIS_COST_PX : 0)
      if (cost < bestCost) [best, bestCost] = [{ xPx, yPx, where, coveredPx2 }, cost]
    }
  }
  if (best !== null) return best
  // No room beside the item. The margin, where there is one; else the corner farthest from the item.
  if (marginWidthPx >= tag.widthPx) return { xPx: band.widthPx + EDGE_PX, yPx: Math.max(EDGE_PX, Math.min(item.yPx, band.heightPx - tag.heightPx - EDGE_PX)), where: 'margin', coveredPx2: 0 }
  const right = item.xPx + item.widthPx / 2 < band.widthPx / 2
  const low = item.yPx + item.heightPx / 2 < band.heightPx / 2
  return {
    xPx: right ? Math.max(0, band.widthPx - tag.widthPx - EDGE_PX) : EDGE_PX,
    yPx: low ? Math.max(0, band.heightPx - tag.heightPx - EDGE_PX) : EDGE_PX,
    where: low ? 'below' : 'above',
    coveredPx2: 0,
  }
}

/** The string from the item's edge to the hole of the tag, as an SVG path: a slack curve, never a straight line. */
export const stringPath = (item: Box, holePx: { xPx: number; yPx: number }): string => {
  const below = holePx.yPx >= item.yPx + item.heightPx / 2
  const [x0, y0] = [item.xPx + item.widthPx / 2, below ? item.yPx + item.heightPx : item.yPx]
  const sagPx = Math.min(40, Math.abs(holePx.yPx - y0) * 0.6 + 8) * (below ? 1 : -1)
  return `M${round(x0)} ${round(y0)}C${round(x0)} ${round(y0 + sagPx)} ${round(holePx.xPx - 12)} ${round(holePx.yPx - sagPx * 0.4)} ${round(holePx.xPx)} ${round(holePx.yPx)}`
}

const round = (value: number): number => Math.round(value * 10) / 10
