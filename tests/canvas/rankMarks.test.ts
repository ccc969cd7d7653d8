import { describe, expect, it } from 'vitest'
import { limitsOf } from '../../src/checks/limits.ts'
import { RANK_PX, rankMarks, rankParts } from '../../src/canvas/rankMarks.ts'
import { criticalSupports } from '../../src/derive/critical.ts'
import { createMechanics } from '../../src/derive/mechanics.ts'
import { plannedProfile } from '../../src/derive/plannedProfile.ts'
import { profileAt } from '../../src/derive/profile.ts'
import { sectionDrawing } from '../../src/derive/sectionDrawing.ts'
import { deriveSite } from '../../src/derive/site.ts'
import { rankShape } from '../../src/drawing/rankShape.ts'
import type { Primitive } from '../../src/drawing/primitives.ts'
import type { YardRecord } from '../../src/scene/document.ts'
import { fusionYard, inch } from '../helpers/fusionYard.ts'

const document = fusionYard()
const site = deriveSite(document)
const limits = limitsOf(document)
const { supports } = criticalSupports(site, limits, createMechanics(site, limits), inch(0.5))
const textOf = (parts: readonly Primitive[]): string[] => parts.flatMap((part) => (part.t === 'text' ? [part.text] : []))
const fillOf = (parts: readonly Primitive[]): unknown => (parts[0]!.t === 'path' ? parts[0]!.fill : null)

describe('marks of the ranking', () => {
  it('stand at their supports with their numbers, the worst first', () => {
    const marks = rankMarks(supports, site, false)
    expect(marks.length).toBeGreaterThan(1)
    expect(marks.map(({ rank }) => rank)).toEqual(marks.map((_, i) => i + 1))
    for (const { itemId, runningM } of marks) expect(site.supports.some((view) => view.itemId === itemId && view.runningM === runningM)).toBe(true)
  })
  it('leave out a support that has been taken away since', () => {
    const records = { ...document.records }
    delete records['stand:e1']
    const after = rankMarks(supports, deriveSite({ records }), true)
    expect(after.every(({ itemId, isOld }) => itemId !== 'stand:e1' && isOld)).toBe(true)
  })
  it('tell their level by fill and line, not by colour: full, doubled, plain', () => {
    const [ruins, look, bears] = (['FIX', 'CHECK', 'met'] as const).map((level) => rankShape(2, level, RANK_PX)) as [readonly Primitive[], readonly Primitive[], readonly Primitive[]]
    expect([ruins, look, bears].map(textOf)).toEqual([['2'], ['2'], ['2']])
    expect([fillOf(ruins), fillOf(look), fillOf(bears)]).toEqual(['ink', 'paper', 'paper'])
    expect([ruins, look, bears].map((parts) => parts.filter(({ t }) => t === 'path').length)).toEqual([1, 2, 1])
    // Old: never full, so that it is not read as current.
    expect(fillOf(rankShape(2, 'FIX', RANK_PX, true))).toBe('paper')
  })
  it('hang under the feet in the side view, never under its edge', () => {
    const parts = rankParts(rankMarks(supports, site, false), { alongPx: (runningM) => 500 + 20 * runningM, levelPx: (levelM) => 200 - 50 * levelM, mostPx: 210 })
    for (const part of parts) {
      expect(part.t).toBe('mark')
      // y UP: ground at 0 m is px 200, 15 px under it 215; held to 210 less half a mark.
      if (part.t === 'mark') expect(part.yM).toBeCloseTo(-(210 - RANK_PX / 2), 9)
    }
  })
})

describe('the planned line beside heights as set', () => {
  const asSet: YardRecord = { id: 'asSet:1', kind: 'asSet', itemId: 'stand:e1', saddleM: inch(28), farSaddleM: null, isTicked: false, isFarTicked: false, offsetM: null, runningM: null, when: '' }
  const stage = { phase: 'fuse', joint: 1 } as const
  const look = { pxPerM: 15, pxPerLevelM: 75, fromM: -15, toM: 15, reader: { system: 'feetInches', language: 'en' }, chosenIds: [] } as const
  const set = deriveSite(fusionYard({ more: [asSet] }), { variant: 'asSet' })
  const dashed = (list: readonly Primitive[]): readonly Primitive[] => list.filter((part) => part.t === 'path' && part.dash === 'proposal')

  it('is none while the plan is shown', () => expect(plannedProfile(deriveSite(fusionYard({ more: [asSet] })), stage)).toBeNull())
  it('is the pipe on the planned heights, thin and broken, one curve a body', () => {
    const planned = plannedProfile(set, stage)!
    const alone = profileAt(deriveSite(fusionYard()), stage)
    expect([...planned.bodies[1]!.levelM]).toEqual([...alone.bodies[1]!.levelM])
    const list = sectionDrawing(set, profileAt(set, stage), { ...look, planned })
    expect(dashed(list)).toHaveLength(planned.bodies.length)
    expect(dashed(sectionDrawing(set, profileAt(set, stage), look))).toHaveLength(0)
  })
  it('marks the planned saddle of the one support that was set otherwise', () => {
    const [plain, both] = [look, { ...look, planned: plannedProfile(set, stage) }].map((one) => sectionDrawing(set, profileAt(set, stage), one)) as [Primitive[], Primitive[]]
    const ticks = both.filter((part) => part.t === 'path' && part.stroke === 'chosen' && part.weight === 'ticks')
    expect(ticks).toHaveLength(1)
    expect(both).toHaveLength(plain.length + 1 + dashed(both).length)
    // E1 was planned at 30 in.
    const [tick] = ticks
    if (tick?.t === 'path') expect(tick.points[1]).toBeCloseTo(inch(30), 9)
  })
})
