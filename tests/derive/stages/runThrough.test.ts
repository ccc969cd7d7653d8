import { describe, expect, it } from 'vitest'
import { bodies, bodySolverOf } from '../../../src/derive/bodies.ts'
import { deriveSite } from '../../../src/derive/site.ts'
import { jointAlike } from '../../../src/derive/stages/bodiesAt.ts'
import { createRunMemory } from '../../../src/derive/stages/memory.ts'
import { runThroughOf, runThroughSteps } from '../../../src/derive/stages/runThrough.ts'
import type { RunThrough, StageResult } from '../../../src/derive/stages/types.ts'
import type { YardDocument } from '../../../src/scene/document.ts'
import { poundForceN } from '../../../src/units/factors.ts'
import { changed, ft, fusionYard, inch, withFigure } from '../../helpers/fusionYard.ts'
import { longYard } from '../../helpers/longYard.ts'

const spec = { size: '10', neededFt: 280, exits: [[12.5, 0], [25, 1.5], [35.67, 8.5], [46.4, 17.5], [57.1, 22.75]], rollers: Array.from({ length: 23 }, (_, i) => 67.83 + 11 * i) } as const
const runOf = (document: YardDocument): RunThrough => runThroughOf(deriveSite(document))
const stageOf = (run: RunThrough, id: string): StageResult => run.stages.find(({ stage }) => stage.id === id)!
const movedTo = (document: YardDocument, id: string, byM: number): YardDocument => changed(document, id, (record) => ('place' in record && record.place.at === 'onRun' ? { ...record, place: { ...record.place, runningM: record.place.runningM + byM } } : record))

describe('run-through', () => {
  const document = fusionYard(spec)
  const run = runOf(document)

  it('gives every stage its result, in order, as plain JSON', () => {
    expect(run.stages.map(({ stage }) => stage.index)).toEqual(run.stages.map((_, i) => i))
    expect(run.stages.every(({ status }) => status === 'ok')).toBe(true)
    expect(JSON.parse(JSON.stringify(run))).toEqual(run)
  })

  it('meets every support beyond stick 1 once, in the pull that brings the nose past it', () => {
    // Stick 1 is set by the loader and lies to 40 ft: E4 at 46.4 ft is the first; pull 1 brings the nose to 79 ft 11 1/8 in.
    const met = run.stages.flatMap(({ stage, arrivals }) => arrivals.map(({ label }) => `${stage.id} ${label}`))
    expect(met.slice(0, 4)).toEqual(['pull:1 E4', 'pull:1 E5', 'pull:1 G1', 'pull:1 G2'])
    expect(met).toHaveLength(25)
    expect(new Set(met.map((one) => one.split(' ')[1])).size).toBe(25)
  })

  it('feeds stick 1 through the machine past all stands where the job says so', () => {
    const fed = runOf(fusionYard({ ...spec, job: { firstStick: 'fedThrough' } }))
    expect(stageOf(fed, 'setUp').arrivals.map(({ label }) => label)).toEqual(['E1', 'E2', 'E3'])
    expect(stageOf(run, 'setUp').arrivals).toEqual([])
  })

  it('says of a free nose what it does at each support, and what lift with how much force it needs', () => {
    const free = runOf(changed(fusionYard({ ...spec, job: { noseHold: 'free' } }), 'stand:e5', (record) => ({ ...record, landingAid: 'liftByLoader' }) as never))
    const { arrivals } = stageOf(free, 'pull:1')
    expect(arrivals.map(({ label, outcome }) => `${label} ${outcome}`)).toEqual(['E4 ridesOn', 'E5 lifted', 'G1 hits', 'G2 hits'])
    for (const { outcome, liftM, liftN, droopM } of arrivals) {
      expect(liftM).toBe(outcome === 'ridesOn' ? 0 : droopM)
      if (outcome !== 'ridesOn') expect(liftN).toBeGreaterThan(0)
    }
    // G1 stands at 6 in and the nose lies on the ground before it.
    expect(arrivals[2]).toMatchObject({ isOnGround: true })
    expect(arrivals[2]!.droopM).toBeCloseTo(inch(6), 3)
  })

  it('lets a slung nose be held over each support, and hits it where the sling hangs too low', () => {
    expect(stageOf(run, 'pull:1').arrivals.map(({ outcome }) => outcome)).toEqual(['held', 'held', 'held', 'held'])
    // A sling at 2 in over the ground is under E5 (7 1/4 in), G1 and G2 (6 in) by more than their lead-in of OD/4 = 2 11/16 in; E4 takes the
    // nose in by itself.
    const low = runOf(fusionYard({ ...spec, job: { slingHeightM: { value: inch(2), basis: 'measured' } } }))
    expect(stageOf(low, 'pull:1').arrivals.map(({ label, outcome }) => `${label} ${outcome}`)).toEqual(['E4 held', 'E5 hits', 'G1 hits', 'G2 hits'])
  })

  it('holds more in the sling the higher it is hung', () => {
    const at = (heightIn: number): number => stageOf(runOf(fusionYard({ ...spec, job: { slingHeightM: { value: inch(heightIn), basis: 'measured' } } })), 'pull:3').arrivals[0]!.liftN!
    expect(at(10)).toBeGreaterThan(at(7))
  })

  it('finds the free end worst just short of a support, one spacing out', () => {
    const { freeEnd } = stageOf(run, 'pull:4')
    expect(freeEnd!.overhangM / ft(1)).toBeCloseTo(11 - 1 / 24, 1)
    const { arrivals } = stageOf(run, 'pull:4')
    expect(freeEnd!.dropM).toBeCloseTo(Math.max(...arrivals.map(({ droopM }) => droopM)), 3)
  })

  it('does the same however it is begun', () => {
    const from = runThroughOf(deriveSite(document), { from: 12 })
    expect({ ...from, counts: 0 }).toEqual({ ...run, counts: 0 })
    const first = runThroughSteps(deriveSite(document), { from: 12 }).next()
    expect(first.value).toMatchObject({ stage: { index: 12 } })
  })

  it('leaves beam figures out and keeps the pull where only the jaw height is unknown', () => {
    const noHeight = runOf(changed(document, 'machine:1', (record) => withFigure(record, 'jawHeightM', null)))
    expect(noHeight.missing.map(({ path }) => path)).toEqual(['figures.jawHeightM.value'])
    expect(noHeight.stages.every(({ status, arrivals, jaws }) => status === 'missing' && arrivals.length === 0 && jaws === null)).toBe(true)
    expect(stageOf(noHeight, 'pull:7').pull!.pullN).toBeGreaterThan(0)
  })

  it('has nothing but names where pipe and stick are unknown', () => {
    const empty = runOf(fusionYard({ ...spec, job: { pipe: null, stickLengthM: null } }))
    expect(empty.missing.map(({ path }) => path)).toEqual(['pipe', 'stickLengthM'])
    expect(empty.stages.every(({ pull, loads, bodies: lying }) => pull === null && loads.length === 0 && lying.length === 0)).toBe(true)
  })

  it('names a wall temperature for which no table has a modulus, and still gives the pull', () => {
    const frozen = runOf(fusionYard({ ...spec, job: { wallTemperatureC: { value: -90, basis: 'measured' } } }))
    expect(frozen.missing.map(({ path }) => path)).toEqual(['wallTemperatureC.value'])
    expect(frozen.stages.every(({ status }) => status === 'missing')).toBe(true)
    expect(stageOf(frozen, 'pull:7').pull!.pullN).toBeGreaterThan(0)
  })

  it('of one stick sets it up and lets it rest', () => {
    const one = runOf(fusionYard({ ...spec, neededFt: 40 }))
    expect(one.stages.map(({ stage, status }) => `${stage.id} ${status}`)).toEqual(['setUp ok', 'offload ok', 'move ok', 'rest ok', 'tieIn ok'])
    expect(one.hardestPullId).toBeNull()
  })

  it('reads jaws, loads and lifts as the checks do', () => {
    const site = deriveSite(document)
    const closed = bodySolverOf(site).solve(bodies.exitString(site, 3, 'closed'))!
    const { jaws } = stageOf(run, 'fuse:3')
    expect(jaws!.outerExitN).toBeCloseTo(closed.jaws.find(({ at }) => at === 'outer')!.forceN, 6)
    expect(stageOf(run, 'pull:3').opening!.liftedClearM).toBeGreaterThan(inch(1.5))
  })
})

describe('long strings', () => {
  const document = longYard()
  const site = deriveSite(document)
  const run = runThroughOf(site)

  it('are rehearsed joint by joint: 101 sticks, 305 stages, every support loaded', () => {
    expect(run.counts.stages).toBe(2 + 3 * 100 + 3)
    const bare = site.supports.filter(({ key, runningM }) => runningM < site.sticks.stringLengthM(101) && !run.loads.some((load) => load.key === key))
    expect(bare.map(({ label }) => label)).toEqual([])
  })

  it('feel at the jaws as a string of any length does once it reaches 14 supports and 60 m out', () => {
    const solver = bodySolverOf(site)
    const outer = (joint: number): number => solver.solve(bodies.exitString(site, joint, 'closed'))!.jaws.find(({ at }) => at === 'outer')!.forceN
    const alike = jointAlike(site, 100)
    expect(alike).toBeLessThan(10)
    for (const joint of [20, 60, 100]) expect(outer(joint) / outer(alike)).toBeCloseTo(1, 6)
  })

  it('carry as much as the whole string solved at once says', () => {
    // The whole string at pull 60 against what was found from cut bodies: a roller two spans behind the nose and one deep in the row.
    const whole = bodySolverOf(site).solve(bodies.pulled(site, 61, site.sticks.stringLengthM(61)))!
    const found = new Map(stageOf(run, 'pull:60').loads.map(({ key, loadN }) => [key, loadN]))
    const behind = whole.supports.filter(({ view }) => found.has(view.key))
    expect(behind.length).toBeGreaterThan(8)
    for (const { view, reactionN } of behind) expect(found.get(view.key)!, view.label).toBeGreaterThan(reactionN * 0.999)
  })

  it('take a few hundred small solves, and after one roller has moved only those with it under them', () => {
    const memory = createRunMemory()
    const first = runThroughOf(deriveSite(document), { memory })
    // 248 arrivals with their slings, 100 ends of pulls, the joints that differ, the feed, the rest.
    expect(first.counts.solves).toBeLessThan(700)
    const moved = movedTo(document, 'roller:120', 0.5)
    const second = runThroughOf(deriveSite(moved), { memory })
    // 15 arrivals have it in sight of the nose, each with its sling, six ends of pulls, and the string at rest.
    expect(second.counts.solves).toBeGreaterThan(10)
    expect(second.counts.solves).toBeLessThan(50)
    expect(second.counts.solves + second.counts.reused).toBe(first.counts.solves + first.counts.reused)
    expect({ ...second, counts: 0 }).toEqual({ ...runThroughOf(deriveSite(moved)), counts: 0 })
    expect(runThroughOf(deriveSite(moved), { memory }).counts.solves).toBe(0)
  })

  it('solves nothing again where only a plate changes, and shows the new label', () => {
    const memory = createRunMemory()
    runThroughOf(deriveSite(document), { memory })
    const rated = changed(document, 'roller:100', (record) => withFigure(record, 'ratedLoadN', 9000))
    expect(runThroughOf(deriveSite(rated), { memory }).counts.solves).toBe(0)
  })

  it('solves all of it again where the pipe warms up', () => {
    const memory = createRunMemory()
    const first = runThroughOf(deriveSite(document), { memory })
    const warm = runThroughOf(deriveSite(longYard({ job: { wallTemperatureC: { value: 45, basis: 'measured' } } })), { memory })
    expect(warm.counts.solves).toBeGreaterThanOrEqual(first.counts.solves)
  })

  it('keeps what a run broken off has solved', () => {
    const memory = createRunMemory()
    const steps = runThroughSteps(deriveSite(document), { memory })
    for (let i = 0; i < 150; i += 1) steps.next()
    const whole = runThroughOf(deriveSite(document), { memory })
    expect(whole.counts.reused).toBeGreaterThan(200)
  })
})

describe('the weights', () => {
  it('a roller two spans behind the nose carries about twice a span of pipe at worst', () => {
    // Derived in tests/derive/mechanics.test.ts: 2.03 w S.
    const run = runOf(fusionYard(spec))
    const site = deriveSite(fusionYard(spec))
    const load = run.loads.find(({ key }) => key === 'roller:10')!
    expect(load.loadN / (site.pipe.properties!.lineLoadNPerM * ft(11))).toBeCloseTo(2.02, 1)
    expect(load.loadN / poundForceN).toBeGreaterThan(150)
  })
})
