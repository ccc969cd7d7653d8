/** The image the crew lead shares: plan, tape and side view as on the screen, and around them all a crew needs to set out. */
import type { BoxPx, Paint2D } from '../drawing/paint.ts'
import { paint } from '../drawing/paint.ts'
import { themes } from '../drawing/theme.ts'
import type { Primitive } from '../drawing/primitives.ts'
import { readerOf, type ImageContent, type Reader } from './content.ts'
import { dimensionsRegion } from './dimensions.ts'
import { findingsRegion } from './findings.ts'
import { footRegion, headingRegion, sideHeadingRegion } from './headings.ts'
import { legendRegion } from './legend.ts'
import { createLettering, type Lettering } from './lettering.ts'
import { imageBoxes, pagePx } from './page.ts'
import { fitPlan } from './planFit.ts'
import { frame, rule, type Region } from './region.ts'
import { titleBlockRegion } from './titleBlock.ts'

export type { ImageContent } from './content.ts'

const identity = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 }

/** Everything on the page but the three drawings, block by block, px of the page. Depends on nothing but its arguments. */
export const imageRegions = (content: ImageContent, lettering: Lettering): readonly Region[] => {
  const reader = readerOf(content)
  const { pxPerM } = fitPlan(content.site, imageBoxes.plan)
  return [
    headingRegion(content, pxPerM, reader, lettering),
    { name: 'plan', box: imageBoxes.plan, list: emptyWords(content, reader, lettering) },
    sideHeadingRegion(content, reader, lettering),
    dimensionsRegion(content, reader, lettering),
    findingsRegion(content, reader, lettering),
    legendRegion(content, reader, lettering),
    titleBlockRegion(content, reader, lettering),
    footRegion(content, reader, lettering),
  ]
}

const emptyWords = ({ site }: ImageContent, reader: Reader, lettering: Lettering): readonly Primitive[] => {
  if (site.placed.size > 0) return []
  const { plan } = imageBoxes
  return lettering.line(reader.say('planEmpty'), (plan.x0 + plan.x1) / 2, plan.y0 + 60, { sizePx: 17, ink: 'ink2', align: 'center' })
}

const frames = (): readonly Primitive[] => {
  const { plan, tape, section } = imageBoxes
  return [
    frame({ ...plan, y1: section.y1 }, { stroke: 'ink', weight: 'gear' }),
    rule([plan.x0, tape.y1, plan.x1, tape.y1]),
  ]
}

/** Runs a painter inside a box; neither its clip nor its pens outlive it, even where it fails. */
const inside = (context: Paint2D, { x0, y0, x1, y1 }: BoxPx, painter: () => void): void => {
  context.save()
  try {
    context.beginPath()
    context.moveTo(x0, y0)
    for (const [x, y] of [[x1, y0], [x1, y1], [x0, y1]] as const) context.lineTo(x, y)
    context.closePath()
    context.clip()
    painter()
  } finally {
    context.restore()
  }
}

/**
 * Draws the whole page, 1584 × 1224 px at 1×, onto a context of at least that size; scale the context first for 2× and 4×.
 * The face must have loaded. Leaves the context as it found it.
 *
 * Painters draw in px of the page inside `imageBoxes.plan`, `.tape`, `.section`, all three along the tape at the scale and place
 * of `fitPlan(site, imageBoxes.plan)`; lettering of theirs must not be under LEAST_LETTERING_PX.
 */
export const drawImagePage = (context: Paint2D, content: ImageContent): void => {
  const theme = content.theme ?? themes.day
  const options = { matrix: identity, theme }
  const { pxPerM } = fitPlan(content.site, imageBoxes.plan)
  context.save()
  try {
    context.globalAlpha = 1
    context.setLineDash([])
    paint(context, [{ t: 'rect', xM: 0, yM: 0, widthM: pagePx.widthPx, heightM: pagePx.heightPx, fill: 'sheet' }], options)
    inside(context, imageBoxes.plan, () => content.paintPlan(context, imageBoxes.plan, pxPerM))
    inside(context, imageBoxes.section, () => content.paintSection(context, imageBoxes.section))
    inside(context, imageBoxes.tape, () => content.paintTape(context, imageBoxes.tape))
    for (const region of imageRegions(content, createLettering(context))) inside(context, region.box, () => paint(context, region.list, options))
    paint(context, frames(), options)
  } finally {
    context.restore()
  }
}
