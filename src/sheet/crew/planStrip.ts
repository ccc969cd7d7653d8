/** Line over the key plan, and under it the bar scale and two marks to measure on the print. */
import type { Primitive } from '../../drawing/primitives.ts'
import { footM } from '../../units/factors.ts'
import { barScale } from '../headings.ts'
import { numberText } from '../../units/numberText.ts'
import type { SiteModel } from '../../derive/types.ts'
import type { Lettering } from '../lettering.ts'
import { box, rule } from '../region.ts'
import { POINTS_PER_M } from './paper.ts'
import type { CrewReader } from './reader.ts'
import type { DrawnScale } from './scale.ts'
import { BODY, BOLD, HEADING, linesOf, setLines } from './text.ts'

/** Distance of the check marks on paper: 4 in, or 100 mm. */
export const checkMarksM = (isMetric: boolean): number => (isMetric ? 0.1 : 4 * 0.0254)
export const STRIP_PT = 38
export const PLAN_HEADING_PT = 22

export const scaleWords = ({ ratio, feetPerIn }: DrawnScale, reader: CrewReader): string =>
  feetPerIn === null ? reader.say('scaleMetric', { ratio: String(ratio) }) : reader.say('scaleFeet', { feet: String(feetPerIn), ratio: String(ratio) })

/** 'Key plan', its scale, which way it lies; an arrow to the north at the right. */
export const planHeading = (site: SiteModel, scale: DrawnScale, at: { x0: number; x1: number; y0: number }, reader: CrewReader, lettering: Lettering): readonly Primitive[] => {
  const baseline = at.y0 + 16
  const title = reader.say('keyPlan')
  const x = at.x0 + lettering.widthPx(title, HEADING) + 10
  const northPt = site.layout.northRad === null ? lettering.widthPx(reader.say('northUnknown'), BODY) : 46
  const about = `${scaleWords(scale, reader)}, ${reader.say('exitRight')}`
  return [
    ...lettering.line(title, at.x0, baseline, HEADING),
    ...lettering.line(lettering.clipped(about, at.x1 - x - northPt - 12, BOLD), x, baseline, BOLD),
    ...north(site, at.x1, baseline, reader, lettering),
  ]
}

const north = ({ layout, setUp }: SiteModel, x1: number, baseline: number, reader: CrewReader, lettering: Lettering): readonly Primitive[] => {
  if (layout.northRad === null) return lettering.line(reader.say('northUnknown'), x1, baseline, { ...BODY, align: 'right' })
  const rad = layout.northRad - (setUp?.headingRad ?? 0)
  const [cx, cy] = [x1 - 12, baseline - 4]
  const [cos, sin] = [Math.cos(rad), Math.sin(rad)]
  const turned = ([dx, dy]: readonly [number, number]): number[] => [cx + cos * dx + sin * dy, cy - sin * dx + cos * dy]
  return [
    { t: 'path', points: ([[10, 0], [-9, 5], [-6, 0], [-9, -5]] as const).flatMap(turned), closed: true, stroke: 'ink', weight: 'ticks' },
    { t: 'path', points: ([[10, 0], [-9, 5], [-6, 0]] as const).flatMap(turned), closed: true, fill: 'ink' },
    ...lettering.line('N', cx - 14, baseline, { ...BOLD, align: 'right' }),
  ]
}

const BAR_PT = 6
const LONGEST_BAR_PT = 200

/** Bar at the left, marks after it; both true on paper printed at 100 %. */
export const scaleStrip = (scale: DrawnScale, at: { x0: number; x1: number; y0: number }, reader: CrewReader, lettering: Lettering): readonly Primitive[] => {
  const { count, lengthPx: barPt } = barScale(scale.ptPerM, !reader.isMetric, LONGEST_BAR_PT)
  const unit = reader.isMetric ? 'm' : 'ft'
  const y = at.y0 + 8
  const end = `${numberText(count, 1)} ${unit}${reader.isMetric ? '' : ` (${numberText(Math.round(count * footM * 100) / 100, 2)} m)`}`
  const quarter = barPt / 4
  const marksPt = checkMarksM(reader.isMetric) * POINTS_PER_M
  const x0 = at.x0 + barPt + lettering.widthPx(end, BODY) + 30
  const markX = Math.min(x0, at.x1 - marksPt - 2)
  const words = reader.say('checkMarks', { length: reader.isMetric ? '100 mm' : '4 in' })
  const markY = at.y0 + 6
  const beside = at.x1 - markX - marksPt - 10
  const isBeside = beside > 150
  const lines = linesOf(words, isBeside ? beside : marksPt - 8, BODY, lettering).slice(0, 2)
  return [
    box(at.x0, y, barPt, BAR_PT, { fill: 'sheet', stroke: 'ink', weight: 'context' }),
    ...[0, 2].map((i) => box(at.x0 + i * quarter, y, quarter, BAR_PT, { fill: 'ink' })),
    ...lettering.line('0', at.x0, y + 18, BODY),
    ...lettering.line(end, at.x0 + barPt + 6, y + BAR_PT, BODY),
    rule([markX, markY - 6, markX, markY + 8], 'ink', 'boundary'),
    rule([markX + marksPt, markY - 6, markX + marksPt, markY + 8], 'ink', 'boundary'),
    rule([markX, markY + 1, markX + marksPt, markY + 1], 'ink', 'hair'),
    ...(isBeside ? setLines(lines, markX + marksPt + 8, at.y0 - 2, BODY, lettering) : setLines(lines, markX + 4, at.y0 + 8, BODY, lettering)),
  ]
}
