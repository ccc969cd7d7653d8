import type { SectionProfile, SiteModel } from '../derive/types.ts'
import type { SetUpRecord } from '../scene/records/frame.ts'
import type { Finding } from '../checks/finding.ts'
import { foldFor } from '../state/fold.ts'
import { alongToPx, drawnAlongM, foldOf, invertMatrix, panned as foldedPan, partOfAlong, planMatrix, planToPx, pxToAlong, tapeLengthPx, zoomedAbout as foldedZoom, type FrameView } from '../state/frames.ts'
import type { ViewState } from '../state/viewStore.ts'

/** Moves of the view as patches of the view store. Scale in px per m, between far away and a thumb's width of pipe. */
type Shift = Pick<ViewState, 'leftRunningM' | 'midOffsetM'>
type Frame = Shift & Pick<ViewState, 'pxPerM'> & Partial<Pick<ViewState, 'fold'>>
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

/** View with a site point at the middle of the band. A fold stays; over a point folded away it opens. */
export const centredOn = (view: FrameView, setUp: SetUp, xM: number, yM: number, pxPerM = view.pxPerM): Frame => {
  const [dx, dy] = [xM - (setUp?.datum.xM ?? 0), yM - (setUp?.datum.yM ?? 0)]
  const headingRad = setUp?.headingRad ?? 0
  const [cos, sin] = [Math.cos(headingRad), Math.sin(headingRad)]
  const alongM = dx * cos + dy * sin
  const opens = partOfAlong(view, alongM) === 'folded'
  const drawnM = opens ? alongM : drawnAlongM({ ...view, pxPerM }, alongM)
  return { pxPerM, leftRunningM: drawnM - tapeLengthPx(view) / 2 / pxPerM, midOffsetM: dx * sin - dy * cos, ...(opens ? { fold: null } : {}) }
}

/** Sheet pulled by px of the band, whichever way it is turned. */
export const panned = (view: FrameView, setUp: SetUp, dxPx: number, dyPx: number): Shift => {
  if (foldOf(view) !== null) return foldedPan(view, dxPx, dyPx)
  const { widthPx, heightPx } = view.bandSizePx.plan
  const centre = invertMatrix(planMatrix(view, setUp), widthPx / 2 - dxPx, heightPx / 2 - dyPx)
  const { leftRunningM, midOffsetM } = centredOn(view, setUp, centre.xM, centre.yM)
  return { leftRunningM, midOffsetM }
}

/** Scale changed by a factor with the site point under a px point staying under it. */
export const zoomedAbout = (view: FrameView, setUp: SetUp, factor: number, xPx: number, yPx: number): Frame => {
  if (foldOf(view) !== null) return foldedZoom(view, factor, xPx, yPx, { least: SCALE_LEAST, most: SCALE_MOST })
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
  // With a fold it is the part before it that stays: the sheet is counted from there.
  const { leftRunningM, midOffsetM } = centredOn({ ...view, fold: null }, after, centre.xM, centre.yM)
  return { leftRunningM, midOffsetM }
}

/** Scale and shift at which flat site points fill the band with some room round them, nothing folded; null for no points. */
export const fitted = (folded: FrameView, setUp: SetUp, pointsM: readonly number[], mostPxPerM = 60): Frame | null => {
  const view = { ...folded, fold: null }
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
  return to === null ? {} : { ...to, previousViews: withThis(view) }
}

/** Views gone through, the present one last. */
export const withThis = ({ previousViews, pxPerM, leftRunningM, midOffsetM, fold }: ViewState): ViewState['previousViews'] =>
  [...previousViews, { pxPerM, leftRunningM, midOffsetM, ...(fold === null ? {} : { fold }) }].slice(-previousMost)

const opened = (to: Frame | null): Frame | null => (to === null ? null : { ...to, fold: null })

/** The whole yard, nothing folded. */
export const fitAll = (view: ViewState, site: SiteModel, profile: SectionProfile | null): Partial<ViewState> =>
  withPrevious(view, opened(fitted(view, site.setUp, everything(site, profile, view.hiddenKinds))))

/** Least room between the axis and the edge of the band, px. */
const AXIS_ROOM_PX = 90

/** Machine end and nose end at working scale with what is alike between them folded away; null where there is nothing to fold. */
export const foldedFit = (view: ViewState, site: SiteModel, profile: SectionProfile | null, findings: readonly Finding[]): Partial<ViewState> | null => {
  const plan = foldFor(site, findings, view, profile?.tipM ?? null)
  if (plan === null) return null
  const { fromM, toM, pxPerM, leftRunningM } = plan
  const midOffsetM = fitted(view, site.setUp, everything(site, profile, view.hiddenKinds))?.midOffsetM ?? 0
  const mostM = Math.max(0, view.bandSizePx.plan.heightPx / 2 - AXIS_ROOM_PX) / pxPerM
  return withPrevious(view, { fold: { fromM, toM }, pxPerM, leftRunningM, midOffsetM: Math.min(mostM, Math.max(-mostM, midOffsetM)) })
}

/** Where the near edge of an opened fold comes to at most, as a share of the tape: what was hidden follows it. */
const OPENED_AT_RATIO = 0.3

/** Fold opened at the same scale: what was folded away follows where its near edge was, or further in. */
export const foldOpened = (view: ViewState): Partial<ViewState> => {
  const fold = foldOf(view)
  if (fold === null) return { fold: null }
  const lengthPx = tapeLengthPx(view)
  const edgePx = alongToPx(view, fold.fromM)
  const fromStartPx = Math.min(view.turned ? lengthPx - edgePx : edgePx, OPENED_AT_RATIO * lengthPx)
  return withPrevious(view, { pxPerM: view.pxPerM, midOffsetM: view.midOffsetM, leftRunningM: fold.fromM - fromStartPx / view.pxPerM, fold: null })
}

export const zoomToItems = (view: ViewState, site: SiteModel, ids: readonly string[]): Partial<ViewState> => {
  const points = ids.flatMap((id) => {
    const item = site.placed.get(id)
    return item === undefined ? [] : item.outlineM.length >= 2 ? [...item.outlineM] : [item.xM, item.yM]
  })
  return withPrevious(view, opened(fitted(view, site.setUp, points, 40)))
}

/** Brings a site point to the middle where it is outside the band, nearer than 24 px to its edge, or folded away; without `opensFold` the fold stands for the point. */
export const broughtIn = (view: ViewState, setUp: SetUp, xM: number, yM: number, opensFold = true): Partial<ViewState> => {
  const { xPx, yPx } = planToPx(view, setUp, xM, yM)
  const { widthPx, heightPx } = view.bandSizePx.plan
  const to = centredOn(view, setUp, xM, yM)
  const isIn = (to.fold !== null || !opensFold) && xPx > 24 && yPx > 24 && xPx < widthPx - 24 && yPx < heightPx - 24
  return isIn ? {} : withPrevious(view, to)
}

/** Back to the view before; back of nothing changes nothing. */
export const previousView = (view: ViewState): Partial<ViewState> => {
  const last = view.previousViews.at(-1)
  return last === undefined ? {} : { ...last, fold: last.fold ?? null, previousViews: view.previousViews.slice(0, -1) }
}

/** Turned round: the exit comes to the other side, the middle of the sheet stays. */
export const turnedRound = (view: ViewState, setUp: SetUp): Partial<ViewState> => reframed(view, setUp, { turned: !view.turned })

/** North up or along the tape, about the middle of the sheet. */
export const withOrientation = (view: ViewState, setUp: SetUp, orientation: ViewState['orientation']): Partial<ViewState> => reframed(view, setUp, { orientation })

/** The sheet laid another way; a fold opens first, about the middle of what is shown. */
const reframed = (folded: ViewState, setUp: SetUp, change: Partial<ViewState>): Partial<ViewState> => {
  const view: ViewState = { ...folded, ...unfolded(folded) }
  const { widthPx, heightPx } = view.bandSizePx.plan
  const centre = invertMatrix(planMatrix(view, setUp), widthPx / 2, heightPx / 2)
  const next = { ...view, ...change }
  return { ...change, fold: null, ...centredOn(next, setUp, centre.xM, centre.yM) }
}

/** The fold away with the running distance in the middle of the band staying there. */
const unfolded = (view: ViewState): Partial<ViewState> => {
  if (foldOf(view) === null) return { fold: null }
  const halfPx = tapeLengthPx(view) / 2
  return { fold: null, leftRunningM: pxToAlong(view, halfPx) - halfPx / view.pxPerM }
}
