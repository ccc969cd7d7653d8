/** Words of the key plan kept clear of one another: each takes the first free place beside its thing, or none. */
import type { BoxPx } from '../../drawing/paint.ts'
import type { InkName, Primitive } from '../../drawing/primitives.ts'
import type { Lettering, TextLook } from '../lettering.ts'
import { faceText } from './face.ts'

interface Point {
  x: number
  y: number
}

export interface Labels {
  keepClear: (at: Point, halfPt: number) => void
  /** Beside a point, as far off as `awayPt`: above, below, right, left, then farther out on a stem. */
  beside: (text: string, at: Point, look: TextLook, awayPt: number) => void
  /** A number on a plate, at the middle of one of the outlines or at a corner of it. */
  numbered: (number: string, outlines: readonly (readonly Point[])[], ink: InkName) => void
  list: () => readonly Primitive[]
}

/** Longest word put on the plan; longer ones are in the table. */
const LONGEST = 40
const STEM_PT = 17
/** Longest leader of a number. */
const LEADER_PT = 170

export const createLabels = (bounds: BoxPx, lettering: Lettering): Labels => {
  const taken: BoxPx[] = []
  const list: Primitive[] = []
  const isFree = (box: BoxPx): boolean =>
    box.x0 >= bounds.x0 + 2 && box.y0 >= bounds.y0 + 2 && box.x1 <= bounds.x1 - 2 && box.y1 <= bounds.y1 - 2 && !taken.some((other) => other.x0 < box.x1 && other.x1 > box.x0 && other.y0 < box.y1 && other.y1 > box.y0)
  const isInside = ({ x, y }: Point): boolean => x > bounds.x0 && x < bounds.x1 && y > bounds.y0 && y < bounds.y1
  return {
    keepClear: ({ x, y }, halfPt) => taken.push({ x0: x - halfPt, y0: y - halfPt, x1: x + halfPt, y1: y + halfPt }),
    beside: (text, point, look, awayPt) => {
      const letters = [...faceText(text).trim()]
      const word = letters.length > LONGEST ? `${letters.slice(0, LONGEST - 1).join('')}…` : letters.join('')
      if (word === '' || !isInside(point)) return
      const [w, h] = [lettering.widthPx(word, look), look.sizePx]
      for (const outPt of [awayPt, awayPt + STEM_PT]) {
        for (const [x0, y0] of [[point.x - w / 2, point.y - outPt - h], [point.x - w / 2, point.y + outPt], [point.x + outPt, point.y - h / 2], [point.x - outPt - w, point.y - h / 2]] as const) {
          const box = { x0: x0 - 1, y0, x1: x0 + w + 1, y1: y0 + h }
          if (!isFree(box)) continue
          taken.push(box)
          if (outPt > awayPt) list.push({ t: 'path', points: [point.x, point.y + (y0 < point.y ? -3 : 3), Math.min(Math.max(point.x, x0), x0 + w), y0 < point.y ? y0 + h + 1 : y0 - 1], stroke: 'ink2', weight: 'hair' })
          list.push({ t: 'rect', xM: box.x0, yM: box.y0, widthM: box.x1 - box.x0, heightM: h, fill: 'sheet', fillOpacity: 0.8 }, ...lettering.line(word, x0, y0 + h * 0.82, look))
          return
        }
      }
    },
    numbered: (number, outlines, ink) => {
      const look: TextLook = { sizePx: 11, bold: true }
      const w = Math.max(13, lettering.widthPx(number, look) + 6)
      for (const outline of outlines) {
        const middle = outline.reduce((sum, { x, y }) => ({ x: sum.x + x / outline.length, y: sum.y + y / outline.length }), { x: 0, y: 0 })
        const clipped = outline.map(({ x, y }) => ({ x: Math.min(bounds.x1 - 9, Math.max(bounds.x0 + 9, x)), y: Math.min(bounds.y1 - 9, Math.max(bounds.y0 + 9, y)) }))
        const between = clipped.flatMap((p, i) => [p, { x: (p.x * 3 + middle.x) / 4, y: (p.y * 3 + middle.y) / 4 }, { x: (p.x + clipped[(i + 1) % clipped.length]!.x) / 2, y: (p.y + clipped[(i + 1) % clipped.length]!.y) / 2 }])
        for (const { x, y } of [middle, ...between]) {
          const box = { x0: x - w / 2, y0: y - 7, x1: x + w / 2, y1: y + 7 }
          if (!isFree(box)) continue
          taken.push(box)
          list.push({ t: 'rect', xM: box.x0, yM: box.y0, widthM: w, heightM: 14, radiusM: 3, fill: 'sheet', stroke: ink, weight: 'ticks' }, ...lettering.line(number, x, y + 4, { ...look, align: 'center' }))
          return
        }
      }
      // No room on any outline: round about, on a leader to a place inside.
      for (const outline of outlines) {
        const point = outline.map(({ x, y }) => ({ x: Math.min(bounds.x1 - 9, Math.max(bounds.x0 + 9, x)), y: Math.min(bounds.y1 - 9, Math.max(bounds.y0 + 9, y)) }))[0]
        if (point === undefined) continue
        for (let outPt = 20; outPt <= LEADER_PT; outPt += 11) for (let turn = 0; turn < 16; turn++) {
          const [x, y] = [point.x + outPt * Math.cos((turn * Math.PI) / 8), point.y + outPt * Math.sin((turn * Math.PI) / 8)]
          const box = { x0: x - w / 2, y0: y - 7, x1: x + w / 2, y1: y + 7 }
          if (!isFree(box)) continue
          taken.push(box)
          list.push({ t: 'path', points: [point.x, point.y, x, y], stroke: ink, weight: 'hair' }, { t: 'rect', xM: box.x0, yM: box.y0, widthM: w, heightM: 14, radiusM: 3, fill: 'sheet', stroke: ink, weight: 'ticks' }, ...lettering.line(number, x, y + 4, { ...look, align: 'center' }))
          return
        }
      }
    },
    list: () => list,
  }
}
