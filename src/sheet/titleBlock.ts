/** Title block at the bottom right, as on paper: title, pipe, sticks, units, stage, revision, date. */
import type { Primitive } from '../drawing/primitives.ts'
import { numberText } from '../units/numberText.ts'
import type { ImageContent, Reader } from './content.ts'
import type { Lettering, TextLook } from './lettering.ts'
import { imageBoxes, widthOf } from './page.ts'
import { frame, rule, type Region } from './region.ts'

const CAPTION: TextLook = { sizePx: 14, ink: 'ink2' }
const TITLE_PX = 51
const CELL_PX = 38.2
const PAD_PX = 9

/** 'IPS 10 in DR 17 PE4710, 8.79 lb/ft', or that nobody has said. */
export const pipeLine = ({ site }: Pick<ImageContent, 'site'>, reader: Reader): string => {
  const { pipe } = site.job
  if (pipe === null) return reader.say('pipeUnknown')
  const words = reader.say(pipe.system === 'metric' ? 'pipeMetric' : 'pipeInches', { system: pipe.system, size: pipe.size, dr: numberText(pipe.dr, 1), material: pipe.material })
  const weight = reader.figure({ kind: 'lineLoad', value: site.pipe.properties?.lineLoadNPerM ?? null })
  return reader.say('pipeWeight', { pipe: words, weight })
}

/** '8 sticks of 40 ft make 319 ft 6 in (97.38 m)'; nothing is said of a count that is only guessed. */
export const sticksLine = ({ site }: Pick<ImageContent, 'site'>, reader: Reader): string => {
  const { plan, stickLengthM } = site.sticks
  if (plan === null || stickLengthM === null) return reader.say('sticksUnknown')
  // A round 40 ft reads better than 40 ft 0 in.
  const stick = reader.figure({ kind: 'length', value: stickLengthM }).replace(/ 0 (in|pulg)$/, '')
  return reader.say(plan.sticks === 1 ? 'sticksOne' : 'sticksMany', { count: plan.sticks, stick, made: reader.both({ kind: 'length', value: plan.madeLengthM }) })
}

const titleParts = (title: string, x: number, y: number, roomPx: number, lettering: Lettering): readonly Primitive[] => {
  const look: TextLook = { sizePx: 25, bold: true }
  if (lettering.widthPx(title, look) <= roomPx) return lettering.line(title, x, y + 34, look)
  const small: TextLook = { sizePx: 19, bold: true }
  const lines = lettering.wrapped(title, roomPx, { ...small, most: 2 })
  return lines.flatMap((text, i) => lettering.line(text, x, y + (lines.length === 1 ? 32 : 22 + i * 21), small))
}

export const titleBlockRegion = (content: ImageContent, reader: Reader, lettering: Lettering): Region => {
  const area = imageBoxes.titleBlock
  const { layout } = content.site
  const list: Primitive[] = [frame(area, { fill: 'paper', stroke: 'ink', weight: 'building' })]
  list.push(...titleParts(layout.title.trim() === '' ? reader.say('untitled') : layout.title, area.x0 + PAD_PX, area.y0, widthOf(area) - 2 * PAD_PX, lettering))
  const cell = (caption: string, value: string, at: { x0: number; x1: number; y0: number }): void => {
    const roomPx = at.x1 - at.x0 - 2 * PAD_PX
    // Lettering gives way before words do.
    const look = [17, 16, 15, 14].map((sizePx): TextLook => ({ sizePx, bold: true })).find((one) => lettering.widthPx(value, one) <= roomPx) ?? { sizePx: 14, bold: true }
    list.push(...lettering.line(lettering.clipped(caption, roomPx, CAPTION), at.x0 + PAD_PX, at.y0 + 15, CAPTION), ...lettering.line(lettering.clipped(value, roomPx, look), at.x0 + PAD_PX, at.y0 + 33, look))
  }
  const rows: readonly (readonly [string, string])[] = [
    [reader.say('pipe'), pipeLine(content, reader)],
    [reader.say('sticks'), sticksLine(content, reader)],
    [reader.say('units'), reader.say(reader.isMetric ? 'unitsMetric' : 'unitsBoth')],
    [reader.say('stage'), content.stageWords],
  ]
  rows.forEach(([caption, value], i) => {
    const y0 = area.y0 + TITLE_PX + i * CELL_PX
    list.push(rule([area.x0, y0, area.x1, y0], 'ink', i === 0 ? 'boundary' : 'context'))
    cell(caption, value, { x0: area.x0, x1: area.x1, y0 })
  })
  const [y0, middle] = [area.y0 + TITLE_PX + rows.length * CELL_PX, area.x0 + 92]
  list.push(rule([area.x0, y0, area.x1, y0]), rule([middle, y0, middle, area.y1]))
  cell(reader.say('revision'), layout.revision, { x0: area.x0, x1: middle, y0 })
  cell(reader.say('date'), content.when, { x0: middle, x1: area.x1, y0 })
  return { name: 'titleBlock', box: area, list }
}
