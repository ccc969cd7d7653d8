import { boundsOfPoints, pointInRing } from './rings.ts'
import type { HandleView, Pickable, PointerKind } from '../tools/types.ts'

/** Least size of what a finger can be asked to hit, px. */
export const TOUCH_TARGET_PX = 48
/** On touch, a symbol smaller than this is chosen by its flag on the tape. */
export const TOUCH_SYMBOL_PX = 24
/** A mouse or pen hits a stroke within this, and a small symbol as if it were this large, px. */
const mouseSlackPx = 4
const MOUSE_TARGET_PX = 22

export interface HitQuery {
  xM: number
  yM: number
  pxPerM: number
  pointer: PointerKind
}

interface Candidate {
  id: string
  areaM2: number
  awayM: number
  rank: number
}

const boundsOf = (p: Pickable): { leastX: number; leastY: number; mostX: number; mostY: number } => boundsOfPoints(p.outlineM) ?? { leastX: p.xM, leastY: p.yM, mostX: p.xM, mostY: p.yM }

const awayFromSegment = (x: number, y: number, ax: number, ay: number, bx: number, by: number): number => {
  const [dx, dy] = [bx - ax, by - ay]
  const squared = dx * dx + dy * dy
  const share = squared === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / squared))
  return Math.hypot(x - ax - share * dx, y - ay - share * dy)
}

/** Distance from a point to the stroke of an outline, m. Infinity for an outline of fewer than two points. */
const awayFromStroke = (outlineM: readonly number[], isClosed: boolean, xM: number, yM: number): number => {
  const count = outlineM.length >> 1
  let away = Infinity
  for (let i = 0; i < (isClosed ? count : count - 1); i++) {
    const j = (i + 1) % count
    away = Math.min(away, awayFromSegment(xM, yM, outlineM[2 * i]!, outlineM[2 * i + 1]!, outlineM[2 * j]!, outlineM[2 * j + 1]!))
  }
  return away
}

/**
 * Items under a point, best first: what the point is inside of, smallest first; then items within reach, nearest first;
 * then wide features of the site. Tapping again at the same place walks down this list.
 *
 * Reach: whatever makes the target 48 px for a finger, 22 px for a mouse (lines and areas of the site: 4 px). On touch a symbol under 24 px that has a flag
 * on the tape is chosen by its flag, unless it is the only gear in reach: then the tap can mean nothing else.
 */
export const itemsUnder = (pickables: readonly Pickable[], { xM, yM, pxPerM, pointer }: HitQuery): string[] => {
  const targetPx = pointer === 'touch' ? TOUCH_TARGET_PX : MOUSE_TARGET_PX
  const widestSlackM = targetPx / 2 / pxPerM
  const found: Candidate[] = []
  const byFlag: Candidate[] = []
  for (const p of pickables) {
    const b = boundsOf(p)
    if (xM < b.leastX - widestSlackM || xM > b.mostX + widestSlackM || yM < b.leastY - widestSlackM || yM > b.mostY + widestSlackM) continue
    const [widthM, heightM] = [b.mostX - b.leastX, b.mostY - b.leastY]
    const longPx = Math.max(widthM, heightM) * pxPerM
    const isInside = p.isClosed && !p.isHollow && p.outlineM.length >= 6 && pointInRing(p.outlineM, xM, yM)
    const strokeM = p.outlineM.length >= 4 ? awayFromStroke(p.outlineM, p.isClosed, xM, yM) : Math.hypot(xM - p.xM, yM - p.yM)
    const shortPx = p.isHollow || !p.isClosed ? 0 : Math.min(widthM, heightM) * pxPerM
    // Lines of the site are under much else: a mouse has to be on them.
    const slackPx = pointer !== 'touch' && p.isFeature ? mouseSlackPx : Math.max(mouseSlackPx, (targetPx - shortPx) / 2)
    if (!isInside && strokeM * pxPerM > slackPx) continue
    const list = pointer === 'touch' && p.hasFlag && longPx < TOUCH_SYMBOL_PX ? byFlag : found
    list.push({ id: p.id, areaM2: p.isClosed ? widthM * heightM : 0, awayM: isInside ? 0 : strokeM, rank: p.isFeature ? 2 : isInside ? 0 : 1 })
  }
  if (byFlag.length === 1 && found.every(({ rank }) => rank === 2)) found.push(byFlag[0]!)
  // Within features a line drawn under the point goes before the area it lies in.
  found.sort((a, b) => a.rank - b.rank || (a.rank === 1 ? a.awayM - b.awayM : a.areaM2 - b.areaM2 || a.awayM - b.awayM))
  return found.map(({ id }) => id)
}

/** What the next tap at the same place chooses: the item beneath the one chosen, round to the top again. */
export const nextBeneath = (under: readonly string[], selection: readonly string[]): string | null => {
  if (under.length === 0) return null
  const at = under.findIndex((id) => selection.includes(id))
  return under[(at + 1) % under.length]!
}

/** Ids of items whose outline lies wholly in a box of the screen's own directions, given as a ring in the site frame. */
export const itemsInBox = (pickables: readonly Pickable[], ringM: readonly number[]): string[] =>
  pickables.flatMap((p) => {
    const points = p.outlineM.length >= 2 ? p.outlineM : [p.xM, p.yM]
    for (let i = 0; i + 1 < points.length; i += 2) if (!pointInRing(ringM, points[i]!, points[i + 1]!)) return []
    return [p.id]
  })

/** The handle under a screen point: 24 px about it for a finger, 10 px for a mouse; the nearest wins. */
export const handleUnder = (handles: readonly HandleView[], xPx: number, yPx: number, pointer: PointerKind): HandleView | null => {
  let best: HandleView | null = null
  let bestPx = pointer === 'touch' ? TOUCH_TARGET_PX / 2 : 10
  for (const handle of handles) {
    const awayPx = Math.hypot(handle.xPx - xPx, handle.yPx - yPx)
    if (awayPx < bestPx) [best, bestPx] = [handle, awayPx]
  }
  return best
}
