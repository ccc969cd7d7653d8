import { copyOf } from '../scene/commands/copy.ts'
import type { App } from '../state/app.ts'
import { foldOf, pxToPlan } from '../state/frames.ts'
import { openRunThrough } from '../state/runThroughMode.ts'
import { putClip, takeClip } from './clipboard.ts'
import { nudge, turn, type NudgeSide } from './nudge.ts'
import { runAndSelect, runCommand, say } from './run.ts'
import { openFindings } from './plan/findings.ts'
import { broughtIn, fitAll, foldedFit, foldOpened, panned, previousView, screenRightRad, turnedRound, withOrientation, zoomedAbout, zoomToItems } from './viewMoves.ts'

/** Everything a key, a button or a menu of the plan can do, by name. */
export type ActionName =
  | 'undo' | 'redo' | 'delete' | 'duplicate' | 'copy' | 'cut' | 'paste' | 'lock' | 'spreadEvenly' | 'reverse' | 'holdStill'
  | 'nudgeRight' | 'nudgeLeft' | 'nudgeUp' | 'nudgeDown' | 'nudgeRightFar' | 'nudgeLeftFar' | 'nudgeUpFar' | 'nudgeDownFar' | 'raise' | 'lower' | 'turnLeft' | 'turnRight'
  | 'nextItem' | 'previousItem' | 'selectAll' | 'selectKind' | 'escape' | 'openTag' | 'itemList' | 'critical' | 'asSetHeights' | 'showRanked'
  | 'fit' | 'fold' | 'zoomToSelection' | 'previousView' | 'zoomIn' | 'zoomOut' | 'panRight' | 'panLeft' | 'panUp' | 'panDown' | 'turnRound' | 'northUp' | 'hideKind' | 'showAllKinds'
  | 'snapping' | 'measure' | 'strip' | 'rollOff' | 'bend' | 'help' | 'nextFinding' | 'previousFinding' | 'runThrough'

const selectionOf = (app: App): readonly string[] => app.view.getState().selection

const withSelection = (run: (app: App, ids: readonly string[]) => void) => (app: App): void => {
  const ids = selectionOf(app)
  if (ids.length > 0) run(app, ids)
}

const zoomBy = (factor: number) => (app: App): void => {
  const view = app.view.getState()
  const { widthPx, heightPx } = view.bandSizePx.plan
  app.view.setState(zoomedAbout(view, app.site.getState().site.setUp, factor, widthPx / 2, heightPx / 2))
}
const panBy = (dxPx: number, dyPx: number) => (app: App): void => app.view.setState(panned(app.view.getState(), app.site.getState().site.setUp, dxPx, dyPx))
const nudgeTo = (side: NudgeSide, isFar: boolean) => withSelection((app, ids) => nudge(app, ids, side, isFar))

/** Items one steps through: along the line first, then what has no place on it, in document order. */
const itemOrder = (app: App): string[] => {
  const { hiddenKinds } = app.view.getState()
  const items = [...app.site.getState().site.placed.values()].filter(({ kind }) => !hiddenKinds.includes(kind))
  return items.map((item, at) => ({ item, at })).sort((a, b) => (a.item.runningM ?? Infinity) - (b.item.runningM ?? Infinity) || a.at - b.at).map(({ item }) => item.id)
}

const stepItem = (by: 1 | -1) => (app: App): void => {
  const order = itemOrder(app)
  if (order.length === 0) return
  const now = order.indexOf(selectionOf(app)[0] ?? '')
  const id = order[now < 0 ? (by === 1 ? 0 : order.length - 1) : (now + by + order.length) % order.length]!
  const { site } = app.site.getState()
  const item = site.placed.get(id)
  app.view.setState({ selection: [id], ...(item === undefined ? {} : broughtIn(app.view.getState(), site.setUp, item.xM, item.yM)) })
}

const stepFinding = (by: 1 | -1) => (app: App): void => {
  const findings = openFindings(app.results.getState().run)
  if (findings.length === 0) return
  const now = findings.findIndex(({ key }) => key === app.view.getState().openFindingKey)
  const finding = findings[now < 0 ? (by === 1 ? 0 : findings.length - 1) : (now + by + findings.length) % findings.length]!
  const { site } = app.site.getState()
  const { where } = finding
  const at = where === null ? site.placed.get(finding.itemIds[0] ?? '') : where.at === 'site' ? where : site.setUp === null ? undefined : site.atRunning(where.runningM, where.offsetM)
  app.view.setState({
    openFindingKey: finding.key, selection: finding.itemIds.filter((id) => site.placed.has(id)),
    ...(at === undefined ? {} : broughtIn(app.view.getState(), site.setUp, at.xM, at.yM, finding.itemIds.length > 0)),
  })
}

/** Copies go to the middle of the view, a step aside for each paste of the same clip. */
const pasteInto = async (app: App): Promise<void> => {
  const records = await takeClip()
  if (records.length === 0) return say(app, { en: 'Nothing was copied yet.', es: 'Aún no se copió nada.' })
  const view = app.view.getState()
  const { widthPx, heightPx } = view.bandSizePx.plan
  const at = pxToPlan(view, app.site.getState().site.setUp, widthPx / 2, heightPx / 2)
  runAndSelect(app, 'paste', { records, xM: at.xM, yM: at.yM })
}

const duplicate = withSelection((app, ids) => {
  const view = app.view.getState()
  const { site } = app.site.getState()
  const right = screenRightRad(view, site.setUp)
  const stepM = 32 / view.pxPerM
  runAndSelect(app, 'duplicate', { ids, dxM: Math.cos(right) * stepM, dyM: Math.sin(right) * stepM })
})

const removeChosen = withSelection((app, ids) => {
  const before = app.documents.getState().past.length
  if (runCommand(app, 'remove', { ids }) && app.documents.getState().past.length !== before) say(app, { en: ids.length === 1 ? 'Deleted.' : `${ids.length} items deleted.`, es: ids.length === 1 ? 'Borrado.' : `${ids.length} elementos borrados.` }, true)
})

const actions: Readonly<Record<ActionName, (app: App) => void>> = {
  undo: (app) => void app.documents.getState().undo(),
  redo: (app) => void app.documents.getState().redo(),
  delete: removeChosen,
  duplicate,
  copy: withSelection((app, ids) => putClip(copyOf(app.documents.getState().document, ids))),
  cut: withSelection((app, ids) => {
    putClip(copyOf(app.documents.getState().document, ids))
    removeChosen(app)
  }),
  paste: (app) => void pasteInto(app),
  lock: withSelection((app, ids) => {
    const { records } = app.documents.getState().document
    const isAllLocked = ids.every((id) => {
      const record = records[id]
      return record !== undefined && 'locked' in record && record.locked
    })
    runCommand(app, 'lock', { ids, locked: !isAllLocked })
  }),
  spreadEvenly: withSelection((app, ids) => void runCommand(app, 'spreadEvenly', { ids })),
  reverse: (app) => {
    const { setUp } = app.site.getState().site
    if (setUp !== null) runCommand(app, 'reverse', { setUpId: setUp.id })
  },
  // Wet mode keeps the plan frozen until it is left by its own held button.
  holdStill: (app) => { if (!app.view.getState().wet) app.view.setState({ holdStill: !app.view.getState().holdStill }) },

  nudgeRight: nudgeTo('right', false), nudgeLeft: nudgeTo('left', false), nudgeUp: nudgeTo('up', false), nudgeDown: nudgeTo('down', false),
  nudgeRightFar: nudgeTo('right', true), nudgeLeftFar: nudgeTo('left', true), nudgeUpFar: nudgeTo('up', true), nudgeDownFar: nudgeTo('down', true),
  raise: withSelection((app, ids) => nudge(app, ids, 'raise', false)),
  lower: withSelection((app, ids) => nudge(app, ids, 'lower', false)),
  turnLeft: withSelection((app, ids) => turn(app, ids, 1)),
  turnRight: withSelection((app, ids) => turn(app, ids, -1)),

  nextItem: stepItem(1),
  previousItem: stepItem(-1),
  selectAll: (app) => app.view.setState({ selection: itemOrder(app) }),
  selectKind: withSelection((app, ids) => {
    const { placed } = app.site.getState().site
    const kinds = new Set(ids.map((id) => placed.get(id)?.kind))
    app.view.setState({ selection: [...placed.values()].flatMap(({ id, kind }) => (kinds.has(kind) ? [id] : [])) })
  }),
  escape: (app) => {
    const { tool, selection, measure, proposal } = app.view.getState()
    app.view.setState(tool !== null ? { tool: null, rollOff: null } : measure !== null ? { measure: null } : selection.length > 0 ? { selection: [] } : proposal !== null ? { proposal: null } : { openFindingKey: null })
  },
  openTag: withSelection((app) => app.view.setState({ tagMore: true })),
  itemList: (app) => app.view.setState({ panel: 'items' }),
  critical: (app) => app.view.setState({ panel: 'critical' }),
  showRanked: (app) => {
    const ranked = app.critical.store.getState().ranking?.supports.flatMap(({ rank, itemId }) => (rank === null ? [] : [itemId])) ?? []
    if (ranked.length > 0) app.view.setState(zoomToItems(app.view.getState(), app.site.getState().site, ranked))
  },
  asSetHeights: (app) => app.view.setState({ panel: 'asSet' }),

  fit: (app) => {
    const { site, profile } = app.site.getState()
    app.view.setState(fitAll(app.view.getState(), site, profile))
  },
  fold: (app) => {
    const view = app.view.getState()
    if (foldOf(view) !== null) return app.view.setState(foldOpened(view))
    const { site, profile } = app.site.getState()
    const to = foldedFit(view, site, profile, app.results.getState().run?.findings ?? [])
    if (to === null) say(app, { en: 'Nothing to fold: the whole tape fits, or no even row of rollers is free of other things.', es: 'Nada que plegar: la cinta entera cabe, o ninguna fila pareja de rodillos está libre de otras cosas.' })
    else app.view.setState(to)
  },
  zoomToSelection: withSelection((app, ids) => app.view.setState(zoomToItems(app.view.getState(), app.site.getState().site, ids))),
  previousView: (app) => app.view.setState(previousView(app.view.getState())),
  zoomIn: zoomBy(1.25),
  zoomOut: zoomBy(0.8),
  panRight: panBy(-80, 0),
  panLeft: panBy(80, 0),
  panUp: panBy(0, 80),
  panDown: panBy(0, -80),
  turnRound: (app) => app.view.setState(turnedRound(app.view.getState(), app.site.getState().site.setUp)),
  northUp: (app) => {
    const view = app.view.getState()
    app.view.setState(withOrientation(view, app.site.getState().site.setUp, view.orientation === 'northUp' ? 'alongTape' : 'northUp'))
  },
  hideKind: withSelection((app, ids) => {
    const { placed } = app.site.getState().site
    const kinds = ids.flatMap((id) => placed.get(id)?.kind ?? [])
    app.view.setState({ hiddenKinds: [...new Set([...app.view.getState().hiddenKinds, ...kinds])], selection: [] })
  }),
  showAllKinds: (app) => app.view.setState({ hiddenKinds: [] }),

  snapping: (app) => {
    const snapping = !app.view.getState().snapping
    app.view.setState({ snapping })
    say(app, snapping ? { en: 'Snapping on.', es: 'Ajuste activado.' } : { en: 'Snapping off.', es: 'Ajuste desactivado.' })
  },
  measure: (app) => app.view.setState({ tool: { name: 'measure' } }),
  rollOff: (app) => app.view.setState({ tool: { name: 'rollOff' }, leaf: 'plan' }),
  strip: (app) => app.view.setState({ tool: { name: 'strip' } }),
  bend: (app) => app.view.setState({ tool: { name: 'place', kind: BEND_KIND } }),
  runThrough: openRunThrough,
  help: (app) => app.view.setState({ panel: 'keys' }),
  nextFinding: stepFinding(1),
  previousFinding: stepFinding(-1),
}

/** Kind the place tool carries while it puts a corner into the pull path: no record of its own. */
export const BEND_KIND = 'bend'

/** Runs one action of the plan by name. */
export const runAction = (app: App, name: ActionName): void => actions[name](app)

/** Brings a site point into view and remembers the view before. */
export const showPlace = (app: App, xM: number, yM: number): void => app.view.setState(broughtIn(app.view.getState(), app.site.getState().site.setUp, xM, yM))
