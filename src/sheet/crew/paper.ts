/** Papers a crew sheet is printed on, and what of a page is used. Points of 1/72 in. */
export const POINTS_PER_M = 72 / 0.0254

export type PaperName = 'letter' | 'tabloid' | 'a4' | 'a3'
export type Orientation = 'landscape' | 'portrait'

/** Short and long side. Letter and Tabloid: ANSI/ASME Y14.1 A and B; A4 and A3: ISO 216. */
export const papers: Readonly<Record<PaperName, { name: string; shortM: number; longM: number }>> = {
  letter: { name: 'Letter', shortM: 8.5 * 0.0254, longM: 11 * 0.0254 },
  tabloid: { name: 'Tabloid', shortM: 11 * 0.0254, longM: 17 * 0.0254 },
  a4: { name: 'A4', shortM: 0.21, longM: 0.297 },
  a3: { name: 'A3', shortM: 0.297, longM: 0.42 },
}
export const paperNames = Object.keys(papers) as readonly PaperName[]

/** What office printers leave white, and a little more. */
const MARGIN_PT = 29

/** Frame of a page: where blocks stand, above the foot line and below the head line. */
export interface PageFrame {
  widthPt: number
  heightPt: number
  x0: number
  x1: number
  /** Under the slim head of pages after the first. */
  topPt: number
  bottomPt: number
  marginPt: number
}

const HEAD_PT = 22
const FOOT_LINE_PT = 13

/** `footLines`: lines of the foot, at least one. */
export const frameOf = (paper: PaperName, orientation: Orientation, footLines = 2): PageFrame => {
  const { shortM, longM } = papers[paper]
  const [widthM, heightM] = orientation === 'portrait' ? [shortM, longM] : [longM, shortM]
  const [widthPt, heightPt] = [widthM * POINTS_PER_M, heightM * POINTS_PER_M]
  return { widthPt, heightPt, x0: MARGIN_PT, x1: widthPt - MARGIN_PT, topPt: MARGIN_PT + HEAD_PT, bottomPt: heightPt - MARGIN_PT - 6 - footLines * FOOT_LINE_PT, marginPt: MARGIN_PT }
}
