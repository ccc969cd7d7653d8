import type { Primitive } from '../../drawing/primitives.ts'
import { toPx, type Picture } from './picture.ts'
import type { Spot } from './paintNotes.ts'

const edgePx = 18
const most = 4

/** Site points worth an arrow while off the sheet: what is chosen, and, with nothing at all in view, the datum. */
const wanted = (picture: Picture, isEmpty: boolean): { text: string; xM: number; yM: number }[] => {
  const { view, site } = picture
  const chosen = view.selection.slice(0, most).flatMap((id) => {
    const item = site.placed.get(id)
    return item === undefined ? [] : [{ text: item.label, xM: item.xM, yM: item.yM }]
  })
  return isEmpty && site.setUp !== null ? [...chosen, { text: view.language === 'es' ? 'mordazas' : 'jaws', ...site.setUp.datum }] : chosen
}

/** Arrows at the edge towards what is off the sheet; a tap brings it in. Screen px. */
export const offScreenArrows = (picture: Picture, isEmpty: boolean): { shapes: Primitive[]; spots: Spot[] } => {
  const { band } = picture
  const shapes: Primitive[] = []
  const spots: Spot[] = []
  const [midX, midY] = [band.widthPx / 2, band.heightPx / 2]
  for (const { text, xM, yM } of wanted(picture, isEmpty)) {
    const { xPx, yPx } = toPx(picture, xM, yM)
    if (xPx >= 0 && yPx >= 0 && xPx <= band.widthPx && yPx <= band.heightPx) continue
    const [dx, dy] = [xPx - midX, yPx - midY]
    const share = Math.min(dx === 0 ? Infinity : (midX - edgePx) / Math.abs(dx), dy === 0 ? Infinity : (midY - edgePx) / Math.abs(dy))
    const at = { xPx: midX + dx * share, yPx: midY + dy * share }
    const far = Math.hypot(dx, dy)
    const [ux, uy] = [dx / far, dy / far]
    const point = (along: number, side: number): [number, number] => [at.xPx + ux * along - uy * side, at.yPx + uy * along + ux * side]
    shapes.push({ t: 'path', points: [...point(11, 0), ...point(-7, 8), ...point(-3, 0), ...point(-7, -8)], closed: true, fill: 'chosen', stroke: 'sheet', weight: 'ticks' })
    if (text !== '') shapes.push({ t: 'text', xM: at.xPx - ux * 22, yM: at.yPx - uy * 22 + 4, text, sizePx: 12.5, bold: true, align: 'center', ink: 'chosen', lotEdge: true })
    spots.push({ ...at, radiusPx: 16, effect: { do: 'show', xM, yM } })
  }
  return { shapes, spots }
}
