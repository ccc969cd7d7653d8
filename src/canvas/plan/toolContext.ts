import type { SiteModel } from '../../derive/types.ts'
import { kindOf } from '../../scene/kinds/index.ts'
import type { SetUpRecord } from '../../scene/records/frame.ts'
import type { App } from '../../state/app.ts'
import { foldOf, partOfAlong, partPx, planMatrix, planToPx, type FrameView, type Matrix } from '../../state/frames.ts'
import { formatQuantity, formatRunning, type UnitSystem } from '../../units/format.ts'
import type { Language } from '../../units/language.ts'
import { parseLength } from '../../units/parse.ts'
import { BEND_KIND } from '../actions.ts'
import { screenRightRad } from '../viewMoves.ts'
import { handlesOf, pickablesOf } from './pickables.ts'
import type { HandleView, Pickable, ToolContext } from '../tools/types.ts'

/**
 * The set-up the sheet is laid out by: the committed one. While a gesture moves the machine, and datum and axis with
 * it, the sheet must keep still under the pointer.
 */
export const frameSetUp = (app: App): SetUpRecord | null => {
  const shown = app.site.getState().site.setUp
  const { document } = app.documents.getState()
  const record = shown === null ? undefined : document.records[shown.id]
  return record?.kind === 'setUp' ? record : shown
}

type SetUpFrame = Parameters<typeof planMatrix>[1]

/** Matrix of the part of the sheet a running distance lies in. */
export const matrixAt = (view: FrameView, setUp: SetUpFrame, runningM: number | null): Matrix => planMatrix(view, setUp, runningM !== null && partOfAlong(view, runningM) === 'after' ? 'after' : 'before')

/** Handles of what is chosen where they can be seen: of a feature that runs through the fold, on either side of it. */
export const handlesShown = (view: FrameView, setUp: SetUpFrame, chosen: readonly Pickable[]): HandleView[] => {
  const [item] = chosen
  if (foldOf(view) === null || item === undefined) return handlesOf(chosen, planMatrix(view, setUp))
  if (!item.isFeature) return handlesOf(chosen, matrixAt(view, setUp, item.runningM))
  return (['before', 'after'] as const).flatMap((part) => {
    const { x0, x1 } = partPx(view, part)
    return handlesOf(chosen, planMatrix(view, setUp, part)).filter(({ xPx }) => xPx >= x0 && xPx <= x1)
  })
}

/** System lengths are read and written in. */
export const lengthSystem = (site: SiteModel): UnitSystem => site.layout.unitOverrides['length'] ?? site.layout.displayUnits

/** A distance typed during a gesture: a bare number is feet or metres, as the running dimension beside it shows. */
export const readDistance = (system: UnitSystem, language: Language) => (text: string): { valueM: number; read: string } | null => {
  const reading = parseLength(text, { fieldUnit: system === 'metric' ? 'm' : 'feetInches', allowNegative: true, language })
  const valueM = reading.ok ? reading.valueM : reading.reason === 'ask' ? (reading.choices[0]?.valueM ?? null) : null
  return valueM === null ? null : { valueM, read: formatQuantity({ kind: 'length', value: valueM }, { system, language }) }
}

/** Starting spacing of a row: that of the last two of its kind along the run, else 20 ft or 6 m. */
const rowSpacing = (site: SiteModel, kind: string | null, system: UnitSystem): number => {
  const places = [...site.placed.values()].flatMap((item) => (item.kind === kind && item.isAttached && item.runningM !== null ? [item.runningM] : [])).sort((a, b) => a - b)
  const [last, before] = [places.at(-1), places.at(-2)]
  const spacingM = last === undefined || before === undefined ? 0 : last - before
  return spacingM > 0.2 ? spacingM : system === 'metric' ? 6 : 6.096
}

let cached: { site: SiteModel; hiddenKinds: readonly string[]; list: Pickable[] } | null = null

/** Pickables of a site, kept while site and hidden kinds stay the same. */
export const pickablesFor = (site: SiteModel, hiddenKinds: readonly string[]): Pickable[] => {
  if (cached?.site !== site || cached.hiddenKinds !== hiddenKinds) cached = { site, hiddenKinds, list: pickablesOf(site, hiddenKinds) }
  return cached.list
}

const settled = new WeakMap<App, SiteModel>()

/**
 * The site tools measure and snap by: while a gesture shows a preview, the one it began on. A machine carries the axis
 * with it; snapped to the axis it carries it would chase itself.
 */
const settledSite = (app: App): SiteModel => {
  const { site } = app.site.getState()
  if (app.documents.getState().preview !== null) return settled.get(app) ?? site
  settled.set(app, site)
  return site
}

/** What the tools see of the app at this moment. */
export const toolContextOf = (app: App, spots: ToolContext['spots']): ToolContext => {
  const view = app.view.getState()
  const site = settledSite(app)
  const setUp = frameSetUp(app)
  const { tool, language } = view
  const system = lengthSystem(site)
  const pickables = pickablesFor(site, view.hiddenKinds)
  const chosen = new Set(view.selection)
  const kindName = tool !== null && 'kind' in tool ? tool.kind : null
  const kind = kindName === null ? undefined : kindOf(kindName)
  return {
    bandPx: view.bandSizePx.plan, pxPerM: view.pxPerM, screenRightRad: screenRightRad(view, setUp), pickables,
    handles: chosen.size === 1 ? handlesShown(view, setUp, pickables.filter(({ id }) => chosen.has(id))) : [],
    selection: view.selection, tool, snapping: view.snapping, frozen: view.holdStill || !app.documents.getState().writable,
    hasSetUp: site.run !== null, runId: site.run?.id ?? null, runCorners: site.run?.vertices.length ?? 0,
    gesture: kindName === BEND_KIND ? 'bend' : kind === undefined ? null : kind.placing === 'polygon' || kind.placing === 'polyline' ? kind.placing : 'item',
    kindTitle: kind?.name ?? null, kindRidesOnRun: kind?.ridesOnRun === true,
    toRunning: site.toRunning, atRunning: site.atRunning, toPx: (xM, yM) => planToPx(view, setUp, xM, yM), folded: foldOf(view),
    system, language, rowSpacingM: rowSpacing(site, kindName, system), readDistance: readDistance(system, language),
    lengthText: (valueM) => formatQuantity({ kind: 'length', value: valueM }, { system, language }),
    runningText: (runningM) => formatRunning(runningM, { system, language }),
    spots,
  }
}
