import { describe, expect, it } from 'vitest'
import type { Finding } from '../../src/checks/finding.ts'
import { runAction, showPlace, type ActionName } from '../../src/canvas/actions.ts'
import { toolContextOf } from '../../src/canvas/plan/toolContext.ts'
import { runEffect } from '../../src/canvas/plan/effects.ts'
import { runCommand } from '../../src/canvas/run.ts'
import type { App } from '../../src/state/app.ts'
import { free, item, onRun, yard } from '../helpers/documents.ts'
import { appOf } from './appHarness.ts'

const stands = (...runningM: number[]): ReturnType<typeof yard> => yard(...runningM.map((at) => item('stand', `stand:s${at}`, onRun(at))))
const runningOf = (app: App, id: string): number | null | undefined => app.site.getState().site.placed.get(id)?.runningM
const inchM = 0.0254

describe('actions of the plan', () => {
  it.each([
    ['nudgeRight', inchM], ['nudgeLeft', -inchM], ['nudgeRightFar', 12 * inchM], ['nudgeLeftFar', -12 * inchM],
  ] as const)('%s slides what stands on the line by %d m', (name, byM) => {
    const app = appOf(stands(5), { selection: ['stand:s5'] })
    runAction(app, name)
    expect(runningOf(app, 'stand:s5')).toBeCloseTo(5 + byM, 9)
  })

  it('right stays right when the sheet is turned round, and up is across the line', () => {
    const turned = appOf(stands(5), { selection: ['stand:s5'], turned: true })
    runAction(turned, 'nudgeRight')
    expect(runningOf(turned, 'stand:s5')).toBeCloseTo(5 - inchM, 9)
    const up = appOf(stands(5), { selection: ['stand:s5'] })
    runAction(up, 'nudgeUp')
    // Up the sheet is to the left looking down-string.
    expect(up.site.getState().site.placed.get('stand:s5')?.offsetM).toBeCloseTo(-inchM, 9)
  })

  it('a free item goes as the sheet shows, metric in 10 mm', () => {
    const document = yard(item('tree', 'tree:t', free(3, 4)))
    const metric = { records: { ...document.records, 'layout:this': { ...document.records['layout:this']!, displayUnits: 'metric' } } } as typeof document
    const app = appOf(metric, { selection: ['tree:t'], turned: true })
    runAction(app, 'nudgeRight')
    expect(app.site.getState().site.placed.get('tree:t')).toMatchObject({ xM: 2.99, yM: 4 })
  })

  it('a burst of the same nudge is one step of undo', () => {
    const app = appOf(stands(5), { selection: ['stand:s5'] })
    for (let i = 0; i < 5; i++) runAction(app, 'nudgeRight')
    expect(app.documents.getState().past).toHaveLength(1)
    runAction(app, 'undo')
    expect(runningOf(app, 'stand:s5')).toBe(5)
    runAction(app, 'redo')
    expect(runningOf(app, 'stand:s5')).toBeCloseTo(5 + 5 * inchM, 9)
  })

  it('hold still and a window that only reads refuse, and say so', () => {
    for (const freeze of [(app: App) => app.view.setState({ holdStill: true }), (app: App) => app.documents.getState().setWritable(false)]) {
      const app = appOf(stands(5), { selection: ['stand:s5'] })
      freeze(app)
      runAction(app, 'nudgeRight')
      expect(runningOf(app, 'stand:s5')).toBe(5)
      expect(app.view.getState().notice?.text).toMatch(/Held still|only reads/)
    }
  })

  it('a command that refuses is said, not thrown', () => {
    const app = appOf(stands(5))
    expect(runCommand(app, 'place', { kind: 'stand' })).toBe(false)
    expect(app.view.getState().notice?.text).toContain('missing')
  })

  it('delete offers the undo, locked items stay', () => {
    const app = appOf(stands(5, 9), { selection: ['stand:s5', 'stand:s9'] })
    runAction(app, 'lock')
    runAction(app, 'delete')
    expect(app.site.getState().site.placed.size).toBe(2)
    runAction(app, 'lock')
    runAction(app, 'delete')
    expect(app.site.getState().site.placed.size).toBe(0)
    expect(app.view.getState()).toMatchObject({ selection: [], notice: { undo: true } })
  })

  it('duplicate chooses the copies', () => {
    const app = appOf(stands(5), { selection: ['stand:s5'] })
    runAction(app, 'duplicate')
    expect(app.site.getState().site.placed.size).toBe(2)
    expect(app.view.getState().selection).toHaveLength(1)
    expect(app.view.getState().selection).not.toContain('stand:s5')
  })

  it('a copy can be pasted into another layout', async () => {
    const from = appOf(stands(5, 9), { selection: ['stand:s5', 'stand:s9'] })
    runAction(from, 'copy')
    const to = appOf(yard())
    runAction(to, 'paste')
    await Promise.resolve()
    await Promise.resolve()
    await new Promise((done) => setTimeout(done, 0))
    const places = [...to.site.getState().site.placed.values()].map(({ runningM }) => runningM ?? 0)
    expect(places).toHaveLength(2)
    expect(Math.abs(places[0]! - places[1]!)).toBeCloseTo(4, 6)
  })

  it('steps from item to item along the line and round again, bringing each into view', () => {
    const app = appOf(stands(90, 5, -4))
    const steps = Array.from({ length: 4 }, () => {
      runAction(app, 'nextItem')
      return app.view.getState().selection[0]
    })
    expect(steps).toEqual(['stand:s-4', 'stand:s5', 'stand:s90', 'stand:s-4'])
    runAction(app, 'previousItem')
    expect(app.view.getState().selection).toEqual(['stand:s90'])
    const { leftRunningM, pxPerM } = app.view.getState()
    expect(90 - leftRunningM).toBeLessThan(1072 / pxPerM)
  })

  it('all of a kind, hide it, show it', () => {
    const app = appOf(yard(item('stand', 'stand:a', onRun(5)), item('stand', 'stand:b', onRun(9)), item('tree', 'tree:t', free(0, 9))), { selection: ['stand:a'] })
    runAction(app, 'selectKind')
    expect(app.view.getState().selection).toEqual(['stand:a', 'stand:b'])
    runAction(app, 'hideKind')
    expect(app.view.getState()).toMatchObject({ hiddenKinds: ['stand'], selection: [] })
    runAction(app, 'selectAll')
    expect(app.view.getState().selection).toEqual(['tree:t'])
    runAction(app, 'showAllKinds')
    expect(app.view.getState().hiddenKinds).toEqual([])
  })

  it('Esc puts down the tool, then the measure, then the choice', () => {
    const app = appOf(stands(5), { tool: { name: 'measure' }, measure: { fromXM: 0, fromYM: 0, toXM: 1, toYM: 1 }, selection: ['stand:s5'] })
    const look = (): unknown[] => [app.view.getState().tool, app.view.getState().measure, app.view.getState().selection.length]
    runAction(app, 'escape')
    expect(look()[0]).toBeNull()
    runAction(app, 'escape')
    expect(look().slice(0, 2)).toEqual([null, null])
    runAction(app, 'escape')
    expect(look()).toEqual([null, null, 0])
  })

  it('next and previous finding open in reading order and show their place', () => {
    const app = appOf(stands(5, 200))
    const finding = (key: string, level: Finding['level'], itemIds: string[], isUnknown = false): Finding => ({ checkId: 'c', key, level, isUnknown, missing: [], itemIds, where: null, what: { text: { en: '', es: '' } }, measured: null, limit: null, margin: null, source: { class: 'mechanics', cite: '' }, phases: [], move: null, remedy: null })
    app.results.setState({ run: { findings: [finding('fix', 'FIX', ['stand:s200']), finding('met', 'met', []), finding('ask', 'CHECK', [], true), finding('stop', 'STOP', ['stand:s5'])], counts: { STOP: 1, FIX: 1, CHECK: 0, NOTE: 0, met: 1, toConfirm: 1 } } })
    runAction(app, 'nextFinding')
    expect(app.view.getState()).toMatchObject({ openFindingKey: 'stop', selection: ['stand:s5'] })
    const before = app.view.getState().leftRunningM
    runAction(app, 'nextFinding')
    expect(app.view.getState().openFindingKey).toBe('fix')
    expect(app.view.getState().leftRunningM).not.toBe(before)
    runAction(app, 'nextFinding')
    expect(app.view.getState().openFindingKey).toBe('stop')
    runAction(app, 'previousFinding')
    expect(app.view.getState().openFindingKey).toBe('fix')
  })

  it('everything else does its one thing and never throws on an empty layout', () => {
    const names: ActionName[] = ['spreadEvenly', 'reverse', 'holdStill', 'fit', 'zoomToSelection', 'previousView', 'zoomIn', 'zoomOut', 'panRight', 'panLeft', 'panUp', 'panDown', 'turnRound', 'northUp', 'snapping', 'measure', 'strip', 'bend', 'help', 'itemList', 'openTag', 'turnLeft', 'turnRight', 'raise', 'lower', 'cut', 'nextFinding', 'previousItem']
    const app = appOf({ records: { 'layout:this': yard().records['layout:this']!, 'job:this': yard().records['job:this']! } })
    for (const name of names) expect(() => runAction(app, name), name).not.toThrow()
    expect(app.view.getState()).toMatchObject({ holdStill: true, turned: true, orientation: 'northUp', snapping: false, panel: 'items', tool: { name: 'place', kind: 'bend' } })
  })

  it('spread evenly keeps the ends', () => {
    const app = appOf(stands(4, 5, 10), { selection: ['stand:s4', 'stand:s5', 'stand:s10'] })
    runAction(app, 'spreadEvenly')
    expect(runningOf(app, 'stand:s5')).toBeCloseTo(7, 9)
  })
})

describe('effects of the tools', () => {
  it('a drag of one stand is one step called by its label; cancelling leaves the document as it was', () => {
    const app = appOf(stands(5))
    const label = { text: { en: 'move E1', es: 'mover E1' } }
    runEffect(app, { do: 'begin', label })
    for (const dxM of [1, 2, 3]) runEffect(app, { do: 'preview', command: 'moveBy', args: { ids: ['stand:s5'], dxM, dyM: 0 } })
    expect(runningOf(app, 'stand:s5')).toBeCloseTo(8, 9)
    runEffect(app, { do: 'commit' })
    expect(app.documents.getState().past.map((entry) => entry.label)).toEqual([label])
    const committed = app.documents.getState().document
    runEffect(app, { do: 'begin', label })
    runEffect(app, { do: 'preview', command: 'moveBy', args: { ids: ['stand:s5'], dxM: 9, dyM: 0 } })
    runEffect(app, { do: 'cancelPreview' })
    expect(app.documents.getState().document).toBe(committed)
    expect(runningOf(app, 'stand:s5')).toBeCloseTo(8, 9)
  })

  it('a preview that its command refuses leaves the one before standing', () => {
    const app = appOf(stands(5))
    runEffect(app, { do: 'preview', command: 'moveBy', args: { ids: ['stand:s5'], dxM: 2, dyM: 0 } })
    runEffect(app, { do: 'preview', command: 'moveBy', args: { ids: ['stand:s5'], dxM: 'far', dyM: 0 } })
    expect(runningOf(app, 'stand:s5')).toBeCloseTo(7, 9)
  })

  it('a dragged machine is measured by the axis it leaves, not by the one it carries', () => {
    const app = appOf(yard(item('machine', 'machine:m', onRun(0))))
    toolContextOf(app, [])
    runEffect(app, { do: 'preview', command: 'moveBy', args: { ids: ['machine:m'], dxM: 3, dyM: 2 } })
    expect(app.site.getState().site.setUp?.datum).toEqual({ xM: 3, yM: 2 })
    expect(toolContextOf(app, []).toRunning(3, 2)).toEqual({ runningM: 3, offsetM: -2 })
    runEffect(app, { do: 'commit' })
    expect(toolContextOf(app, []).toRunning(3, 2)).toEqual({ runningM: 0, offsetM: 0 })
  })

  it('a place shown comes into view', () => {
    const app = appOf(stands(5))
    showPlace(app, 400, 0)
    expect(app.view.getState().leftRunningM).toBeGreaterThan(300)
  })
})
