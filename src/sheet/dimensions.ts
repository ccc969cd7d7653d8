/** The running-dimension table: what the crew sets out by tape from the datum nail. */
import type { Primitive } from '../drawing/primitives.ts'
import type { ImageContent, Reader } from './content.ts'
import { dimensionRows, type DimensionRow } from './dimensionRows.ts'
import type { Lettering, TextLook } from './lettering.ts'
import { imageBoxes, LEAST_LETTERING_PX, widthOf } from './page.ts'
import { box, HEADING, HEADING_LINE_PX, rule, type Region } from './region.ts'
import type { SheetWord } from './words.ts'

const columns: readonly { key: keyof DimensionRow; head: SheetWord; widthPx: number; bold?: boolean }[] = [
  { key: 'label', head: 'headLabel', widthPx: 42, bold: true },
  { key: 'item', head: 'headItem', widthPx: 108 },
  { key: 'distance', head: 'headDistance', widthPx: 186, bold: true },
  { key: 'offset', head: 'headOffset', widthPx: 130 },
  { key: 'saddle', head: 'headSaddle', widthPx: 126, bold: true },
  { key: 'carries', head: 'headCarries', widthPx: 108 },
]
const HEAD: TextLook = { sizePx: 14, ink: 'ink2' }
const HEAD_PX = 21
const FOOT_PX = 18
const PITCH_PX = { most: 22 }
const PAD_PX = 5

export const dimensionsRegion = (content: ImageContent, reader: Reader, lettering: Lettering): Region => {
  const area = imageBoxes.dimensions
  const { rows, leftOut } = dimensionRows(content, reader)
  const title = reader.say('dimensions')
  const list: Primitive[] = [...lettering.line(title, area.x0, area.y0 + 17, HEADING)]
  const aboutAt = area.x0 + lettering.widthPx(title, HEADING) + 14
  const about = lettering.clipped(reader.say('dimensionsAbout'), area.x1 - aboutAt, HEAD)
  list.push(...lettering.line(about, area.x1 - lettering.widthPx(about, HEAD), area.y0 + 17, HEAD))

  const top = area.y0 + HEADING_LINE_PX
  let x = area.x0
  for (const { head, widthPx } of columns) {
    list.push(...lettering.line(lettering.clipped(reader.say(head), widthPx - PAD_PX, HEAD), x + PAD_PX, top + 15, HEAD))
    x += widthPx
  }
  list.push(rule([area.x0, top + HEAD_PX, area.x1, top + HEAD_PX], 'ink', 'boundary'))

  const bodyTop = top + HEAD_PX
  const roomPx = area.y1 - FOOT_PX - bodyTop
  const pitchPx = Math.min(PITCH_PX.most, roomPx / Math.max(1, rows.length))
  const sizePx = Math.min(16, Math.max(14, Math.floor((pitchPx - 2) * 2) / 2))
  rows.forEach((row, i) => {
    const y0 = bodyTop + i * pitchPx
    // A tint on every second row leads the eye; it carries nothing.
    if (i % 2 === 1) list.push(box(area.x0, y0, widthOf(area), pitchPx, { fill: 'lot' }))
    let left = area.x0
    for (const { key, widthPx, bold } of columns) {
      // Lettering gives way before figures do: a cell that is too long is set smaller, down to 7 pt.
      const sizes = [sizePx, 15, 14.5, LEAST_LETTERING_PX].filter((size) => size <= sizePx)
      const looks = sizes.map((size): TextLook => ({ sizePx: size, ...(bold === true ? { bold } : {}), ...(key === 'carries' && !content.isSettled ? { ink: 'ink2' } : {}) }))
      const look = looks.find((one) => lettering.widthPx(row[key], one) <= widthPx - PAD_PX) ?? looks.at(-1)!
      list.push(...lettering.line(lettering.clipped(row[key], widthPx - PAD_PX, look), left + PAD_PX, y0 + pitchPx / 2 + sizePx * 0.33, look))
      left += widthPx
    }
  })
  const end = bodyTop + rows.length * pitchPx
  if (rows.length > 0) list.push(rule([area.x0, end, area.x1, end]))
  const footLine = Math.min(area.y1 - 4, end + 15)
  const more = rows.length === 0 ? reader.say('rowsNone') : leftOut > 0 ? reader.say('rowsMore', { count: leftOut }) : ''
  const moreLook: TextLook = { sizePx: 14, bold: true }
  const meansAt = area.x0 + PAD_PX + (more === '' ? 0 : lettering.widthPx(more, moreLook) + 16)
  list.push(...lettering.line(more, area.x0 + PAD_PX, footLine, moreLook), ...lettering.line(lettering.clipped(reader.say('saddleMeans'), area.x1 - meansAt, HEAD), meansAt, footLine, HEAD))
  return { name: 'dimensions', box: area, list }
}
