import type { Primitive } from '../../drawing/primitives.ts'
import { PIPE_LEAST_PX } from '../../drawing/theme.ts'
import type { SiteModel } from '../../derive/types.ts'
import type { Picture } from './picture.ts'

/** Running distances a line along the run is drawn through: its ends, and every metre or so of the bends between them. */
export const stationsAlong = (site: Pick<SiteModel, 'bends'>, fromM: number, toM: number): number[] => {
  const stations = [fromM, toM]
  for (const bend of site.bends) {
    const lengthM = bend.toM - bend.fromM
    const count = Math.max(2, Math.ceil(Math.abs(bend.turnRad) / 0.06), Math.ceil(lengthM / 5))
    for (let i = 0; i <= count; i++) {
      const at = bend.fromM + (lengthM * i) / count
      if (at > fromM && at < toM) stations.push(at)
    }
  }
  return stations.sort((a, b) => a - b)
}

/** Stretch of the run as flat site points. */
export const runPoints = (site: Pick<SiteModel, 'atRunning' | 'bends'>, fromM: number, toM: number): number[] => stationsAlong(site, fromM, toM).flatMap((runningM) => {
  const { xM, yM } = site.atRunning(runningM)
  return [xM, yM]
})

/** A line across the run at a running distance, `halfM` to either side. */
const across = (site: Pick<SiteModel, 'atRunning'>, runningM: number, halfM: number): number[] => {
  const [a, b] = [site.atRunning(runningM, -halfM), site.atRunning(runningM, halfM)]
  return [a.xM, a.yM, b.xM, b.yM]
}

/** Running distances of the fused joints of a string, from its nose backwards a stick each. The joint under the jaws is being made. */
export const jointPlaces = (startM: number, endM: number, stickM: number): number[] => {
  const places: number[] = []
  if (!(stickM > 0.1)) return places
  for (let at = endM - stickM; at > startM + stickM * 0.02 && places.length < 2000; at -= stickM) places.push(at)
  return places
}

/** The axis and the pull path beyond it, as far as the ground is drawn and the pipe goes. Site frame. */
export const axisShapes = ({ site, profile }: Picture): Primitive[] => {
  if (site.run === null) return []
  const [fromM, toM] = [Math.min(-15, (site.ground.runningM[0] ?? 0) - 3, (profile.tailM ?? 0) - 3), Math.max(15, (site.ground.runningM.at(-1) ?? 0) + 6, (profile.tipM ?? 0) + 6)]
  return [{ t: 'path', points: runPoints(site, fromM, toM), stroke: 'ink2', weight: 'axis', dash: 'axis' }]
}

/** String and fed stick as they lie at the stage, their joints, and the rope where it is tight. Site frame. */
export const pipeShapes = (picture: Picture): Primitive[] => {
  const { site, profile, view } = picture
  if (site.run === null) return []
  const outerDiameterM = site.pipe.odM ?? 0.3
  const list: Primitive[] = []
  const rope = view.phase === 'pull' || view.phase === 'move' ? ropePoints(picture) : null
  if (rope !== null) list.push({ t: 'path', points: rope, stroke: 'ink', weight: 'rope', dash: 'rope' })
  const halfM = Math.max(outerDiameterM, PIPE_LEAST_PX / view.pxPerM) / 2
  for (const { name, startM, endM } of profile.bodies) {
    list.push({ t: 'pipe', points: runPoints(site, startM, endM), outerDiameterM })
    if (name !== 'string') continue
    const stickM = (site.sticks.stickLengthM ?? 0) - (site.sticks.jointLossM ?? 0)
    for (const at of jointPlaces(startM, endM, stickM)) {
      list.push({ t: 'path', points: across(site, at, halfM + 1.2 / view.pxPerM), stroke: 'sheet', weight: 'pipe' }, { t: 'path', points: across(site, at, halfM + 1.8 / view.pxPerM), stroke: 'pipe', weight: 'rope' })
    }
  }
  return list
}

/** From the nose to the puller, where one stands beyond the nose. */
const ropePoints = ({ site, profile, ahead }: Picture): number[] | null => {
  const { tipM } = profile
  if (tipM === null) return null
  if (ahead !== null) return runPoints(site, tipM, ahead.runningM ?? tipM)
  for (const { record, runningM, xM, yM } of site.placed.values()) {
    if (!('pullerKind' in record) || runningM === null || runningM <= tipM) continue
    const nose = site.atRunning(tipM)
    return [nose.xM, nose.yM, xM, yM]
  }
  return null
}

/** The line through the joint plane, across the sheet. Site frame. */
export const jointPlaneShapes = ({ site, view }: Picture): Primitive[] => {
  if (site.setUp === null || site.run === null) return []
  const reachM = Math.max(4.2, 60 / view.pxPerM)
  return [{ t: 'path', points: across(site, 0, reachM), stroke: 'ink2', weight: 'axis', dash: 'lane' }]
}

/** The nail: a cross in a ring, as on the tape. Mark frame, px. */
export const nailMark: readonly Primitive[] = [
  { t: 'circle', xM: 0, yM: 0, radiusM: 7.5, fill: 'paper', stroke: 'ink', weight: 'ticks' },
  { t: 'path', points: [0, -11, 0, 11], stroke: 'ink', weight: 'ticks' },
  { t: 'path', points: [-11, 0, 11, 0], stroke: 'ink', weight: 'ticks' },
  { t: 'circle', xM: 0, yM: 0, radiusM: 2.4, fill: 'ink' },
]
