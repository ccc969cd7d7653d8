import type { PlacedItem, SiteModel } from '../../derive/types.ts'
import { kindOf } from '../../scene/kinds/index.ts'
import { applyMatrix, type Matrix } from '../../state/frames.ts'
import type { HandleView, Pickable } from '../tools/types.ts'

const made = new WeakMap<PlacedItem, Pickable>()

const ofItem = (item: PlacedItem): Pickable => {
  const known = made.get(item)
  if (known !== undefined) return known
  const kind = kindOf(item.kind)
  const { record } = item
  const isFeature = !('place' in record)
  const isArea = kind?.placing === 'polygon'
  const pickable: Pickable = {
    id: item.id, kind: item.kind, title: item.label === '' ? (kind?.name ?? { en: item.kind, es: item.kind }) : { en: item.label, es: item.label },
    outlineM: item.outlineM, isClosed: !isFeature || isArea, isHollow: isArea && item.kind === 'boundary', isFeature,
    isLocked: record.locked, hasFlag: kind?.supportsPipe === true, ridesOnRun: kind?.ridesOnRun === true, isAttached: item.isAttached,
    carrierId: 'place' in record && record.place.at === 'onItem' ? record.place.itemId : null,
    xM: item.xM, yM: item.yM, headingRad: item.headingRad, runningM: item.runningM, offsetM: item.offsetM,
  }
  made.set(item, pickable)
  return pickable
}

/** The pull path beyond the axis: its corners can be dragged once it is chosen. Null for a straight run. */
const ofRun = (site: SiteModel): Pickable | null => {
  const { run } = site
  if (run === null || run.vertices.length === 0) return null
  const [first] = run.vertices
  return {
    id: run.id, kind: 'run', title: { en: 'pull path', es: 'recorrido de tiro' }, outlineM: run.vertices.flatMap(({ xM, yM }) => [xM, yM]),
    isClosed: false, isHollow: false, isFeature: true, isLocked: false, hasFlag: false, ridesOnRun: false, isAttached: false, carrierId: null,
    xM: first!.xM, yM: first!.yM, headingRad: 0, runningM: null, offsetM: null,
  }
}

/** Everything on the plan that can be chosen, hidden kinds left out. O(items); unchanged items keep their object. */
export const pickablesOf = (site: SiteModel, hiddenKinds: readonly string[]): Pickable[] => {
  const list: Pickable[] = []
  for (const item of site.placed.values()) if (!hiddenKinds.includes(item.kind)) list.push(ofItem(item))
  const run = ofRun(site)
  return run === null ? list : [...list, run]
}

/** Length of the stem from the top of a chosen item's frame to its turning handle, px. */
export const TURN_STEM_PX = 30

/** Corners of the selection frame of an item: its outline's box in its own heading, grown by `growPx`. Screen px, in order round. */
export const framePx = (item: Pickable, matrix: Matrix, growPx: number): { xPx: number; yPx: number }[] => {
  const pxPerM = Math.hypot(matrix.a, matrix.b)
  const [cos, sin] = [Math.cos(item.headingRad), Math.sin(item.headingRad)]
  let [leastX, mostX, leastY, mostY] = [0, 0, 0, 0]
  for (let i = 0; i + 1 < item.outlineM.length; i += 2) {
    const [dx, dy] = [item.outlineM[i]! - item.xM, item.outlineM[i + 1]! - item.yM]
    const [x, y] = [dx * cos + dy * sin, dy * cos - dx * sin]
    leastX = Math.min(leastX, x)
    mostX = Math.max(mostX, x)
    leastY = Math.min(leastY, y)
    mostY = Math.max(mostY, y)
  }
  // Never smaller than 16 px, so that a tick in the distance still shows it is chosen.
  const growM = (lengthM: number): number => Math.max(growPx / pxPerM, (16 / pxPerM - lengthM) / 2)
  const [gx, gy] = [growM(mostX - leastX), growM(mostY - leastY)]
  return [[leastX - gx, leastY - gy], [mostX + gx, leastY - gy], [mostX + gx, mostY + gy], [leastX - gx, mostY + gy]].map(([x, y]) => applyMatrix(matrix, item.xM + x! * cos - y! * sin, item.yM + x! * sin + y! * cos))
}

/** Where the turning handle stands: on a stem up the screen from the frame's top edge. */
export const turnHandleAt = (item: Pickable, matrix: Matrix): { xPx: number; yPx: number; fromYPx: number } => {
  const { xPx } = applyMatrix(matrix, item.xM, item.yM)
  const topPx = Math.min(...framePx(item, matrix, 6).map(({ yPx }) => yPx))
  return { xPx, yPx: topPx - TURN_STEM_PX, fromYPx: topPx }
}

/** Handles of what is chosen: one item turns, one feature is reshaped by its corners and the middles of its sides. */
export const handlesOf = (chosen: readonly Pickable[], matrix: Matrix): HandleView[] => {
  const [item] = chosen
  if (item === undefined || chosen.length !== 1 || item.isLocked) return []
  if (!item.isFeature) {
    const { xPx, yPx } = turnHandleAt(item, matrix)
    return [{ kind: 'rotate', id: item.id, index: 0, xPx, yPx }]
  }
  const count = item.outlineM.length >> 1
  const at = (i: number): { xPx: number; yPx: number } => applyMatrix(matrix, item.outlineM[2 * i]!, item.outlineM[2 * i + 1]!)
  const handles: HandleView[] = []
  for (let i = 0; i < count; i++) {
    const here = at(i)
    handles.push({ kind: 'vertex', id: item.id, index: i, ...here })
    if (i === count - 1 && !item.isClosed) continue
    const next = at((i + 1) % count)
    // Sides shorter than two targets keep to their corners.
    if (Math.hypot(next.xPx - here.xPx, next.yPx - here.yPx) < 56) continue
    handles.push({ kind: 'middle', id: item.id, index: i + 1, xPx: (here.xPx + next.xPx) / 2, yPx: (here.yPx + next.yPx) / 2 })
  }
  return handles
}
