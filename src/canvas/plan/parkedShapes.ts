/** Strings parked beside the line: outlines, so that they are never taken for the pipe on the line. Site frame. */
import { parkedStringsOf, type ParkedString } from '../../derive/strings.ts'
import type { SiteModel } from '../../derive/types.ts'
import type { Primitive } from '../../drawing/primitives.ts'
import { PIPE_LEAST_PX } from '../../drawing/theme.ts'
import type { Picture } from './picture.ts'
import { stationsAlong } from './pipeShapes.ts'

const beside = (site: SiteModel, stations: readonly number[], offsetM: number): number[] => stations.flatMap((runningM) => {
  const { xM, yM } = site.atRunning(runningM, offsetM)
  return [xM, yM]
})

/** Outline of a strip beside the run, never thinner on screen than the pipe. */
export function besideOutline({ site, view }: Picture, { fromM, toM, offsetM }: { fromM: number; toM: number; offsetM: number }): number[] {
  const halfM = Math.max(site.pipe.odM ?? 0.3, PIPE_LEAST_PX / view.pxPerM) / 2
  const stations = stationsAlong(site, fromM, toM)
  return [...beside(site, stations, offsetM + halfM), ...beside(site, stations.toReversed(), offsetM - halfM)]
}

/** Room for a name on a string this long on screen. */
const NAME_FROM_PX = 60
const NAME_STEP_PX = 44

export const parkedShapes = (picture: Picture): Primitive[] => parkedStringsOf(picture.site).flatMap((parked): Primitive[] => {
  const { view, fromM, toM, offsetM } = parked
  // Names of neighbouring rows stand one behind the other, not one on the other.
  const at = picture.site.atRunning(fromM + Math.min(2 + ((view.row ?? 1) * NAME_STEP_PX) / picture.view.pxPerM, (toM - fromM) / 2), offsetM)
  const name: Primitive[] = (toM - fromM) * picture.view.pxPerM < NAME_FROM_PX ? [] : [{ t: 'text', xM: at.xM, yM: at.yM, text: `${view.name} · ${view.sticks ?? '?'}`, sizePx: 12.5, ink: 'ink2', dyPx: -4, lotEdge: true }]
  return [{ t: 'path', points: besideOutline(picture, parked), closed: true, stroke: 'ink2', weight: 'ticks', fill: 'pipeSide', fillOpacity: 0.5 }, ...name]
})

/** Whether parked strings lie as before. */
export const sameParked = (a: SiteModel, b: SiteModel): boolean => {
  const [one, other] = [parkedStringsOf(a), parkedStringsOf(b)]
  return one.length === other.length && one.every((parked, i) => isSame(parked, other[i]!))
}

const isSame = (a: ParkedString, b: ParkedString): boolean => a.offsetM === b.offsetM && a.fromM === b.fromM && a.toM === b.toM && a.view.name === b.view.name
