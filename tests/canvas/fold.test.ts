import { describe, expect, it } from 'vitest'
import { runAction } from '../../src/canvas/actions.ts'
import { clearOfEdges } from '../../src/canvas/foldDrawing.ts'
import { keepFold } from '../../src/canvas/foldKeeper.ts'
import { spanDimension } from '../../src/canvas/plan/guides.ts'
import { placeLabels } from '../../src/canvas/plan/labels.ts'
import { isInPart, partsOf, pictureOf } from '../../src/canvas/plan/picture.ts'
import { handlesShown, toolContextOf } from '../../src/canvas/plan/toolContext.ts'
import { layoutFlags } from '../../src/canvas/tape/flagLayout.ts'
import { foldedParts, tapeFrame } from '../../src/canvas/tape/tapeFrame.ts'
import { flagIdle, stepFlag, type FlagContext, type FlagState } from '../../src/canvas/tools/flagDrag.ts'
import { anchored, broughtIn, centredOn, fitAll, foldOpened, previousView, turnedRound, withOrientation, zoomToItems } from '../../src/canvas/viewMoves.ts'
import type { Primitive } from '../../src/drawing/primitives.ts'
import type { CheckRun, Finding } from '../../src/checks/finding.ts'
import type { App } from '../../src/state/app.ts'
import { alongToPx, foldOf, planToPx } from '../../src/state/frames.ts'
import { initialView, type ViewState } from '../../src/state/viewStore.ts'
import { ft, fusionYard } from '../helpers/fusionYard.ts'
import { item, onRun, setUp as setUpRecord } from '../helpers/documents.ts'
import { appOf } from './appHarness.ts'
import { harness } from './toolHarness.ts'

/** 1,000 px at 10 px/m from −20 m; 20 to 80 m folded into 30 px: the fold lies from 400 to 430 px. */
const folded = (over: Partial<ViewState> = {}): ViewState => ({
  ...initialView, pxPerM: 10, leftRunningM: -20, midOffsetM: 0, fold: { fromM: 20, toM: 80 }, bandSizePx: { plan: { widthPx: 1000, heightPx: 500 }, section: { widthPx: 1000, heightPx: 300 } }, ...over,
})
const level = setUpRecord()

describe('moves of a folded view', () => {
  it('a point beyond the fold is brought to the middle with the fold standing', () => {
    const after = { ...folded(), ...centredOn(folded(), level, 150, 0) }
    expect(after.fold).toEqual({ fromM: 20, toM: 80 })
    expect(planToPx(after, level, 150, 0)).toEqual({ xPx: 500, yPx: 250 })
  })

  it('a point folded away opens the fold, unless the fold may stand for it', () => {
    const after = { ...folded(), ...broughtIn(folded(), level, 50, 0) }
    expect(after.fold).toBeNull()
    expect(planToPx(after, level, 50, 0)).toEqual({ xPx: 500, yPx: 250 })
    expect(broughtIn(folded(), level, 50, 0, false)).toEqual({})
    expect(broughtIn(folded(), level, 90, 0)).toEqual({})
  })

  it('fit, zoom to a choice, turning and north up open it; back folds it again', () => {
    const { site } = appOf(fusionYard()).site.getState()
    const before = folded()
    for (const change of [fitAll(before, site, null), zoomToItems(before, site, ['machine:1']), turnedRound(before, level), withOrientation(before, level, 'northUp')]) expect(change.fold).toBeNull()
    const fit = { ...before, ...fitAll(before, site, null) }
    expect(previousView(fit)).toMatchObject({ fold: { fromM: 20, toM: 80 }, pxPerM: 10, leftRunningM: -20 })
  })

  it('opened at the same scale, what was hidden follows where the near edge was, or further in', () => {
    // The near edge at 400 px comes to 300 px, three tenths of the tape.
    const open = { ...folded(), ...foldOpened(folded()) }
    expect([open.fold, open.pxPerM]).toEqual([null, 10])
    expect(alongToPx(open, 20)).toBeCloseTo(300, 9)
    const near = folded({ leftRunningM: 5 })
    expect(alongToPx({ ...near, ...foldOpened(near) }, 20)).toBeCloseTo(150, 9)
  })

  it('when datum and axis move, the part before the fold keeps its place', () => {
    const after = setUpRecord({ datum: { xM: 3, yM: 1 } })
    const moved = { ...folded(), ...anchored(folded(), level, after) }
    const [was, now] = [planToPx(folded(), level, 5, 2), planToPx(moved, after, 5, 2)]
    expect(now.xPx).toBeCloseTo(was.xPx, 9)
    expect(now.yPx).toBeCloseTo(was.yPx, 9)
  })
})

describe('tools on a folded sheet', () => {
  const document = fusionYard({ rollers: [70, 150, 300], more: [item('boundary', 'boundary:1', [{ xM: -15, yM: -10 }, { xM: 110, yM: -10 }, { xM: 110, yM: 10 }, { xM: -15, yM: 10 }])] })

  it('what is folded away is neither hit nor boxed', () => {
    const at = ft(150)
    const open = harness(document)
    expect(open.tap(at, 0)).toEqual([{ do: 'select', ids: ['roller:2'] }])
    const closed = harness(document, { folded: { fromM: ft(100), toM: ft(250) } })
    expect(closed.tap(at, 0)).toEqual([])
    closed.down(ft(60), 3, { shift: true })
    closed.move(ft(310), -3, { shift: true })
    expect(closed.up(ft(310), -3, { shift: true }).find((effect) => effect.do === 'select')).toEqual({ do: 'select', ids: ['roller:1', 'roller:3'] })
  })

  it('handles of a feature that runs through the fold stand on either side of it', () => {
    const app = appOf(document, folded({ selection: ['boundary:1'], fold: { fromM: 20, toM: 60 }, leftRunningM: -20 }))
    const { site } = app.site.getState()
    const context = toolContextOf(app, [])
    expect(context.folded).toEqual({ fromM: 20, toM: 60 })
    const corners = context.handles.filter(({ kind }) => kind === 'vertex')
    expect(corners.map(({ index, xPx }) => [index, Math.round(xPx)])).toEqual([[0, 50], [3, 50], [1, 930], [2, 930]])
    // The middles of the long sides are 47.5 m along: folded away.
    expect(handlesShown(app.view.getState(), site.setUp, []).length).toBe(0)
    expect(context.handles.filter(({ kind }) => kind === 'middle').every(({ xPx }) => xPx < 60 || xPx > 900)).toBe(true)
  })

  it('gear stands in one part of the plan, features in both', () => {
    const app = appOf(document, folded({ fold: { fromM: ft(100), toM: ft(250) } }))
    const parts = partsOf(pictureOf(app, false, false))
    const { placed } = app.site.getState().site
    const partsOfItem = (id: string): string[] => parts.filter((part) => isInPart(placed.get(id)!, part)).map(({ part }) => part)
    expect(partsOfItem('roller:1')).toEqual(['before'])
    expect(partsOfItem('roller:2')).toEqual([])
    expect(partsOfItem('roller:3')).toEqual(['after'])
    expect(partsOfItem('boundary:1')).toEqual(['before', 'after'])
    expect(partsOf(pictureOf(appOf(document), false, false))).toHaveLength(1)
  })

  it('a flag slides up to the fold, not into it', () => {
    const context: FlagContext = {
      flags: [{ key: 'G1', itemId: 'roller:1', label: 'G1', runningM: 90, canSlide: true, saddleM: 0.15, jawLineSaddleM: null, isLocked: false }], selection: ['roller:1'], frozen: false, snapping: true,
      system: 'metric', pxPerM: 10, pxPerLevelM: 50, alongSign: 1, toRunning: (px) => px / 10, allows: 'both', placesOnTap: true, folded: { fromM: 20, toM: 80.2 },
    }
    let state: FlagState = flagIdle
    const press = { pointerId: 1, pointer: 'mouse' as const, acrossPx: 0, alt: false }
    for (const event of [{ type: 'down', key: 'G1', alongPx: 500, ...press }, { type: 'move', alongPx: 300, ...press }] as const) state = stepFlag(state, event, context).state
    // 200 px back would be 70 m; the round half metre at 80.0 m lies in the fold.
    expect(state).toMatchObject({ name: 'sliding', runningM: 80.2, snap: 'none' })
  })
})

describe('words and flags beside the fold', () => {
  it('a flag that would hang over the fold hangs to the other side of its pole', () => {
    const [place] = layoutFlags([{ key: 'G2', alongPx: 380, sizePx: 42, rank: 3 }], { rows: 2, gapPx: 2, primary: 1, blocked: { fromPx: 400, toPx: 430 } })
    expect(place).toMatchObject({ hang: -1, startPx: 338, row: 0 })
  })

  it('words that would run into the fold are left out: 4 px before it, 8 px beyond', () => {
    const matrix = { a: 10, b: 0, c: 0, d: -1, e: 200, f: 0 }
    const word = (xM: number, align: 'left' | 'right'): Primitive => ({ t: 'text', xM, yM: 0, text: 'sag', sizePx: 12, align })
    const line: Primitive = { t: 'path', points: [0, 0, 40, 0] }
    const before = clearOfEdges([word(19.5, 'right'), word(19.7, 'right'), word(19.5, 'left'), line], matrix, { x0: 0, x1: 400 }, 1000)
    expect(before).toEqual([word(19.5, 'right'), line])
    const after = clearOfEdges([word(23.7, 'left'), word(23.9, 'left')], matrix, { x0: 430, x1: 1000 }, 1000)
    expect(after).toEqual([word(23.9, 'left')])
    // The edge of the band is no fold.
    expect(clearOfEdges([word(-25, 'left')], matrix, { x0: 0, x1: 1000 }, 1000)).toHaveLength(1)
  })

  it('labels keep inside their part', () => {
    const request = { id: 'a', box: { x0: 380, y0: 240, x1: 390, y1: 250 }, widthPx: 40, heightPx: 13, rank: 4 }
    const [place] = placeLabels([request], [], { widthPx: 1000, heightPx: 500 }, { x0: 0, y0: 0, x1: 398, y1: 500 })
    expect(place!.xPx + 40).toBeLessThanOrEqual(398)
    expect(placeLabels([request], [], { widthPx: 1000, heightPx: 500 }, { x0: 436, y0: 0, x1: 1000, y1: 500 })).toEqual([])
  })

  it('figures of a dimension across the fold stand beside it', () => {
    const figures = spanDimension({ xPx: 300, yPx: 100 }, { xPx: 520, yPx: 100 }, '200 ft', { x0: 400, x1: 430 }).find((shape) => shape.t === 'text')
    expect(figures).toBeDefined()
    const at = (figures as { xM: number }).xM
    expect(at < 380 || at > 450).toBe(true)
    expect(spanDimension({ xPx: 300, yPx: 100 }, { xPx: 520, yPx: 100 }, '200 ft')).toContainEqual(expect.objectContaining({ t: 'text', xM: 410 }))
  })

  it('the tape is drawn in two pieces that meet the fold', () => {
    const { parts, drawnM, matrix } = tapeFrame(folded(), 1000, 56, false)
    expect(parts.map(({ fromM, toM, x0, x1 }) => [fromM, toM, x0, x1])).toEqual([[-20, 20, 0, 400], [80, 137, 430, 1000]])
    // 100 m by the second piece's own matrix, and as a flag by the first with the drawn distance: 630 px both.
    expect(parts[1]!.matrix.a * 100 + parts[1]!.matrix.e).toBeCloseTo(630, 9)
    expect(matrix.a * drawnM(100) + matrix.e).toBeCloseTo(630, 9)
    expect(foldedParts({ ...folded(), fold: null }, matrix, -20, 80, 1000)).toEqual([{ fromM: -20, toM: 80, matrix, x0: 0, x1: 1000 }])
  })
})

describe('the fold kept true', () => {
  const rollers = Array.from({ length: 16 }, (_, i) => 60 + 20 * i)
  const opened = (): { app: App; stop: () => void } => {
    const app = appOf(fusionYard({ neededFt: 340, rollers, more: [item('puller', 'puller:1', onRun(ft(400)))] }))
    runAction(app, 'fold')
    return { app, stop: keepFold(app) }
  }
  const foldIn = (app: App): [number, number] | null => {
    const { fold } = app.view.getState()
    return fold === null ? null : [fold.fromM / 0.3048, fold.toM / 0.3048]
  }

  it('the action folds, and opens what is folded; a sheet with nothing to fold says so', () => {
    const { app, stop } = opened()
    expect(foldIn(app)![1]).toBeCloseTo(358, 6)
    expect(app.view.getState().pxPerM * 0.3048).toBeCloseTo(4.7, 9)
    runAction(app, 'fold')
    expect(foldIn(app)).toBeNull()
    stop()
    const short = appOf(fusionYard())
    runAction(short, 'fold')
    expect(foldIn(short)).toBeNull()
    expect(short.view.getState().notice?.text).toMatch(/^Nothing to fold/)
  })

  it('opens about an item that is chosen in it', () => {
    const { app, stop } = opened()
    app.view.setState({ selection: ['roller:9'] })
    expect(foldIn(app)).toBeNull()
    expect(alongToPx(app.view.getState(), ft(220))).toBeCloseTo(initialView.bandSizePx.plan.widthPx / 2, 6)
    stop()
  })

  it('shrinks round a finding that comes up in it, and where an edit breaks the row', () => {
    const { app, stop } = opened()
    const [fromFt] = foldIn(app)!
    const finding = { checkId: 'sag', key: 'sag@g', level: 'FIX', isUnknown: false, missing: [], itemIds: ['roller:13'], where: { at: 'run', runningM: ft(300), levelM: null, offsetM: 0 } } as unknown as Finding
    app.results.setState({ run: { findings: [finding], counts: {} } as unknown as CheckRun })
    expect(foldIn(app)![0]).toBeCloseTo(fromFt, 9)
    expect(foldIn(app)![1]).toBeLessThan(300)
    app.results.setState({ run: null })
    // The finding is mended: the fold is as it was laid.
    expect(foldIn(app)![1]).toBeCloseTo(358, 6)
    app.command('moveBy', { ids: ['roller:11'], dxM: ft(4), dyM: 0 })
    expect(foldIn(app)![1]).toBeLessThan(260)
    stop()
  })

  it('gives way to the nose as the string grows, and closes again behind it', () => {
    const { app, stop } = opened()
    const [fromFt, toFt] = foldIn(app)!
    app.view.setState({ joint: 5 })
    const tipFt = app.site.getState().profile.tipM! / 0.3048
    // Five joints lie up to the nose of the string being made, well inside the fold.
    expect(tipFt).toBeGreaterThan(fromFt + 20)
    expect(tipFt).toBeLessThan(toFt - 20)
    const [shrunkFrom, shrunkTo] = foldIn(app)!
    expect(tipFt <= shrunkFrom || tipFt >= shrunkTo).toBe(true)
    app.view.setState({ joint: 1 })
    expect(foldIn(app)).toEqual([fromFt, toFt])
    stop()
  })

  it('leaves the sheet as it is while something is held', () => {
    const { app, stop } = opened()
    const before = foldIn(app)
    app.documents.getState().begin({ text: { en: 'move', es: 'mover' } })
    app.documents.getState().showPreview(app.edit('moveBy', { ids: ['roller:11'], dxM: ft(4), dyM: 0 }))
    expect(foldIn(app)).toEqual(before)
    app.documents.getState().commitPreview()
    expect(foldIn(app)![1]).toBeLessThan(260)
    stop()
  })

  it('opens on an upright tape and north up', () => {
    for (const over of [{ tapeVertical: true }, { orientation: 'northUp' }] as const) {
      const { app, stop } = opened()
      expect(foldOf(app.view.getState())).not.toBeNull()
      app.view.setState(over)
      expect(app.view.getState().fold).toBeNull()
      stop()
    }
  })
})
