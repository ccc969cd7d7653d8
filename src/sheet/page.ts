/**
 * The page of the shared image: Letter landscape, 11 × 8.5 in, at 144 px an inch. All boxes are px of the page at 1×, x right,
 * y DOWN; for 2× and 4× the caller scales its context before drawing.
 */
import type { BoxPx } from '../drawing/paint.ts'

export const PX_PER_IN = 144
export const pagePx = { widthPx: 11 * PX_PER_IN, heightPx: 8.5 * PX_PER_IN } as const

/** 7 pt at Letter width: 7/72 in × 144 px/in. Nothing on the page is lettered smaller, digits of fractions included. */
export const LEAST_LETTERING_PX = (7 / 72) * PX_PER_IN

/**
 * Enlargement at which the bands of the screen are drawn on the page. The smallest lettering they carry (the letter of a crew
 * spot, 11 px) passes 7 pt at it: 11 × 1.28 = 14.08 px.
 */
export const SCREEN_ENLARGEMENT = 1.28

/** Quarter of an inch: what office printers leave white. */
const MARGIN_PX = 0.25 * PX_PER_IN

export type ImageBoxName = 'heading' | 'plan' | 'tape' | 'sideHeading' | 'section' | 'dimensions' | 'findings' | 'legend' | 'titleBlock' | 'foot'

const row = (y0: number, y1: number, x0 = MARGIN_PX, x1 = pagePx.widthPx - MARGIN_PX): BoxPx => ({ x0, y0, x1, y1 })

/**
 * Where everything stands. Plan, tape and side view have one width and one scale, so that a stand, its flag and its saddle
 * stand in one vertical line. The painters given by the app draw in `plan`, `tape` and `section`.
 */
export const imageBoxes: Readonly<Record<ImageBoxName, BoxPx>> = {
  heading: row(36, 72),
  plan: row(72, 342),
  tape: row(342, 474),
  sideHeading: row(474, 498),
  section: row(498, 664),
  dimensions: row(676, 1154, MARGIN_PX, 736),
  findings: row(676, 1154, 752, 1196),
  legend: row(676, 902, 1212),
  titleBlock: row(912, 1154, 1212),
  foot: row(1162, 1188),
}

export const widthOf = (box: BoxPx): number => box.x1 - box.x0
export const heightOf = (box: BoxPx): number => box.y1 - box.y0
