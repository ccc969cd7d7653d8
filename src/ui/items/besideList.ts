import { panned, planToPx } from '../../state/frames.ts'
import type { App } from '../../state/app.ts'
import { ITEM_LIST_PX } from './width.ts'

/** Room left between the list and the first place, px. */
const ROOM_PX = 60

/**
 * Moves the sheet so that these running distances do not lie under a list that has just been opened beside the plan; what is in
 * sight already stays. On a narrow sheet the list covers all, and nothing is moved.
 */
export function bringBesideList(app: App, runningM: readonly number[]): void {
  const view = app.view.getState()
  const { site } = app.site.getState()
  const { widthPx } = view.bandSizePx.plan
  if (runningM.length === 0 || site.setUp === null || view.tapeVertical || widthPx <= 2 * ITEM_LIST_PX) return
  const xs = runningM.map((distanceM) => {
    const { xM, yM } = site.atRunning(distanceM)
    return planToPx(view, site.setUp, xM, yM).xPx
  })
  const edge = view.leftHanded ? widthPx - ITEM_LIST_PX - ROOM_PX - Math.max(...xs) : ITEM_LIST_PX + ROOM_PX - Math.min(...xs)
  const isUnder = view.leftHanded ? edge < 0 : edge > 0
  if (isUnder) app.view.setState(panned(view, edge, 0))
}
