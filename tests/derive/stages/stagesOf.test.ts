import { describe, expect, it } from 'vitest'
import { deriveSite } from '../../../src/derive/site.ts'
import { bodiesAt } from '../../../src/derive/stages/bodiesAt.ts'
import { readStageId, shownAt, stagesOf } from '../../../src/derive/stages/stagesOf.ts'
import { footM, inchM } from '../../../src/units/factors.ts'
import { ft, fusionYard } from '../../helpers/fusionYard.ts'

const yard = (spec: Parameters<typeof fusionYard>[0] = {}) => deriveSite(fusionYard({ size: '10', neededFt: 280, job: { jointLossM: { value: 0.875 * inchM, basis: 'measured' } }, ...spec }))

describe('stages of the job', () => {
  it('are set-up, offload, three for each joint, then move, rest, tie-in', () => {
    // 280 ft of 40 ft sticks with 7/8 in lost a joint: seven sticks come up short, so eight and seven joints.
    const ids = stagesOf(yard()).map(({ id }) => id)
    expect(ids.slice(0, 5)).toEqual(['setUp', 'offload', 'load:1', 'fuse:1', 'pull:1'])
    expect(ids.slice(-4)).toEqual(['pull:7', 'move', 'rest', 'tieIn'])
    expect(ids).toHaveLength(2 + 3 * 7 + 3)
    expect(new Set(ids).size).toBe(ids.length)
  })

  it('carry the sticks and the way of the nose: L(k) while joint k is made, to L(k + 1) in the pull after it', () => {
    // L(k) = 40 k − 7/8 (k − 1) in.
    const stages = stagesOf(yard())
    const at = (id: string) => stages.find((stage) => stage.id === id)!
    expect(at('fuse:3').sticks).toBe(3)
    expect(at('fuse:3').noseM!.from / footM).toBeCloseTo(120 - (2 * 0.875) / 12, 9)
    expect(at('pull:3').sticks).toBe(4)
    expect(at('pull:3').noseM!.to / footM).toBeCloseTo(160 - (3 * 0.875) / 12, 9)
    expect(at('rest').noseM!.to / footM).toBeCloseTo(320 - (7 * 0.875) / 12, 9)
  })

  it('share one stage between clamp, face, heat, join, cool, and open, lift and pull in that order', () => {
    const stages = stagesOf(yard())
    expect(stages.find(({ id }) => id === 'fuse:1')!.steps).toEqual(['clamp', 'face', 'heat', 'join', 'cool'])
    expect(stages.find(({ id }) => id === 'pull:1')!.steps).toEqual(['open', 'lift', 'pull'])
  })

  it('of one stick have no joint', () => {
    expect(stagesOf(yard({ neededFt: 40 })).map(({ id }) => id)).toEqual(['setUp', 'offload', 'move', 'rest', 'tieIn'])
  })

  it('are spelt by their ids, which read back', () => {
    for (const { id, phase, joint } of stagesOf(yard())) expect(readStageId(id)).toEqual({ phase, joint })
    for (const id of ['pull', 'pull:0', 'rest:1', 'pull:1.5', 'fuse:-2', '']) expect(readStageId(id)).toBeNull()
  })

  it('ask plan and side view for a place inside a pull only in a pull', () => {
    const site = yard()
    const stages = stagesOf(site)
    expect(shownAt(site, stages.find(({ id }) => id === 'pull:2')!, 30)).toEqual({ phase: 'pull', joint: 2, tipM: 30 })
    expect(shownAt(site, stages.find(({ id }) => id === 'fuse:2')!, 30)).toEqual({ phase: 'fuse', joint: 2 })
    expect(shownAt(site, stages.at(-1)!)).toEqual({ phase: 'tieIn', joint: 7 })
  })
})

describe('which pipe lies where', () => {
  const site = yard()
  const of = (id: string) => bodiesAt(site, stagesOf(site).find((stage) => stage.id === id)!).map(({ name, startM, endM, infeedJaws, exitJaws, lifts, at }) => [at, name, Math.round(startM / footM), Math.round(endM / footM), infeedJaws, exitJaws, lifts])
  it('is two bodies in four clamps while joint k is fused', () => {
    expect(of('fuse:2')).toEqual([['whole', 'stick', -40, 0, 'closed', 'out', false], ['whole', 'string', 0, 80, 'out', 'closed', false]])
  })
  it('is one body when the jaws open, then on the lifts, then with its tail at the datum', () => {
    expect(of('pull:2')).toEqual([['opened', 'string', -40, 80, 'open', 'open', false], ['lifted', 'string', -40, 80, 'out', 'out', true], ['end', 'string', 0, 120, 'out', 'out', true]])
  })
  it('is the stick on the rack, then in the open infeed jaws, with the string clamped, while it is loaded', () => {
    // Middle of the stick over the middle of the rack at −20 ft: its front end at 0, held to the joint plane.
    expect(of('load:2')).toEqual([['start', 'stick', -40, 0, 'open', 'out', true], ['end', 'stick', -40, 0, 'open', 'out', false], ['whole', 'string', 0, 80, 'out', 'closed', false]])
  })
  it('is nothing on the line while the truck is unloaded', () => expect(of('offload')).toEqual([]))
  it('is the whole string at rest', () => expect(of('rest').map(([, name, from, to]) => [name, from, to])).toEqual([['string', 0, Math.round(320 - (7 * 0.875) / 12)]]))
  it('is nothing where the stick length is unknown', () => {
    const unknown = yard({ job: { stickLengthM: null } })
    expect(stagesOf(unknown).flatMap((stage) => bodiesAt(unknown, stage))).toEqual([])
  })
  it('needs a rack set back to show the stick on it', () => {
    const back = yard({ rackFt: -45 })
    const [first] = bodiesAt(back, stagesOf(back).find(({ id }) => id === 'load:1')!)
    expect(first!.endM).toBeCloseTo(ft(-25), 6)
  })
})
