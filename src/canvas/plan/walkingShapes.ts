/** A job made by a machine that walks: what is joined, what is still strung, and the window of the joint shown. Site frame. */
import type { Primitive } from '../../drawing/primitives.ts'
import { walkOf, type Walk } from '../../derive/walking.ts'
import { besideOutline } from './parkedShapes.ts'
import type { Picture } from './picture.ts'
import { runPoints } from './pipeShapes.ts'

/** Joint shown; null while nothing is joined yet, N − 1 once all of it is. */
function jointsMade({ view }: Picture, walk: Walk): { made: number; at: number | null } {
  const last = walk.joints.length
  const joint = Math.min(Math.max(1, view.joint), Math.max(1, last))
  switch (view.phase) {
    case 'setUp': case 'offload': return { made: 0, at: null }
    case 'load': case 'fuse': return { made: joint - 1, at: joint }
    case 'pull': return { made: joint, at: null }
    default: return { made: last, at: null }
  }
}

/** Null where the machine stands: the pipe is then drawn as it lies at the machine. */
export function walkingShapes(picture: Picture): Primitive[] | null {
  const { site, view } = picture
  const walk = walkOf(site)
  if (walk === null) return null
  const outerDiameterM = site.pipe.odM ?? 0.3
  const { made, at } = jointsMade(picture, walk)
  const endM = walk.strungToM
  const tailM = made === 0 ? (walk.sticks[0]?.fromM ?? endM) : endM - site.sticks.stringLengthM(made + 1)
  const list: Primitive[] = [{ t: 'pipe', points: runPoints(site, tailM, endM), outerDiameterM }]
  // The loose stick of the joint being made has been drawn up to the string; the others lie as strung.
  const loose = at === null ? null : walk.joints[at - 1]
  for (const { stick, fromM, toM } of walk.sticks.slice(made + 1)) {
    const isLoose = loose !== null && loose !== undefined && stick === made + 2
    list.push({ t: 'path', points: besideOutline(picture, isLoose ? { fromM: loose.fromM, toM: loose.runningM, offsetM: 0 } : { fromM, toM, offsetM: 0 }), closed: true, stroke: 'ink2', weight: 'ticks', fill: 'pipeSide', fillOpacity: 0.5 })
  }
  if (loose !== null && loose !== undefined) {
    const [a, b] = [site.atRunning(loose.runningM, -3), site.atRunning(loose.runningM, 3)]
    list.push({ t: 'path', points: [a.xM, a.yM, b.xM, b.yM], stroke: 'chosen', weight: 'rope', dash: 'lane' })
    if ((loose.toM - loose.fromM) * view.pxPerM > 40) list.push({ t: 'text', xM: b.xM, yM: b.yM, text: `J${loose.joint}`, sizePx: 12.5, bold: true, ink: 'chosen', align: 'center', dyPx: -14, lotEdge: true })
  }
  return list
}
