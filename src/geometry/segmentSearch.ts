import { type Chain, type Nearest, considerPair, nothingFound, squaredGapM2 } from './segmentPair.ts'

/** Boxes over four consecutive nodes of the level below; level 0 has one box a segment. */
interface BoxLevels {
  /** minX, minY, maxX, maxY of each node, one array a level, the last holding one node. */
  readonly levels: readonly Float64Array[]
}

const FANOUT = 4

/** Up to this many pairs a plain double loop is quicker than building boxes. */
const PLAIN_LOOP_PAIRS = 400

function boxesOf(chain: Chain): BoxLevels {
  const { coords, count } = chain
  let current = new Float64Array(4 * count)
  for (let i = 0; i < count; i++) {
    const [ax, ay] = [coords[2 * i] as number, coords[2 * i + 1] as number]
    const [bx, by] = [coords[2 * i + 2] as number, coords[2 * i + 3] as number]
    current[4 * i] = Math.min(ax, bx)
    current[4 * i + 1] = Math.min(ay, by)
    current[4 * i + 2] = Math.max(ax, bx)
    current[4 * i + 3] = Math.max(ay, by)
  }
  const levels = [current]
  while (current.length > 4) {
    const nodes = current.length / 4
    const parents = new Float64Array(4 * Math.ceil(nodes / FANOUT))
    for (let p = 0; p < parents.length / 4; p++) {
      let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity]
      for (let n = p * FANOUT; n < Math.min(nodes, (p + 1) * FANOUT); n++) {
        minX = Math.min(minX, current[4 * n] as number)
        minY = Math.min(minY, current[4 * n + 1] as number)
        maxX = Math.max(maxX, current[4 * n + 2] as number)
        maxY = Math.max(maxY, current[4 * n + 3] as number)
      }
      parents.set([minX, minY, maxX, maxY], 4 * p)
    }
    levels.push(parents)
    current = parents
  }
  return { levels }
}

function boxGapM2(a: Float64Array, i: number, b: Float64Array, j: number): number {
  return (
    squaredGapM2(a[4 * i] as number, a[4 * i + 2] as number, b[4 * j] as number, b[4 * j + 2] as number) +
    squaredGapM2(a[4 * i + 1] as number, a[4 * i + 3] as number, b[4 * j + 1] as number, b[4 * j + 3] as number)
  )
}

/**
 * Nearest pair of points of two chains of segments. Stops at the first touch.
 * Cost: O(n·m) up to 400 pairs; beyond that branch and bound over boxes, in practice O((n + m) log(n + m)).
 */
export function nearestOfChains(a: Chain, b: Chain): Nearest {
  const best = nothingFound()
  if (a.count * b.count <= PLAIN_LOOP_PAIRS) {
    for (let i = 0; i < a.count; i++) {
      for (let j = 0; j < b.count && best.squaredM2 > 0; j++) considerPair(best, a, i, b, j)
    }
    return best
  }
  const aLevels = boxesOf(a).levels
  const bLevels = boxesOf(b).levels

  const visit = (aLevel: number, i: number, bLevel: number, j: number): void => {
    if (aLevel === 0 && bLevel === 0) return considerPair(best, a, i, b, j)
    const isSplittingA = aLevel >= bLevel
    const level = (isSplittingA ? aLevel : bLevel) - 1
    const boxes = (isSplittingA ? aLevels : bLevels)[level] as Float64Array
    const other = (isSplittingA ? bLevels[bLevel] : aLevels[aLevel]) as Float64Array
    const first = (isSplittingA ? i : j) * FANOUT
    const children: { gapM2: number; node: number }[] = []
    for (let node = first; node < Math.min(boxes.length / 4, first + FANOUT); node++) {
      children.push({ gapM2: boxGapM2(boxes, node, other, isSplittingA ? j : i), node })
    }
    children.sort((p, q) => p.gapM2 - q.gapM2)
    for (const { gapM2, node } of children) {
      if (gapM2 >= best.squaredM2) return
      if (isSplittingA) visit(level, node, bLevel, j)
      else visit(aLevel, i, level, node)
    }
  }
  visit(aLevels.length - 1, 0, bLevels.length - 1, 0)
  return best
}
