import type { SectionProfile, SiteModel } from '../derive/types.ts'
import type { SetUpRecord } from '../scene/records/frame.ts'
import { invertMatrix, planMatrix, tapeLengthPx, type FrameView } from '../state/frames.ts'
import type { ViewState } from '../state/viewStore.ts'

/** Moves of the view as patches of the view store. Scale in px per m, between far away and a thumb's width of pipe. */
type Shift = Pick<ViewState, 'leftRunningM' | 'midOffsetM'>
type Frame = Shift & Pick<ViewState, 'pxPerM'>
type SetUp = Pick<SetUpRecord, 'datum' | 'headingRad'> | null

export const SCALE_LEAST = 0.5
export const SCALE_MOST = 400
const padPx = 36
const previousMost = 20

const limited = (pxPerM: number): number => Math.min(SCALE_MOST, Math.max(SCALE_LEAST, pxPerM))

/** Site direction (ccw from +x) that points to the right on screen. */
export const screenRightRad = (view: FrameView, setUp: SetUp): number => {
  const m = planMatrix(view, setUp)
  return Math.atan2(m.b, m.a)
}

/** View with a site point at the middle of the band. */
export const centredOn = (view: FrameView, setUp: SetUp, xM: number, yM: number, pxPerM = view.pxPerM): Frame => {
  const [dx, dy] = [xM - (setUp?.datum.xM ?? 0), yM - (setUp?.datum.yM ?? 0)]
  const headingRad = setUp?.headingRad ?? 0
  const [cos, sin] = [Math.cos(headingRad), Math.sin(headingRad)]
  return { pxPerM, leftRunningM: dx * cos + dy * sin - tapeLengthPx(view) / 2 / pxPerM, midOffsetM: dx * sin - dy * cos }
}

/** Sheet pulled by px of the band, whichever way it is turned. */
export const panned = (view: FrameView, setUp: SetUp, dxPx: number, dyPx: number): Shift => {
  const { widthPx, heightPx } = view.bandSizePx.plan
  const centre = invertMatrix(planMatrix(view, setUp), widthPx / 2 - dxPx, heightPx / 2 - dyPx)
  const { leftRunningM, midOffsetM } = centredOn(view, setUp, centre.xM, centre.yM)
  return { leftRunningM, midOffsetM }
}

/** Scale changed by a factor with the site point under a px point staying under it. */
export const zoomedAbout = (view: FrameView, setUp: SetUp, factor: number, xPx: number, yPx: number): Frame => {
  const { widthPx, heightPx } = view.bandSizePx.plan
  const pxPerM = limited(view.pxPerM * factor)
  const kept = pxPerM / view.pxPerM
  const [centreX, centreY] = [xPx + (widthPx / 2 - xPx) / kept, yPx + (heightPx / 2 - yPx) / kept]
  const centre = invertMatrix(planMatrix(view, setUp), centreX, centreY)
  return centredOn(view, setUp, centre.xM, centre.yM, pxPerM)
}

/** View that keeps the site where it is on screen when datum or axis moved under it. */
export const anchored = (view: FrameView, before: SetUp, after: SetUp): Shift => {
  const { widthPx, heightPx } = view.bandSizePx.plan
  const centre = invertMatrix(planMatrix(view, before), widthPx / 2, heightPx / 2)
  const { leftRunningM, midOffsetM } = centredOn(view, after, centre.xM, centre.yM)
  return { leftRunningM, midOffsetM }
}

/** Scale and shift at which flat site points fill the band with some room round them; null for no points. */
export const fitted = (view: FrameView, setUp: SetUp, pointsM: readonly number[], mostPxPerM = 60): Frame | null => {
  const right = screenRightRad(view, setUp)
  const [cos, sin] = [Math.cos(right), Math.sin(right)]
  let [leastX, mostX, leastY, mostY] = [Infinity, -Infinity, Infinity, -Infinity]
  for (let i = 0; i + 1 < pointsM.length; i += 2) {
    const [x, y] = [pointsM[i]!, pointsM[i + 1]!]
    const [across, up] = [x * cos + y * sin, y * cos - x * sin]
    leastX = Math.min(leastX, across)
    mostX = Math.max(mostX, across)
    leastY = Math.min(leastY, up)
    mostY = Math.max(mostY, up)
  }
  if (leastX > mostX) return null
  const { widthPx, heightPx } = view.bandSizePx.plan
  const pxPerM = limited(Math.min(mostPxPerM, (widthPx - 2 * padPx) / Math.max(0.1, mostX - leastX), (heightPx - 2 * padPx) / Math.max(0.1, mostY - leastY)))
  const [midX, midY] = [(leastX + mostX) / 2, (leastY + mostY) / 2]
  return centredOn(view, setUp, midX * cos - midY * sin, midX * sin + midY * cos, pxPerM)
}

/** Points that 'fit' has to show: everything placed and shown, and the pipe as it lies. */
export const everything = (site: SiteModel, profile: SectionProfile | null, hiddenKinds: readonly string[]): number[] => {
  const points: number[] = []
  for (const item of site.placed.values()) {
    if (hiddenKinds.includes(item.kind)) continue
    points.push(...(item.outlineM.length >= 2 ? item.outlineM : [item.xM, item.yM]))
  }
  if (site.setUp === null) return points
  points.push(site.setUp.datum.xM, site.setUp.datum.yM)
  for (const { startM, endM } of profile?.bodies ?? []) for (const at of [site.atRunning(startM), site.atRunning(endM)]) points.push(at.xM, at.yM)
  for (const { fromM, toM } of site.bends) for (const at of [site.atRunning(fromM), site.atRunning(toM)]) points.push(at.xM, at.yM)
  return points
}

/** Patch that takes the view somewhere and remembers where it was. */
export const withPrevious = (view: ViewState, to: Frame | null): Partial<ViewState> => {
  if (to === null) return {}
  const { pxPerM, leftRunningM, midOffsetM } = view
  return { ...to, previousViews: [...view.previousViews, { pxPerM, leftRunningM, midOffsetM }].slice(-previousMost) }
}

export const fitAll = (view: ViewState, site: SiteModel, profile: SectionProfile | null): Partial<ViewState> =>
  withPrevious(view, fitted(view, site.setUp, everything(site, profile, view.hiddenKinds)))

export const zoomToItems = (view: ViewState, site: SiteModel, ids: readonly string[]): Partial<ViewState> => {
  const points = ids.flatMap((id) => {
    const item = site.placed.get(id)
    return item === undefined ? [] : item.outlineM.length >= 2 ? [...item.outlineM] : [item.xM, item.yM]
  })
  return withPrevious(view, fitted(view, site.setUp, points, 40))
}

/** Brings a site point to the middle where it is outside the band, or nearer than 24 px to its edge. */
export const broughtIn = (view: ViewState, setUp: SetUp, xM: number, yM: number): Partial<ViewState> => {
  const m = planMatrix(view, setUp)
  const [xPx, yPx] = [m.a * xM + m.c * yM + m.e, m.b * xM + m.d * yM + m.f]
  const { widthPx, heightPx } = view.bandSizePx.plan
  const isIn = xPx > 24 && yPx > 24 && xPx < widthPx - 24 && yPx < heightPx - 24
  return isIn ? {} : withPrevious(view, centredOn(view, setUp, xM, yM))
}

/** Back to the view before; back of nothing changes nothing. */
export const previousView = (view: ViewState): Partial<ViewState> => {
  const last = view.previousViews.at(-1)
  return last === undefined ? {} : { ...last, previousViews: view.previousViews.slice(0, -1) }
}

/** Turned round: the exit comes to the other side, the middle of the sheet stays. */
export const turnedRound = (view: ViewState, setUp: SetUp): Partial<ViewState> => reframed(view, setUp, { turned: !view.turned })

/** North up or along the tape, about the middle of the sheet. */
export const withOrientation = (view: ViewState, setUp: SetUp, orientation: ViewState['orientation']): Partial<ViewState> => reframed(view, setUp, { orientation })

const reframed = (view: ViewState, setUp: SetUp, change: Partial<ViewState>): Partial<ViewState> => {
  const { widthPx, heightPx } = view.bandSizePx.plan
  const centre = invertMatrix(planMatrix(view, setUp), widthPx / 2, heightPx / 2)
  const next = { ...view, ...change }
  return { ...change, ...centredOn(next, setUp, centre.xM, centre.yM) }
}
