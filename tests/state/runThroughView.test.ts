import { describe, expect, it } from 'vitest'
import { profileAt } from '../../src/derive/profile.ts'
import { pullerAhead } from '../../src/derive/stages/pullerAhead.ts'
import { pullAtNoseN, pullBandOf } from '../../src/derive/stages/pullBand.ts'
import { runThroughOf } from '../../src/derive/stages/runThrough.ts'
import { stagesOf } from '../../src/derive/stages/stagesOf.ts'
import { deriveSite } from '../../src/derive/site.ts'
import { closeRunThrough, openRunThrough } from '../../src/state/runThroughMode.ts'
import { arrivalFrom, arrivalNoseM, intoSight, shownIndex, toNose, toStage } from '../../src/state/runThroughView.ts'
import { alongToPx } from '../../src/state/frames.ts'
import { initialView } from '../../src/state/viewStore.ts'
import { appOf } from '../canvas/appHarness.ts'
import type { YardRecord } from '../../src/scene/document.ts'
import { item, onRun } from '../helpers/documents.ts'
import { ft, fusionYard } from '../helpers/fusionYard.ts'

/** Five sticks of 40 ft: four joints. */
const yard = fusionYard({ size: '10', stickFt: 40, neededFt: 190, rollers: [60, 80, 100, 120, 140, 160, 180] })
const site = deriveSite(yard)
const stages = stagesOf(site)
const stageOfId = (id: string) => stages.find((stage) => stage.id === id)!
const endM = (sticks: number): number => site.sticks.stringLengthM(sticks)

describe('stages as the view shows them', () => {
  it('a stage and the view that shows it name each other', () => {
    for (const stage of stages) expect(shownIndex(stages, toStage(site, stage)), stage.id).toBe(stage.index)
  })
  it('a joint beyond the job is held to its last', () => {
    expect(shownIndex(stages, { phase: 'pull', joint: 99 })).toBe(stageOfId('pull:4').index)
    expect(shownIndex(stages, { phase: 'load', joint: 0 })).toBe(stageOfId('load:1').index)
  })
  it('a place of the nose leads to the pull it comes by there', () => {
    expect(toNose(stages, endM(2) + 1)).toEqual({ phase: 'pull', joint: 2, noseM: endM(2) + 1 })
    // The end of pull 1 is still pull 1.
    expect(toNose(stages, endM(2))).toEqual({ phase: 'pull', joint: 1, noseM: endM(2) })
  })
  it('a place no nose comes to is held to the first and the last pull', () => {
    expect(toNose(stages, -20)).toEqual({ phase: 'pull', joint: 1, noseM: endM(1) })
    expect(toNose(stages, 500)).toEqual({ phase: 'pull', joint: 4, noseM: endM(5) })
  })
  it('a job of one stick has no pull to go to', () => {
    expect(toNose(stagesOf(deriveSite(fusionYard({ size: '10', stickFt: 40, neededFt: 30 }))), 3)).toBeNull()
  })
})

describe('arrivals one after the other', () => {
  const { stages: results } = runThroughOf(site)
  it('steps through every arrival of the job in order, and back', () => {
    const seen: number[] = []
    let [index, noseM] = [0, -Infinity]
    for (let found = arrivalFrom(results, index, noseM, 1); found !== null; found = arrivalFrom(results, index, noseM, 1)) {
      ;[index, noseM] = [found.stage.index, arrivalNoseM(found.arrival)]
      seen.push(found.arrival.runningM)
    }
    const all = results.flatMap(({ stage, arrivals }) => (stage.phase === 'pull' ? arrivals.map(({ runningM }) => runningM) : []))
    expect(all.length).toBeGreaterThan(4)
    expect(seen).toEqual(all)
    const back = arrivalFrom(results, index, noseM, -1)
    expect(back?.arrival.runningM).toBe(all.at(-2))
  })
  it('stages that have not come yet have none', () => {
    expect(arrivalFrom([], 0, 0, 1)).toBeNull()
    expect(arrivalFrom(results.map((one) => (one.stage.joint === 1 ? one : undefined)), stageOfId('pull:1').index, Infinity, 1)).toBeNull()
  })
})

describe('the nose in sight', () => {
  const view = { ...initialView, pxPerM: 10, leftRunningM: 0, bandSizePx: { plan: { widthPx: 1000, heightPx: 400 }, section: { widthPx: 1000, heightPx: 300 } } }
  it('a place in sight leaves the sheet where it is', () => expect(intoSight(view, 50)).toEqual({}))
  it('a place off the sheet is brought to 62 % of it the way the string goes, whichever way the sheet is turned', () => {
    for (const [turned, atPx] of [[false, 620], [true, 380]] as const) {
      const moved = { ...view, turned, ...intoSight({ ...view, turned }, 300) }
      expect(alongToPx(moved, 300)).toBeCloseTo(atPx, 6)
    }
  })
  it('what a hand holds moves the sheet no more than has to be: to 90 % of it', () => {
    expect(alongToPx({ ...view, ...intoSight(view, 95, true) }, 95)).toBeCloseTo(900, 6)
  })
})

describe('the mode', () => {
  it('opens what was folded, and folds it again at its end', () => {
    const app = appOf(yard, { fold: { fromM: 20, toM: 40 } })
    openRunThrough(app)
    expect(app.view.getState()).toMatchObject({ runThrough: true, fold: null, noseM: null })
    app.view.setState({ phase: 'pull', joint: 2, noseM: endM(2) + 3 })
    expect(app.site.getState().profile.tipM).toBeCloseTo(endM(2) + 3, 9)
    closeRunThrough(app)
    expect(app.view.getState()).toMatchObject({ runThrough: false, fold: { fromM: 20, toM: 40 }, noseM: null })
    // Without a nose on its way the pull is shown at its end.
    expect(app.site.getState().profile.tipM).toBeCloseTo(endM(3), 9)
  })
})

describe('a sheet on which sticks are specks', () => {
  it('is brought nearer while the job is stepped through, and goes back', () => {
    const app = appOf(yard, { pxPerM: 2, leftRunningM: -100, midOffsetM: 7 })
    openRunThrough(app)
    expect(app.view.getState().pxPerM).toBeCloseTo(9.84, 9)
    closeRunThrough(app)
    expect(app.view.getState()).toMatchObject({ pxPerM: 2, leftRunningM: -100, midOffsetM: 7 })
  })
  it('stays as somebody has zoomed it since', () => {
    const app = appOf(yard, { pxPerM: 2, leftRunningM: -100 })
    openRunThrough(app)
    app.view.setState({ pxPerM: 30 })
    closeRunThrough(app)
    expect(app.view.getState().pxPerM).toBe(30)
  })
})

describe('the string on its way', () => {
  it('lies between the same ends as the engine’s own body at the end of the pull', () => {
    const end = profileAt(site, { phase: 'pull', joint: 3 })
    const on = profileAt(site, { phase: 'pull', joint: 3, tipM: endM(4) })
    expect(on.tipM).toBe(end.tipM)
    expect(on.bodies[0]!.result.ends.levelM[1]).toBeCloseTo(end.bodies[0]!.result.ends.levelM[1], 9)
  })
  it('the pull at the ends of a stage is the one the run-through found, and low friction never pulls harder', () => {
    const band = new Map((pullBandOf(site) ?? []).map((one) => [one.id, one]))
    for (const { stage, pull } of runThroughOf(site).stages) {
      if (pull === null) continue
      expect(pullAtNoseN(site, stage.sticks, stage.noseM!.from)).toBeCloseTo(pull.atStartN, 6)
      expect(pullAtNoseN(site, stage.sticks, stage.noseM!.to)).toBeCloseTo(pull.atEndN, 6)
      const { low, likely } = band.get(stage.id)!
      expect(low.toN).toBeLessThanOrEqual(likely.toN)
      expect(likely.toN).toBeLessThanOrEqual(pull.atEndN + 1e-9)
    }
    expect(band.size).toBe(4)
  })
  it('no band where a what-if has settled the friction', () => {
    expect(pullBandOf(deriveSite(yard, { whatIf: { friction: 'low' } }))).toBeNull()
  })
})

describe('the puller gone ahead', () => {
  it('a yard without one has none', () => expect(pullerAhead(site, { phase: 'pull', joint: 1 }, 20)).toBeNull())
  it('nothing goes ahead before a pull', () => expect(pullerAhead(site, { phase: 'fuse', joint: 1 }, 20)).toBeNull())
  const withPuller = (pullerKind: 'tractor' | 'winch') => {
    const puller = item('puller', 'puller:1', onRun(ft(230))) as Extract<YardRecord, { kind: 'puller' }>
    return deriveSite(fusionYard({ size: '10', stickFt: 40, neededFt: 190, more: [{ ...puller, pullerKind, figures: { ...puller.figures, ropeLengthM: { value: ft(20), basis: 'measured' } } }] }))
  }
  it('what drives stands the length of its rope ahead of the nose, on the run, its outline with it', () => {
    const pulled = withPuller('tractor')
    const drawn = [...pulled.placed.values()].find(({ kind }) => kind === 'puller')!
    const ahead = pullerAhead(pulled, { phase: 'pull', joint: 1 }, ft(50))!
    // 50 ft + 20 ft of rope.
    expect(ahead.runningM).toBeCloseTo(ft(70), 9)
    const place = pulled.atRunning(ft(70))
    expect(ahead.xM).toBeCloseTo(place.xM, 9)
    expect(ahead.yM).toBeCloseTo(place.yM, 9)
    // Moved along a straight run, nothing turned: every corner by the same 160 ft.
    expect(drawn.outlineM[0]! - ahead.outlineM[0]!).toBeCloseTo(drawn.xM - ahead.xM, 9)
    expect(drawn.outlineM[1]! - ahead.outlineM[1]!).toBeCloseTo(drawn.yM - ahead.yM, 9)
  })
  it('a winch stays where it stands', () => expect(pullerAhead(withPuller('winch'), { phase: 'pull', joint: 1 }, ft(50))).toBeNull())
})
