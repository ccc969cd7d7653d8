import { describe, expect, it } from 'vitest'
import type { StageArrival, StageResult } from '../../src/derive/stages/types.ts'
import { deriveSite } from '../../src/derive/site.ts'
import { runThroughOf } from '../../src/derive/stages/runThrough.ts'
import { stagesOf } from '../../src/derive/stages/stagesOf.ts'
import { levelsByStage } from '../../src/checks/stageLevels.ts'
import { runThroughWords } from '../../src/messages/ui/runThroughWords.ts'
import { placeholdersOf } from '../../src/messages/render.ts'
import { wordsFor } from '../../src/ui/context.tsx'
import { niceStep, pullPieces, pullScale } from '../../src/ui/runThrough/pullCurve.ts'
import { nowSentence } from '../../src/ui/runThrough/stageNames.ts'
import { stripPieces, worstStage } from '../../src/ui/runThrough/stripJoints.ts'
import { arrivalWords, firstToDo, happens, toDo } from '../../src/ui/runThrough/toDo.ts'
import { poundForceN } from '../../src/units/factors.ts'
import { fusionYard } from '../helpers/fusionYard.ts'

const site = deriveSite(fusionYard({ size: '10', stickFt: 40, neededFt: 190, rollers: [60, 80, 100, 120, 140, 160, 180] }))
const { stages: results } = runThroughOf(site)
const stages = stagesOf(site)
const pull2 = results.find(({ stage }) => stage.id === 'pull:2')!
const words = wordsFor('en', 'feetInches', false)

const arrival = (over: Partial<StageArrival>): StageArrival => ({
  key: 'e5', label: 'E5', runningM: 20, topLevelM: 0.3, tipLevelM: 0.15, droopM: 0.1524, leadInM: 0.0667, outcome: 'lifted', liftM: 0.1524, liftN: 52 * poundForceN, loaderN: null, isOnGround: false, ...over,
})
const withArrivals = (...arrivals: StageArrival[]): StageResult => ({ ...pull2, arrivals, opening: null, drag: null, feed: null })

describe('what to do at a stage', () => {
  it('says the lift with its place and force', () => {
    const result = withArrivals(arrival({}))
    expect(nowSentence(happens(result.stage), firstToDo(result, null), words)).toMatch(/^The string is pulled one stick on, to .*: lift the nose at E5 with 52 lb\.$/)
  })
  it('a nose that nothing lifts leads before one that is lifted', () => {
    const result = withArrivals(arrival({}), arrival({ label: 'G1', runningM: 24, outcome: 'hits', droopM: 0.2, liftN: 68 * poundForceN }))
    expect(words.local(firstToDo(result, null)!.text, firstToDo(result, null)!.values)).toBe('the nose hits G1, 7\u2009⅞ in low: it would take 68 lb to lift it')
    // On its way what comes next leads.
    expect(firstToDo(result, 15)!.values['label']).toBe('E5')
    expect(firstToDo(result, 21)!.values['label']).toBe('G1')
  })
  it('a force nobody knows is not written as nought', () => {
    expect(arrivalWords(arrival({ liftN: null })).text).toBe(runThroughWords.liftedUnknown)
    expect(arrivalWords(arrival({ outcome: 'held', liftN: null })).text).toBe(runThroughWords.heldUnknown)
  })
  it('a nose that rides on asks for nothing', () => expect(toDo(withArrivals(arrival({ outcome: 'ridesOn' })), null)).toEqual([]))
  it('the string is held before the jaws open, before anything else', () => {
    const result: StageResult = { ...withArrivals(arrival({})), opening: { springsByM: { infeed: 0, exit: 0 }, springN: { infeed: 0, exit: 0 }, liftedClearM: null, holdFirst: ['exit'] } }
    expect(toDo(result, null).map(({ text }) => text)).toEqual([runThroughWords.doHold, runThroughWords.doLift])
    expect(firstToDo(result, null)!.text).toBe(runThroughWords.doHold)
  })
  it('drag without a piston area says that it is not known', () => {
    const fuse = results.find(({ stage }) => stage.phase === 'fuse')!
    const drag = { ...fuse, drag: { side: 'infeed' as const, movingN: 100, startN: 140, lowN: 20, pressurePa: null, fusionForceN: 0, fusionPressurePa: null } }
    expect(toDo(drag, null).map(({ text }) => text)).toContain(runThroughWords.doDrag)
  })
  it('both languages name the same values', () => {
    for (const [key, { en, es }] of Object.entries(runThroughWords)) expect(placeholdersOf(es).toSorted(), key).toEqual(placeholdersOf(en).toSorted())
  })
})

describe('the strip along the tape', () => {
  it('every stage stands in it once, in order, over the way of its pull', () => {
    const pieces = stripPieces(stages, 1)
    expect(pieces.flatMap((piece) => piece.stages.map(({ id }) => id))).toEqual(stages.map(({ id }) => id))
    const [second] = pieces.filter((piece) => piece.stages.some(({ id }) => id === 'pull:2'))
    expect([second!.fromM, second!.toM]).toEqual([site.sticks.stringLengthM(2), site.sticks.stringLengthM(3)])
  })
  it('joints nearer together than a thumb share a piece', () => {
    // Four pulls of 12.19 m: pieces of at least 20 m hold two joints each.
    const pieces = stripPieces(stages, 20)
    expect(pieces.map((piece) => piece.stages.length)).toEqual([2, 6, 6, 3])
  })
  it('the worst finding decides the mark, and a tap goes to the stage that has it', () => {
    const finding = { level: 'FIX', phases: ['pull'], joints: [3] } as never
    const check = { level: 'CHECK', phases: ['load'] } as never
    const byStage = levelsByStage(stages, [finding, check])
    expect(worstStage(stages, byStage)).toMatchObject({ level: 'FIX', stage: { id: 'pull:3' } })
    expect(worstStage(stages.filter(({ phase }) => phase === 'rest'), byStage)).toMatchObject({ level: null, stage: { id: 'rest' } })
  })
})

describe('the pull curve', () => {
  const pieces = pullPieces(results)
  it('has a piece a pull, from nose to nose, and none of what has not come', () => {
    expect(pieces.map(({ id }) => id)).toEqual(['pull:1', 'pull:2', 'pull:3', 'pull:4'])
    expect(pieces[1]!.fromM).toBeCloseTo(pieces[0]!.toM, 9)
    expect(pullPieces([undefined, pull2]).map(({ id }) => id)).toEqual(['pull:2'])
  })
  it('is over where what it takes to start passes the smallest limit known', () => {
    const needN = pull2.pull!.needN
    const held = (ropeN: number | null): StageResult => ({ ...pull2, pull: { ...pull2.pull!, ropeN, allowableN: 10 * needN, usableTowN: null } })
    expect(pullPieces([held(0.9 * needN)])[0]!.overN).toBeCloseTo(0.9 * needN, 9)
    expect(pullPieces([held(1.1 * needN)])[0]!.overN).toBeNull()
    // No rope is no limit, not a limit of nought.
    expect(pullPieces([held(null)])[0]!.overN).toBeNull()
  })
  it('a limit far over the curve is named and not drawn', () => {
    const needN = Math.max(...pieces.map(({ start }) => start.needN))
    const limited = pieces.map((piece) => ({ ...piece, limits: { pipe: 40 * needN, puller: 2 * needN, rope: null } }))
    const scale = pullScale(limited, 'feetInches', 120)
    expect(scale.shown).toEqual(['puller'])
    expect(scale.above).toEqual([{ name: 'pipe', valueN: 40 * needN }])
    expect(scale.topN).toBeCloseTo(2 * needN * 1.12, 6)
  })
  it('steps in whole pounds or newtons', () => {
    expect([0.7, 1, 1.1, 2.2, 3, 6, 30, 210].map(niceStep)).toEqual([1, 1, 2, 2.5, 5, 10, 50, 250])
    expect((pullScale(pieces, 'feetInches', 120).stepN / poundForceN) % 1).toBeCloseTo(0, 6)
  })
})
