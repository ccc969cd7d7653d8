import type { Primitive } from '../../drawing/primitives.ts'
import { rollOffAt, type RollOff } from '../../derive/rollOff.ts'
import { dropHeightM } from '../../derive/dropHeight.ts'
import type { SiteModel } from '../../derive/types.ts'
import { toPx, type Picture } from './picture.ts'

const HEAD_PX = 10
let last: { site: SiteModel; key: string; roll: RollOff } | null = null

/** Roll-off of a dropped pipe, kept while neither the plan nor its place changes. */
function rollOf(site: SiteModel, at: { xM: number; yM: number }): RollOff {
  const key = `${at.xM} ${at.yM}`
  if (last === null || last.site !== site || last.key !== key) last = { site, key, roll: rollOffAt(site, at, dropHeightM(site, at)) }
  return last.roll
}

/** The stick where it lies, the lane it covers, and an arrow; nothing beyond the end where something stops it, a broken edge where nothing does. */
export const rollOffShapes = (picture: Picture): Primitive[] => {
  const { rollOff, tool } = picture.view
  if (rollOff === null || tool?.name !== 'rollOff') return []
  const roll = rollOf(picture.site, rollOff)
  const at = toPx(picture, rollOff.xM, rollOff.yM)
  if (roll.lane.length < 4 || roll.headingRad === null) return [{ t: 'circle', xM: at.xPx, yM: at.yPx, radiusM: 7, fill: 'sheet', stroke: 'chosen', weight: 'building' }]
  const [a, b, c, d] = roll.lane.map(({ xM, yM }) => toPx(picture, xM, yM)) as [{ xPx: number; yPx: number }, { xPx: number; yPx: number }, { xPx: number; yPx: number }, { xPx: number; yPx: number }]
  const isBad = roll.end === 'unstopped' || roll.end === 'drops'
  const ink = isBad ? 'red' : 'amber'
  const end = { xPx: (b.xPx + c.xPx) / 2, yPx: (b.yPx + c.yPx) / 2 }
  const [dx, dy] = [end.xPx - at.xPx, end.yPx - at.yPx]
  const far = Math.hypot(dx, dy) || 1
  const [ux, uy] = [dx / far, dy / far]
  const back = { xPx: end.xPx - ux * HEAD_PX, yPx: end.yPx - uy * HEAD_PX }
  return [
    { t: 'path', points: [a.xPx, a.yPx, b.xPx, b.yPx, c.xPx, c.yPx, d.xPx, d.yPx], closed: true, fill: ink, fillOpacity: 0.14 },
    { t: 'path', points: [a.xPx, a.yPx, b.xPx, b.yPx], stroke: ink, weight: 'gear' },
    { t: 'path', points: [d.xPx, d.yPx, c.xPx, c.yPx], stroke: ink, weight: 'gear' },
    { t: 'path', points: [b.xPx, b.yPx, c.xPx, c.yPx], stroke: ink, weight: 'building', ...(roll.end === 'unstopped' ? { dash: 'proposal' as const } : {}) },
    { t: 'path', points: [a.xPx, a.yPx, d.xPx, d.yPx], stroke: 'chosen', weight: 'pipe' },
    { t: 'path', points: [at.xPx, at.yPx, end.xPx, end.yPx], stroke: ink, weight: 'rope' },
    { t: 'path', points: [back.xPx - uy * HEAD_PX * 0.5, back.yPx + ux * HEAD_PX * 0.5, end.xPx, end.yPx, back.xPx + uy * HEAD_PX * 0.5, back.yPx - ux * HEAD_PX * 0.5], stroke: ink, weight: 'rope' },
  ]
}
