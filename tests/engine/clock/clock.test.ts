import { describe, expect, it } from 'vitest'
import { jobClock } from '../../../src/engine/clock/jobClock.ts'
import { cycleS, jointTimes, type StepTime } from '../../../src/engine/clock/jointTimes.ts'

const inch = 0.0254
const step = (name: StepTime['step'], min: number): StepTime => ({ step: name, lowS: min * 60, likelyS: min * 60, highS: min * 60, source: 'procedure', cite: 'test' })
/** Load 5, fuse 20 (of which cooling 10), pull 5: a round of 30 min. */
const steps = [step('load', 5), step('clampFace', 8), step('soak', 2), step('heaterOut', 0), step('cool', 10), step('hold', 0), step('pull', 5)]

describe('times of a joint', () => {
  it('cool 11 min for each inch of wall (ASTM F2620, from memory): 12 in DR 17 some 8 min, 36 in DR 17 some 23 min', () => {
    const coolMin = (odIn: number): number => jointTimes({ odM: odIn * inch, minimumWallM: (odIn / 17) * inch, walks: false, procedure: null }).find((one) => one.step === 'cool')!.likelyS / 60
    expect(coolMin(12.75)).toBeCloseTo(11 * 0.75, 9)
    expect(coolMin(36)).toBeCloseTo((11 * 36) / 17, 9) // 23.3 min
  })
  it('add up to what crews report of a joint: 20 to 35 min for 12 in DR 17, 60 to 75 min for 36 in DR 17 with load and pull (common practice, no source)', () => {
    const cycleMin = (odIn: number): number => cycleS(jointTimes({ odM: odIn * inch, minimumWallM: (odIn / 17) * inch, walks: false, procedure: null })) / 60
    expect(cycleMin(12.75)).toBeGreaterThan(28) // 20 + load 5 + pull 3
    expect(cycleMin(12.75)).toBeLessThan(49) // 35 + 8 + 6
    expect(cycleMin(36)).toBeGreaterThan(68)
    expect(cycleMin(36)).toBeLessThan(89)
  })
  it("are those of the operator's own procedure where it gives one, without a spread", () => {
    const own = jointTimes({ odM: 0.3, minimumWallM: 0.02, walks: false, procedure: { soakS: 300, openCloseS: null, coolS: 900, holdBeforePullS: 1800 } })
    expect(own.filter(({ source }) => source === 'procedure').map(({ step: name, lowS, highS }) => [name, lowS, highS])).toEqual([['soak', 300, 300], ['cool', 900, 900], ['hold', 1800, 1800]])
  })
  it('run from low over likely to high in every step', () => {
    for (const { lowS, likelyS, highS } of jointTimes({ odM: 0.9, minimumWallM: 0.05, walks: true, procedure: null })) expect([lowS <= likelyS, likelyS <= highS]).toEqual([true, true])
  })
  it('refuse a pipe without a size by name', () => expect(() => jointTimes({ odM: 0, minimumWallM: 0.01, walks: false, procedure: null })).toThrow('odM'))
})

describe('the clock of a job', () => {
  it('sets one round after the other', () => {
    const clock = jobClock({ joints: 3, steps, which: 'likelyS', startMin: 420, endMin: null, breaks: [] })
    expect(clock.rows.map(({ loadMin, fuseMin, cooledMin, pulledMin }) => [loadMin, fuseMin, cooledMin, pulledMin])).toEqual([[420, 425, 445, 450], [450, 455, 475, 480], [480, 485, 505, 510]])
    expect([clock.days, clock.lastStartMin]).toEqual([1, null])
  })
  it('takes a break when the joint in hand is pulled, never between heating and cooling', () => {
    const clock = jobClock({ joints: 3, steps, which: 'likelyS', startMin: 420, endMin: null, breaks: [{ atMin: 430, lengthMin: 15 }] })
    // Joint 1 runs from 420 to 450; the break of 430 is taken then.
    expect(clock.rows.map(({ loadMin }) => loadMin)).toEqual([420, 465, 495])
  })
  it('takes up no stick whose joint would not cool before the end of the day', () => {
    // Last start = 500 − 25 = 475: joints at 420 and 450, the third on the next day.
    const clock = jobClock({ joints: 3, steps, which: 'likelyS', startMin: 420, endMin: 500, breaks: [] })
    expect([clock.lastStartMin, clock.days]).toEqual([475, 2])
    expect(clock.rows.map(({ day, loadMin }) => [day, loadMin])).toEqual([[0, 420], [0, 450], [1, 420]])
  })
  it('says so where not one joint fits into the day', () => {
    expect(jobClock({ joints: 2, steps, which: 'likelyS', startMin: 420, endMin: 440, breaks: [] })).toMatchObject({ rows: [], isTooLong: true })
    expect(jobClock({ joints: 2, steps, which: 'likelyS', startMin: 420, endMin: 450, breaks: [{ atMin: 420, lengthMin: 60 }] }).isTooLong).toBe(true)
  })
  it('has no rows for a job without joints, and refuses an end before the start', () => {
    expect(jobClock({ joints: 0, steps, which: 'likelyS', startMin: 0, endMin: null, breaks: [] }).rows).toEqual([])
    expect(() => jobClock({ joints: 1, steps, which: 'likelyS', startMin: 500, endMin: 400, breaks: [] })).toThrow('endMin')
  })
})
