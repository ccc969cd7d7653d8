/** Numbers at which the crew stops, in boxes under the title block. */
import { limitsOf } from '../../checks/limits.ts'
import { rollingWindMPerS } from '../../checks/list/windChock.ts'
import { loaderPlateN } from '../../derive/loaders.ts'
import { mobilisingOf } from '../../derive/mobilising.ts'
import type { RunThrough } from '../../derive/stages/types.ts'
import type { SiteModel } from '../../derive/types.ts'
import type { Primitive } from '../../drawing/primitives.ts'
import type { Localized } from '../../messages/localized.ts'
import { renderText } from '../../messages/render.ts'
import type { Lettering } from '../lettering.ts'
import { box } from '../region.ts'
import type { Block } from './flow.ts'
import type { CrewReader } from './reader.ts'
import { BODY, BOLD, LINE_PT, linesOf, setLines } from './text.ts'
import { crewWords } from './words.ts'

/** Over so many times the drag planned the crew stops and looks: common practice, no source. */
const DRAG_TIMES = 1.5
const STANDARD_GRAVITY = 9.80665

export interface StopFigures {
  windMPerS: number | null
  /** The least of what is known of pipe, rope and puller, and which it is. */
  mostPull: { by: 'byPipe' | 'byRope' | 'byPuller'; forceN: number } | null
  plannedPullN: number | null
  plannedDragN: number | null
  plannedDragPa: number | null
  stickN: number | null
  plateN: number | null
}

/** Null wherever an input nobody has given is needed. */
export const stopFigures = (site: SiteModel, rehearsal: RunThrough | null): StopFigures => {
  const { properties } = site.pipe
  const pulls = (rehearsal?.stages ?? []).flatMap(({ pull }) => (pull === null ? [] : [pull]))
  const drags = (rehearsal?.stages ?? []).flatMap(({ drag }) => (drag === null ? [] : [drag]))
  const least = (values: readonly (number | null)[]): number | null => values.reduce<number | null>((best, value) => (value === null || (best !== null && best <= value) ? best : value), null)
  const bounds = ([['byPipe', least(pulls.map(({ allowableN }) => allowableN))], ['byRope', least(pulls.map(({ ropeN }) => ropeN))], ['byPuller', least(pulls.map(({ usableTowN }) => usableTowN))]] as const)
    .flatMap(([by, forceN]) => (forceN === null ? [] : [{ by, forceN }])).toSorted((a, b) => a.forceN - b.forceN)
  const worst = drags.toSorted((a, b) => b.movingN - a.movingN)[0]
  const { stickMassKg } = mobilisingOf(site)
  return {
    windMPerS: properties === null ? null : rollingWindMPerS(properties, limitsOf(site.document).limit('wind-share')),
    mostPull: bounds[0] ?? null,
    plannedPullN: pulls.length === 0 ? null : Math.max(...pulls.map(({ needN }) => needN)),
    plannedDragN: worst?.movingN ?? null,
    plannedDragPa: worst?.pressurePa ?? null,
    stickN: stickMassKg === null ? null : stickMassKg * STANDARD_GRAVITY,
    plateN: loaderPlateN(site),
  }
}

const textsOf = (figures: StopFigures, reader: CrewReader): readonly { head: string; lines: readonly string[] }[] => {
  const force = (value: number | null) => ({ kind: 'force', value }) as const
  const { mostPull, plannedDragN, plannedDragPa } = figures
  const gauge: Localized | string = plannedDragPa === null ? '' : gaugeSaid(plannedDragPa, reader)
  const drag = plannedDragN === null ? reader.lines('notKnown') : reader.lines('stopDragSays', { plan: force(plannedDragN), most: force(plannedDragN * DRAG_TIMES), gauge })
  return [
    { head: reader.say('stopWind'), lines: figures.windMPerS === null ? reader.lines('notKnown') : reader.lines('stopWindSays', { wind: { kind: 'speed', value: figures.windMPerS } }) },
    { head: reader.say('stopPull'), lines: mostPull === null ? reader.lines('notKnown') : pullLines(mostPull, figures.plannedPullN, reader) },
    { head: reader.say('stopDrag'), lines: drag },
    { head: reader.say('stopStick'), lines: reader.lines('stopStickSays', { stick: force(figures.stickN), plate: force(figures.plateN) }) },
  ]
}

const gaugeSaid = (pressurePa: number, reader: CrewReader): Localized => {
  const pressure = reader.figure({ kind: 'pressure', value: pressurePa })
  const { en, es } = crewWords.stopDragGauge
  return { en: renderText({ en, es: en }, { pressure }, { system: reader.system, language: 'en' }), es: renderText({ en: es, es }, { pressure }, { system: reader.system, language: 'es' }) }
}

const pullLines = (mostPull: NonNullable<StopFigures['mostPull']>, plannedN: number | null, reader: CrewReader): readonly string[] =>
  reader.lines('stopPullSays', { most: { kind: 'force', value: mostPull.forceN }, by: crewWords[mostPull.by], plan: { kind: 'force', value: plannedN } })

/** Four boxes side by side, two by two on a narrow page. */
export const stopNumbersBlock = (figures: StopFigures, widthPt: number, reader: CrewReader, lettering: Lettering): Block => {
  const texts = textsOf(figures, reader)
  const perRow = widthPt < 620 ? 2 : 4
  const cellPt = widthPt / perRow
  const cells = texts.map(({ head, lines }) => ({
    head: linesOf(head, cellPt - 10, BOLD, lettering),
    lines: lines.flatMap((line) => linesOf(line, cellPt - 10, BODY, lettering)),
  }))
  const rows = Array.from({ length: texts.length / perRow }, (_, i) => cells.slice(i * perRow, (i + 1) * perRow))
  const heights = rows.map((row) => Math.max(...row.map(({ head, lines }) => head.length + lines.length)) * LINE_PT + 6)
  return {
    heightPt: heights.reduce((sum, one) => sum + one, 0) + 4,
    draw: (x0, y0) => {
      const list: Primitive[] = []
      let y = y0
      rows.forEach((row, i) => {
        row.forEach(({ head, lines }, j) => {
          const x = x0 + j * cellPt
          list.push(box(x, y, cellPt, heights[i]!, { stroke: 'ink', weight: 'boundary' }), ...setLines(head, x + 5, y + 2, BOLD, lettering), ...setLines(lines, x + 5, y + 2 + head.length * LINE_PT, BODY, lettering))
        })
        y += heights[i]!
      })
      return list
    },
  }
}
