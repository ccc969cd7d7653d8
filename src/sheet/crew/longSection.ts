/** The long section under the key plan: the same lengths, heights drawn larger. */
import { profileAt } from '../../derive/profile.ts'
import { sectionDrawing, sectionRange } from '../../derive/sectionDrawing.ts'
import type { SiteModel } from '../../derive/types.ts'
import type { BoxPx } from '../../drawing/paint.ts'
import type { Primitive } from '../../drawing/primitives.ts'
import { footM } from '../../units/factors.ts'
import { numberText } from '../../units/numberText.ts'
import type { Lettering } from '../lettering.ts'
import { rule } from '../region.ts'
import type { CrewReader } from './reader.ts'
import type { DrawnScale } from './scale.ts'
import { BODY, BOLD } from './text.ts'
import { inPoints, type SheetGroup } from './types.ts'

/** Room under the drawing: labels, then the running scale. */
const FOOT_PT = 34
const HEAD_PT = 12
const TIMES = [1, 2, 5, 10, 20] as const
/** Steps of the running scale, in feet or metres. */
const STEPS = [1, 2, 5, 10, 20, 25, 50, 100, 200, 250, 500, 1000]
const LEAST_STEP_PT = 44

export interface LongSection {
  groups: readonly SheetGroup[]
  /** Heights are drawn so many times their size. */
  times: number
}

/**
 * `midAlongM` stands in the middle of the box, as in the plan over it. Beyond a bend running distances leave the straight axis
 * of the plan; the running scale says where they are.
 */
export const longSection = (site: SiteModel, box: BoxPx, { ptPerM }: DrawnScale, midAlongM: number, reader: CrewReader, lettering: Lettering): LongSection => {
  const halfM = (box.x1 - box.x0) / ptPerM / 2
  const [fromM, toM] = [midAlongM - halfM, midAlongM + halfM]
  const profile = profileAt(site, { phase: 'fuse', joint: Math.max(1, site.sticks.stickCount - 1) })
  const { lowestM, highestM } = sectionRange(site, profile, fromM, toM)
  const roomPt = box.y1 - box.y0 - FOOT_PT - HEAD_PT
  const times = TIMES.findLast((one) => (highestM - lowestM) * ptPerM * one <= roomPt) ?? 1
  const ptPerLevelM = ptPerM * times
  const leftPt = box.x0 - fromM * ptPerM
  // Beyond what fits (a mountain of a site) the lowest ground is kept in sight.
  const basePt = box.y1 - FOOT_PT - 4 + lowestM * ptPerLevelM
  const drawing = sectionDrawing(site, profile, { pxPerM: ptPerM, pxPerLevelM: ptPerLevelM, fromM, toM, reader: { system: reader.system, language: reader.language }, chosenIds: [] })
  return {
    times,
    groups: [
      { name: 'section', matrix: { a: ptPerM, b: 0, c: 0, d: -ptPerLevelM, e: leftPt, f: basePt }, clipPt: { ...box, y1: box.y1 - FOOT_PT }, list: drawing },
      { name: 'sectionScale', matrix: inPoints, clipPt: box, list: [...labelRow(site, leftPt, ptPerM, box, lettering), ...runningScale(leftPt, ptPerM, box, reader, lettering)] },
    ],
  }
}

const labelRow = (site: SiteModel, leftPt: number, ptPerM: number, box: BoxPx, lettering: Lettering): readonly Primitive[] => {
  const y = box.y1 - FOOT_PT + 12
  let last = -Infinity
  return site.supports.flatMap(({ label, runningM }) => {
    const x = leftPt + runningM * ptPerM
    const half = lettering.widthPx(label, BOLD) / 2
    if (x - half < last + 4 || x - half < box.x0 || x + half > box.x1) return []
    last = x + half
    return [rule([x, y - 12, x, y - 9], 'ink', 'hair'), ...lettering.line(label, x, y, { ...BOLD, align: 'center' })]
  })
}

const runningScale = (leftPt: number, ptPerM: number, box: BoxPx, reader: CrewReader, lettering: Lettering): readonly Primitive[] => {
  const unitM = reader.isMetric ? 1 : footM
  const step = STEPS.find((one) => one * unitM * ptPerM >= LEAST_STEP_PT) ?? STEPS.at(-1)!
  const stepPt = step * unitM * ptPerM
  const y = box.y1 - FOOT_PT + 17
  const list: Primitive[] = [rule([box.x0, y, box.x1, y], 'ink', 'context')]
  for (let i = Math.ceil((box.x0 - leftPt) / stepPt); leftPt + i * stepPt <= box.x1; i++) {
    const x = leftPt + i * stepPt
    const text = numberText(Math.abs(i) * step, 0) + (i === 0 ? ` ${reader.isMetric ? 'm' : 'ft'}` : '')
    const half = lettering.widthPx(text, BODY) / 2
    list.push(rule([x, y, x, y + 4], 'ink', 'context'))
    if (x - half > box.x0 && x + half < box.x1) list.push(...lettering.line(text, x, y + 14, { ...BODY, align: 'center' }))
  }
  return list
}
