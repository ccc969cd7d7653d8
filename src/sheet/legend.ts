/** What the shapes, hatches and lines mean. Each is told apart by shape, hatch or word, so that a grey print says the same. */
import { levelShape, type LevelName } from '../drawing/levelShapes.ts'
import type { Primitive, SymbolContext } from '../drawing/primitives.ts'
import { shifted } from '../drawing/shifted.ts'
import { textIn } from '../messages/localized.ts'
import type { ZoneClass } from '../scene/parts.ts'
import { crewPlan } from '../scene/symbols/crew.ts'
import { levelPlan } from '../scene/symbols/level.ts'
import { zonePens } from '../scene/symbols/zone.ts'
import type { ImageContent, Reader } from './content.ts'
import type { Lettering, TextLook } from './lettering.ts'
import { heightOf, imageBoxes, widthOf } from './page.ts'
import { box, HEADING, HEADING_LINE_PX, rule, type Region } from './region.ts'

const levels: readonly LevelName[] = ['STOP', 'FIX', 'CHECK', 'NOTE']
const zoneClasses: readonly ZoneClass[] = ['RED', 'AMBER', 'BLUE']

/** From 18 px on a CHECK is the filled circle that the findings show. */
const MARK_PX = 18
const SWATCH_PX = { width: 38, height: 15 }
const TEXT_AT_PX = 50
const WORD: TextLook = { sizePx: 14, bold: true }
const MEANING: TextLook = { sizePx: 14 }
const NAMES: TextLook = { sizePx: 14, ink: 'ink2' }
const symbol: SymbolContext = { pipeOuterDiameterM: 0.3, stickLengthM: null, pxPerM: 20, onShelf: true }

type Sample = (x: number, middleY: number) => readonly Primitive[]

const levelSample = (level: LevelName): Sample => (x, y) => [{ t: 'mark', xM: x + SWATCH_PX.width / 2, yM: y, parts: levelShape(level, MARK_PX) }]
const zoneSample = (zoneClass: ZoneClass): Sample => (x, y) => [box(x, y - SWATCH_PX.height / 2, SWATCH_PX.width, SWATCH_PX.height, zonePens[zoneClass])]
const unknownSample: Sample = (x, y) => [
  box(x, y - SWATCH_PX.height / 2, SWATCH_PX.width, SWATCH_PX.height, { stroke: 'ink', weight: 'ticks', dash: 'missing' }),
  { t: 'text', xM: x + SWATCH_PX.width / 2, yM: y + 5, text: '?', sizePx: 14, bold: true, align: 'center' },
]
const pipeSample: Sample = (x, y) => [{ t: 'pipe', points: [x, y, x + SWATCH_PX.width, y], outerDiameterM: 7 }]
const tapeSample: Sample = (x, y) => {
  const [half, top, bottom] = [SWATCH_PX.width / 2, y - 7, y + 7]
  return [
    box(x, top, half, 14, { fill: 'tapePale' }), box(x + half, top, half, 14, { fill: 'tape' }),
    rule([x, top, x + 2 * half, top], 'tapeInk'), rule([x, bottom, x + 2 * half, bottom], 'tapeInk'),
    ...[6, 12, 26, 32].map((dx) => rule([x + dx, top, x + dx, top + 5], 'tapeInk')),
    { t: 'circle', xM: x + half, yM: y, radiusM: 4.5, fill: 'tapeInk' }, { t: 'circle', xM: x + half, yM: y, radiusM: 1.4, fill: 'tape' },
  ]
}
// Symbols of fixed size are marks about their origin; only the mark moves.
const levelMarkSample: Sample = (x, y) => shifted(levelPlan({ figures: { levelM: { value: 0 } } }, symbol), x + SWATCH_PX.width / 2, y + 6)
const crewSample: Sample = (x, y) => shifted(crewPlan({ letter: '', name: '' }, symbol), x + SWATCH_PX.width / 2, y)

interface Row {
  sample: Sample
  word: string
  meaning: string
  /** Zones of the class live at the stage drawn: as many names as there is room for. */
  names?: readonly string[]
  /** A second entry in the right half of the row. */
  second?: { sample: Sample; word: string }
}

const rowsOf = (content: ImageContent, reader: Reader): readonly Row[] => {
  const namesOf = (zoneClass: ZoneClass): readonly string[] => [...new Set(content.zones.filter((zone) => zone.zoneClass === zoneClass).map(({ name }) => textIn(name, reader.language)))]
  const hasUnknown = content.zones.some(({ missing }) => missing.length > 0)
  return [
    ...levels.map((level): Row => ({ sample: levelSample(level), word: reader.say(level), meaning: reader.say(`means${level}`) })),
    ...zoneClasses.map((zoneClass): Row => ({ sample: zoneSample(zoneClass), word: reader.say(zoneClass), meaning: reader.say(`means${zoneClass}`), names: namesOf(zoneClass) })),
    ...(hasUnknown ? [{ sample: unknownSample, word: '', meaning: reader.say('meansUnknown') }] : []),
    { sample: pipeSample, word: '', meaning: reader.say('legendPipe'), second: { sample: levelMarkSample, word: reader.say('legendLevel') } },
    { sample: tapeSample, word: '', meaning: reader.say('legendTape'), second: { sample: crewSample, word: reader.say('legendCrew') } },
  ]
}

/** Whole names only; where not all fit, an ellipsis stands for the rest. */
const wholeNames = (names: readonly string[], roomPx: number, lettering: Lettering): string => {
  for (let count = names.length; count > 0; count--) {
    const text = names.slice(0, count).join(', ') + (count < names.length ? ', …' : '')
    if (lettering.widthPx(text, NAMES) <= roomPx) return text
  }
  return ''
}

export const legendRegion = (content: ImageContent, reader: Reader, lettering: Lettering): Region => {
  const area = imageBoxes.legend
  const rows = rowsOf(content, reader)
  const pitchPx = (heightOf(area) - HEADING_LINE_PX) / rows.length
  const list: Primitive[] = [...lettering.line(reader.say('legend'), area.x0, area.y0 + 17, HEADING)]
  rows.forEach((row, i) => {
    const middleY = area.y0 + HEADING_LINE_PX + (i + 0.5) * pitchPx
    const baseline = middleY + 5
    const secondAt = area.x0 + widthOf(area) * 0.58
    const end = row.second === undefined ? area.x1 : secondAt - 8
    let x = area.x0 + TEXT_AT_PX
    list.push(...row.sample(area.x0, middleY))
    const put = (text: string, look: TextLook, gapPx: number): void => {
      const shown = lettering.clipped(text, end - x, look)
      if (shown === '') return
      list.push(...lettering.line(shown, x, baseline, look))
      x += lettering.widthPx(shown, look) + gapPx
    }
    put(row.word, WORD, 7)
    put(row.meaning, MEANING, 10)
    put(wholeNames(row.names ?? [], end - x, lettering), NAMES, 0)
    if (row.second === undefined) return
    list.push(...row.second.sample(secondAt, middleY), ...lettering.line(lettering.clipped(row.second.word, area.x1 - secondAt - TEXT_AT_PX, MEANING), secondAt + TEXT_AT_PX, baseline, MEANING))
  })
  return { name: 'legend', box: area, list }
}
