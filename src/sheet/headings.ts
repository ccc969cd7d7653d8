/** Line over the plan with bar scale and north, line over the side view, and the foot of the page. */
import type { Primitive } from '../drawing/primitives.ts'
import { footM } from '../units/factors.ts'
import { formatQuantity } from '../units/format.ts'
import { numberText } from '../units/numberText.ts'
import type { ImageContent, Reader } from './content.ts'
import { HEADING, notSettledPlate, rule, type Region } from './region.ts'
import { heightOf, imageBoxes, widthOf } from './page.ts'
import type { Lettering, TextLook } from './lettering.ts'

const QUIET: TextLook = { sizePx: 15, ink: 'ink2' }
const STRONG: TextLook = { sizePx: 15, bold: true }
const BAR_LONGEST_PX = 300
const BAR_HEIGHT_PX = 7
const ROUND = [1, 2, 5] as const

/**
 * The longest round length (1, 2 or 5 times a power of ten, feet or metres) whose bar is at most `longestPx` long.
 * Never under a tenth of the unit.
 */
export const barScale = (pxPerM: number, isFeet: boolean, longestPx = BAR_LONGEST_PX): { count: number; lengthM: number; lengthPx: number } => {
  const unitM = isFeet ? footM : 1
  const most = longestPx / (pxPerM * unitM)
  const power = 10 ** Math.max(-1, Math.floor(Math.log10(most)))
  const digit = [...ROUND].reverse().find((one) => one * power <= most * (1 + 1e-9)) ?? 1
  // A negative power of ten carries rounding: 2 × 0.1 is not 0.2.
  const count = power < 1 ? Math.round(digit * power * 10) / 10 : digit * power
  return { count, lengthM: count * unitM, lengthPx: count * unitM * pxPerM }
}

const barParts = (pxPerM: number, x1: number, reader: Reader, lettering: Lettering): { list: readonly Primitive[]; x0: number } => {
  const { heading } = imageBoxes
  const isFeet = !reader.isMetric
  const { count, lengthM, lengthPx } = barScale(pxPerM, isFeet)
  const unit = isFeet ? (reader.language === 'es' ? 'pies' : 'ft') : 'm'
  const other = isFeet ? ` (${formatQuantity({ kind: 'length', value: lengthM }, { system: 'metric', language: reader.language })})` : ''
  const end = `${numberText(count, 1)} ${unit}${other}`
  const endPx = lettering.widthPx(end, QUIET)
  const [barEnd, y] = [x1 - endPx - 8, heading.y0 + 20]
  const x0 = barEnd - lengthPx
  const part = lengthPx / 4
  const list: Primitive[] = [
    { t: 'rect', xM: x0, yM: y, widthM: lengthPx, heightM: BAR_HEIGHT_PX, fill: 'sheet', stroke: 'ink', weight: 'context' },
    ...[0, 2].map((i): Primitive => ({ t: 'rect', xM: x0 + i * part, yM: y, widthM: part, heightM: BAR_HEIGHT_PX, fill: 'ink' })),
    rule([x0, y - 5, x0, y], 'ink'),
    rule([barEnd, y - 5, barEnd, y], 'ink'),
    ...lettering.line('0', x0 - 7, y + BAR_HEIGHT_PX, { ...QUIET, align: 'right' }),
    ...lettering.line(end, barEnd + 8, y + BAR_HEIGHT_PX, QUIET),
  ]
  return { list, x0: x0 - 18 }
}

/** Direction of north on the page, counter-clockwise from the right; null where nobody has said. */
export const northOnPageRad = ({ site, isTurned }: Pick<ImageContent, 'site' | 'isTurned'>): number | null =>
  site.layout.northRad === null ? null : site.layout.northRad - (site.setUp?.headingRad ?? 0) + (isTurned === true ? Math.PI : 0)

const NORTH_HALF_PX = 16

/** Arrow half black, half white, with its letter beside it. */
const northParts = (content: ImageContent, x1: number, reader: Reader, lettering: Lettering): { list: readonly Primitive[]; x0: number } => {
  const { heading } = imageBoxes
  const rad = northOnPageRad(content)
  if (rad === null) {
    const text = reader.say('northUnknown')
    const widthPx = lettering.widthPx(text, QUIET)
    return { list: lettering.line(text, x1 - widthPx, heading.y0 + 27, QUIET), x0: x1 - widthPx }
  }
  const [cx, cy] = [x1 - NORTH_HALF_PX - 2, (heading.y0 + heading.y1) / 2]
  const [cos, sin] = [Math.cos(rad), Math.sin(rad)]
  const turned = (points: readonly number[]): number[] => {
    const out: number[] = []
    for (let i = 0; i + 1 < points.length; i += 2) out.push(cx + cos * points[i]! + sin * points[i + 1]!, cy - sin * points[i]! + cos * points[i + 1]!)
    return out
  }
  return {
    x0: cx - NORTH_HALF_PX - 18,
    list: [
      { t: 'path', points: turned([NORTH_HALF_PX, 0, -14, 7, -9, 0, -14, -7]), closed: true, fill: 'sheet', stroke: 'ink', weight: 'ticks' },
      { t: 'path', points: turned([NORTH_HALF_PX, 0, -14, 7, -9, 0]), closed: true, fill: 'ink' },
      ...lettering.line('N', cx - NORTH_HALF_PX - 4, cy + 6, { sizePx: 17, bold: true, align: 'right' }),
    ],
  }
}

/** 'Plan', how it lies, the stage drawn; at the right north and bar scale; between them the plate when results are not settled. */
export const headingRegion = (content: ImageContent, pxPerM: number, reader: Reader, lettering: Lettering): Region => {
  const area = imageBoxes.heading
  const baseline = area.y0 + 24
  const north = northParts(content, area.x1, reader, lettering)
  const bar = barParts(pxPerM, north.x0 - 26, reader, lettering)
  const plate = content.isSettled ? null : notSettledPlate(reader.say('notSettledLong'), { x1: bar.x0 - 24, baselinePx: baseline }, lettering)
  const end = (plate?.x0 ?? bar.x0) - 16
  const list: Primitive[] = [...lettering.line(reader.say('plan'), area.x0, baseline, HEADING)]
  let x = area.x0 + lettering.widthPx(reader.say('plan'), HEADING) + 12
  for (const [text, look] of [[reader.say('drawnAt', { stage: content.stageWords }), STRONG], [reader.say(content.isTurned === true ? 'planTurned' : 'planAlong'), QUIET]] as const) {
    const shown = lettering.clipped(text, end - x, look)
    list.push(...lettering.line(shown, x, baseline, look))
    x += lettering.widthPx(shown, look) + 14
  }
  return { name: 'heading', box: area, list: [...list, ...(plate?.list ?? []), ...bar.list, ...north.list] }
}

export const sideHeadingRegion = (content: ImageContent, reader: Reader, lettering: Lettering): Region => {
  const area = imageBoxes.sideHeading
  const baseline = area.y1 - 6
  const word = reader.say('side')
  const x = area.x0 + 10 + lettering.widthPx(word, HEADING) + 12
  const about = content.sideWords === undefined ? [] : lettering.line(lettering.clipped(content.sideWords, area.x1 - 10 - x, QUIET), x, baseline, QUIET)
  return { name: 'sideHeading', box: area, list: [...lettering.line(word, area.x0 + 10, baseline, HEADING), ...about] }
}

/** The caution in full, and where the picture comes from. */
export const footRegion = (content: ImageContent, reader: Reader, lettering: Lettering): Region => {
  const area = imageBoxes.foot
  const baseline = area.y0 + heightOf(area) * 0.7
  const caution = reader.say('caution')
  const cautionPx = lettering.widthPx(caution, STRONG)
  const made = reader.say('madeWith', { when: content.when, revision: content.site.layout.revision })
  const text = content.fileName === undefined ? made : `${made}, ${content.fileName}`
  const look: TextLook = { sizePx: 14, ink: 'ink2' }
  const shown = lettering.clipped(text, widthOf(area) - cautionPx - 30, look)
  return {
    name: 'foot', box: area,
    list: [rule([area.x0, area.y0, area.x1, area.y0]), ...lettering.line(caution, area.x0, baseline, STRONG), ...lettering.line(shown, area.x1 - lettering.widthPx(shown, look), baseline, look)],
  }
}
