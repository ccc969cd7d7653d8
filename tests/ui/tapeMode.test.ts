import { describe, expect, it } from 'vitest'
import { runChecks } from '../../src/checks/runner.ts'
import { deriveSite } from '../../src/derive/site.ts'
import type { YardRecord } from '../../src/scene/document.ts'
import { firstOpen, marksOf } from '../../src/ui/tapeMode/marks.ts'
import { jawsOf } from '../../src/ui/tapeMode/useJaws.ts'
import { item, onRun } from '../helpers/documents.ts'
import { ft, fusionYard, inch } from '../helpers/fusionYard.ts'

const anchor = item('anchor', 'anchor:1', onRun(ft(-60)))
const ticked = (itemId: string, over: { isTicked?: boolean; isFarTicked?: boolean; saddleM?: number } = {}): YardRecord =>
  ({ id: `asSet:${itemId.replace(':', '')}`, kind: 'asSet', itemId, saddleM: null, farSaddleM: null, isTicked: true, isFarTicked: false, offsetM: null, runningM: null, when: '', ...over })
const marksWith = (...more: YardRecord[]) => {
  const site = deriveSite(fusionYard({ more }))
  return marksOf(site, runChecks(site), 'feetInches')
}

describe('marks of the tape', () => {
  it('go from the nail to the end of the infeed, then along the exit', () => {
    const marks = marksWith(anchor)
    const distances = marks.map(({ runningM }) => runningM)
    const infeed = distances.filter((runningM) => runningM < -0.001)
    const exit = distances.filter((runningM) => runningM > 0.001)
    expect(distances).toEqual([0, ...infeed.toSorted((a, b) => b - a), ...exit.toSorted((a, b) => a - b)])
    expect(marks[0]!.name.en).toBe('jaws')
    // Both beams of the rack, the two stands of the yard, and what was put in beside them.
    expect(marks.map(({ label }) => label)).toEqual(expect.arrayContaining(['R1', 'R2', 'E1', 'E2']))
    expect(marks.some(({ itemId }) => itemId === anchor.id)).toBe(true)
  })
  it('leave out people', () => expect(marksWith(item('crew', 'crew:1', onRun(ft(5)))).some(({ itemId }) => itemId === 'crew:1')).toBe(false))
  it('carry height and tolerance where the pipe lies, and the roller top of a flat roller', () => {
    const e1 = marksWith().find(({ label }) => label === 'E1')!
    expect([e1.height?.plannedM, e1.rollerTopM]).toEqual([expect.closeTo(inch(30), 6), e1.height?.plannedM])
    expect(e1.height?.toleranceM).toBeGreaterThan(0)
  })
  it('the two beams of a rack are ticked one by one', () => {
    const marks = marksWith(ticked('rack:1', { isTicked: false, isFarTicked: true }))
    expect(marks.filter(({ itemId }) => itemId === 'rack:1').map(({ label, isTicked }) => `${label} ${isTicked}`)).toEqual(['R1 false', 'R2 true'])
  })
  it('begin at the first open one, and past the last where all are ticked', () => {
    const marks = marksWith()
    expect(firstOpen(marks)).toBe(0)
    expect(firstOpen(marks.map((mark, at) => ({ ...mark, isTicked: at < 2 })))).toBe(2)
    expect(firstOpen(marks.map((mark) => ({ ...mark, isTicked: true })))).toBe(marks.length)
  })
})

describe('what comes of the heights typed', () => {
  const jawsWith = (variant: 'planned' | 'asSet', ...more: YardRecord[]) => jawsOf(runChecks(deriveSite(fusionYard({ more }), { variant })))
  it('is the worse side of the jaws, and a stand set low changes it as set only', () => {
    const low = ticked('stand:e1', { saddleM: inch(28) })
    const [plan, planStill, asSet] = [jawsWith('planned')!, jawsWith('planned', low)!, jawsWith('asSet', low)!]
    expect(planStill.effortRatio).toBe(plan.effortRatio)
    // 2 in too low next to the jaws lets the pipe hang in them: more effort at the exit side.
    expect(asSet.effortRatio).toBeGreaterThan(plan.effortRatio)
    expect(asSet.side).toBe('exit')
  })
  it('is unknown without a run', () => expect(jawsOf(null)).toBeNull())
})
