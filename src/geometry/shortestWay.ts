/** The shortest way from one point to another inside a free part: straight lines from corner to corner. */
import { isInPart, type FreePart } from './freeSpace.ts'
import { orientationOfNumbers } from './orientation.ts'
import { between, distanceM, type Vec } from './vector.ts'

/**
 * Points of the shortest way, `from` and `to` included; null where either lies outside the part or no way is found.
 * A* over the corners of the part, lines of sight asked for as they are needed. Cost: corners² · edges at worst; meant
 * for one way on demand, not for every frame.
 */
export function shortestWay(part: FreePart, from: Vec, to: Vec): readonly Vec[] | null {
  if (!isInPart(part, from) || !isInPart(part, to)) return null
  const rings = [part.outline, ...part.holes]
  const corners = [from, to, ...rings.flatMap((ring) => ring.filter((_, i) => isReflex(ring, i)))]
  const seen = new Set<number>()
  const bestM = corners.map(() => Infinity)
  const cameFrom = corners.map(() => -1)
  bestM[0] = 0
  for (;;) {
    let at = -1
    for (let i = 0; i < corners.length; i += 1) {
      if (seen.has(i) || bestM[i] === Infinity) continue
      if (at === -1 || bestM[i]! + distanceM(corners[i]!, to) < bestM[at]! + distanceM(corners[at]!, to)) at = i
    }
    if (at === -1) return null
    if (at === 1) return trace(corners, cameFrom)
    seen.add(at)
    for (let i = 1; i < corners.length; i += 1) {
      if (seen.has(i)) continue
      const reachM = bestM[at]! + distanceM(corners[at]!, corners[i]!)
      if (reachM >= bestM[i]! || !sees(part, rings, corners[at]!, corners[i]!)) continue
      bestM[i] = reachM
      cameFrom[i] = at
    }
  }
}

function trace(corners: readonly Vec[], cameFrom: readonly number[]): Vec[] {
  const way: Vec[] = []
  for (let at = 1; at !== -1; at = cameFrom[at]!) way.unshift(corners[at]!)
  return way
}

/** Rings run with the free field on their left (outline counter-clockwise, holes clockwise): a corner to go round turns right. */
function isReflex(ring: readonly Vec[], i: number): boolean {
  const [a, b, c] = [ring[(i + ring.length - 1) % ring.length]!, ring[i]!, ring[(i + 1) % ring.length]!]
  return orientationOfNumbers(a.xM, a.yM, b.xM, b.yM, c.xM, c.yM) < 0
}

function sees(part: FreePart, rings: readonly (readonly Vec[])[], a: Vec, b: Vec): boolean {
  const [minX, maxX, minY, maxY] = [Math.min(a.xM, b.xM), Math.max(a.xM, b.xM), Math.min(a.yM, b.yM), Math.max(a.yM, b.yM)]
  for (const ring of rings) {
    for (let i = 0, j = ring.length - 1; i < ring.length; j = i, i += 1) {
      const [p, q] = [ring[j]!, ring[i]!]
      if (Math.max(p.xM, q.xM) < minX || Math.min(p.xM, q.xM) > maxX || Math.max(p.yM, q.yM) < minY || Math.min(p.yM, q.yM) > maxY) continue
      if (crosses(a, b, p, q)) return false
    }
  }
  return isInPart(part, between(a, b, 0.5))
}

/** Each pair lies to both sides of the other; touching is no crossing. */
function crosses(a: Vec, b: Vec, p: Vec, q: Vec): boolean {
  const side = (u: Vec, v: Vec, w: Vec): number => orientationOfNumbers(u.xM, u.yM, v.xM, v.yM, w.xM, w.yM)
  return side(a, b, p) * side(a, b, q) < 0 && side(p, q, a) * side(p, q, b) < 0
}
