import type { Finding } from '../../checks/finding.ts'
import type { MissingInput } from '../../derive/types.ts'
import { kindOf } from '../../scene/kinds/index.ts'
import { foldOf, invertMatrix, panned, planMatrix, planToPx } from '../../state/frames.ts'
import type { App } from '../../state/app.ts'
import { ITEM_LIST_PX, listPanels } from '../items/width.ts'
import { focusField } from '../fields/focus.ts'

/** Site point of a finding: its place, else its first item. */
export const siteOf = (app: App, finding: Finding): { xM: number; yM: number } | null => {
  const { site } = app.site.getState()
  const { where } = finding
  if (where?.at === 'site') return { xM: where.xM, yM: where.yM }
  if (where?.at === 'run') return site.atRunning(where.runningM, where.offsetM)
  const placed = finding.itemIds.map((id) => site.placed.get(id)).find((item) => item !== undefined)
  return placed === undefined ? null : { xM: placed.xM, yM: placed.yM }
}

const MARGIN_PX = 60

/** Brings a place into sight without changing the scale; a place already in sight stays where it is. */
export const showPlace = (app: App, at: { xM: number; yM: number }): void => {
  const view = app.view.getState()
  const { setUp } = app.site.getState().site
  // A place folded away is shown by its fold: what stands there opens it by being chosen.
  const { xPx, yPx } = planToPx(view, setUp, at.xM, at.yM)
  const { widthPx, heightPx } = view.bandSizePx.plan
  // Under the list of items nothing is in sight; on a narrow sheet the list covers all, and is closed before one looks.
  const listPx = view.panel !== null && listPanels.has(view.panel) && widthPx > 2 * ITEM_LIST_PX ? ITEM_LIST_PX : 0
  const [leftPx, rightPx] = view.leftHanded ? [0, widthPx - listPx] : [listPx, widthPx]
  if (xPx > leftPx + MARGIN_PX && xPx < rightPx - MARGIN_PX && yPx > MARGIN_PX && yPx < heightPx - MARGIN_PX) return
  const [middleXPx, middleYPx] = [(leftPx + rightPx) / 2, heightPx / 2]
  const previousViews = [...view.previousViews, { pxPerM: view.pxPerM, leftRunningM: view.leftRunningM, midOffsetM: view.midOffsetM, fold: view.fold }].slice(-20)
  if (foldOf(view) !== null) {
    app.view.setState({ previousViews, ...panned(view, middleXPx - xPx, middleYPx - yPx) })
    return
  }
  const centre = invertMatrix(planMatrix(view, setUp), middleXPx, middleYPx)
  const headingRad = setUp?.headingRad ?? 0
  const [dx, dy] = [at.xM - centre.xM, at.yM - centre.yM]
  app.view.setState({
    previousViews,
    leftRunningM: view.leftRunningM + dx * Math.cos(headingRad) + dy * Math.sin(headingRad),
    midOffsetM: view.midOffsetM + dx * Math.sin(headingRad) - dy * Math.cos(headingRad),
  })
}

/** Opens a note: its items are chosen and its place comes into sight. */
export const openFinding = (app: App, finding: Finding): void => {
  const records = app.documents.getState().document.records
  app.view.setState({ openFindingKey: finding.key, selection: finding.itemIds.filter((id) => records[id] !== undefined && kindOf(records[id].kind) !== undefined) })
  const at = siteOf(app, finding)
  if (at !== null) showPlace(app, at)
}

/** Leads to a field nobody has filled: of an item in its tag, of the job and the ground in the job's panel. */
export const openMissing = (app: App, { recordId, path }: MissingInput): void => {
  const record = app.documents.getState().document.records[recordId]
  if (record !== undefined && kindOf(record.kind) !== undefined) app.view.setState({ panel: null, selection: [recordId], tagMore: true, leaf: 'plan' })
  else app.view.setState({ panel: record?.kind === 'layout' ? 'settings' : 'job' })
  focusField(recordId, path)
}
