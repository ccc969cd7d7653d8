/**
 * What a stretch of path does to the pull of the string behind it: force in → max(floor, scale·force + shift).
 *
 * Straights, arcs and rows of them are all of this form (scale > 0), and so is one after another, so the effect of
 * any row of pieces is three numbers. `floor` −Infinity is the plain sum that may turn negative.
 */
export interface ForceMap {
  readonly scaleFactor: number
  readonly shiftN: number
  readonly floorN: number
}

export const UNCHANGED: ForceMap = { scaleFactor: 1, shiftN: 0, floorN: -Infinity }

export const applyMap = (map: ForceMap, forceN: number): number => Math.max(map.floorN, map.scaleFactor * forceN + map.shiftN)

/** `first`, then `second`. */
export const followedBy = (first: ForceMap, second: ForceMap): ForceMap => ({
  scaleFactor: first.scaleFactor * second.scaleFactor,
  shiftN: second.scaleFactor * first.shiftN + second.shiftN,
  floorN: Math.max(second.floorN, second.scaleFactor * first.floorN + second.shiftN),
})

/** The map with its floor taken away. */
export const withoutFloor = (map: ForceMap): ForceMap => ({ ...map, floorN: -Infinity })

/** Combined maps of any run of consecutive pieces. */
export interface MapRuns {
  /** The pieces from `from` up to, not including, `to`; `UNCHANGED` for none. Cost O(log n). */
  readonly run: (from: number, to: number) => ForceMap
}

/** Binary tree over the maps. Cost O(n) to build. */
export function mapRuns(maps: readonly ForceMap[]): MapRuns {
  const count = maps.length
  const nodes: ForceMap[] = [...Array.from({ length: count }, () => UNCHANGED), ...maps]
  for (let node = count - 1; node > 0; node--) nodes[node] = followedBy(nodes[2 * node] as ForceMap, nodes[2 * node + 1] as ForceMap)
  const run = (from: number, to: number): ForceMap => {
    let before = UNCHANGED
    let after = UNCHANGED
    for (let low = from + count, high = to + count; low < high; low >>= 1, high >>= 1) {
      if (low & 1) before = followedBy(before, nodes[low++] as ForceMap)
      if (high & 1) after = followedBy(nodes[--high] as ForceMap, after)
    }
    return followedBy(before, after)
  }
  return { run }
}
