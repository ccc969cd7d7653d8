/** What stands in a field as separate pieces: things that overlap are joined, the rest are left alone. */
import { booleanOpWithPolyTree, ClipType, FillRule, type Path64, type Paths64, type PolyPath64, PolyTree64 } from 'clipper2-ts'
import { filled, fromGrid, type Grid, toGrid, widened } from './buffer.ts'
import type { Shape } from './distance.ts'
import type { Vec } from './vector.ts'

/** Something in the way, kept off by `roomM` all round. */
export interface Obstruction {
  shape: Shape
  roomM: number
}

/** Upright box in steps of the grid. */
export interface GridBox {
  minX: number
  minY: number
  maxX: number
  maxY: number
}

/** One ring on the grid, and in metres turned about: as the edge of the free ground beside it. */
export interface Ring {
  path: Path64
  line: readonly Vec[]
}

/** A connected piece of blocked ground; pieces share no area. What lies in a hole of one comes after it. */
export interface Piece {
  outer: Ring
  holes: readonly Ring[]
  box: GridBox
}

/** Round corners are flattened this far inside the true arc, m; straight sides are exact to the grid. */
export const CORNER_SAG_M = 0.02
const FULL_TURN_RAD = 2 * Math.PI

/** Outlines of obstructions; rings that turn one way all round are widened without the library, to the same sag. */
export function obstructionPaths(grid: Grid, { shape, roomM }: Obstruction): Paths64 {
  const points = shape.kind === 'point' ? [shape.point] : shape.points
  const first = points[0]
  if (first === undefined) return []
  const radius = roomM / grid.stepM
  if (shape.kind === 'point') return radius < 0.5 ? [] : [disc(toGrid(grid, points)[0]!, radius, grid)]
  if (shape.kind !== 'polygon') return widened(grid, points, roomM, CORNER_SAG_M)
  const convex = convexRing(toGrid(grid, points))
  if (convex !== null) return [radius < 0.5 ? convex : roundedConvex(convex, radius, grid)]
  return [...filled(grid, points), ...(roomM > 0 ? widened(grid, [...points, first], roomM, CORNER_SAG_M) : [])]
}

/** Chords a radian that keep the sag. */
function stepsPerRad(radius: number, grid: Grid): number {
  const sagRatio = Math.min(1, CORNER_SAG_M / grid.stepM / radius)
  return 1 / (2 * Math.acos(1 - sagRatio))
}

function disc({ x, y }: { x: number; y: number }, radius: number, grid: Grid): Path64 {
  const steps = Math.max(4, Math.ceil(stepsPerRad(radius, grid) * FULL_TURN_RAD))
  return Array.from({ length: steps }, (_, i) => ({ x: Math.round(x + radius * Math.cos((i * FULL_TURN_RAD) / steps)), y: Math.round(y + radius * Math.sin((i * FULL_TURN_RAD) / steps)) }))
}

/** The ring counter-clockwise without repeated points where it turns one way, once round; else null. */
function convexRing(path: Path64): Path64 | null {
  const ring = path.filter(({ x, y }, i) => { const before = path.at(i - 1)!; return x !== before.x || y !== before.y })
  if (ring.length < 3) return null
  let turnRad = 0
  let sign = 0
  for (let i = 0; i < ring.length; i += 1) {
    const [a, b, c] = [ring.at(i - 1)!, ring[i]!, ring[(i + 1) % ring.length]!]
    const [ux, uy, vx, vy] = [b.x - a.x, b.y - a.y, c.x - b.x, c.y - b.y]
    const [cross, dot] = [ux * vy - uy * vx, ux * vx + uy * vy]
    if (cross === 0 && dot < 0) return null
    if (cross !== 0 && sign !== 0 && Math.sign(cross) !== sign) return null
    if (cross !== 0) sign = Math.sign(cross)
    turnRad += Math.atan2(cross, dot)
  }
  if (sign === 0 || Math.abs(turnRad) > 1.5 * FULL_TURN_RAD) return null
  return sign > 0 ? ring : ring.toReversed()
}

function roundedConvex(ring: Path64, radius: number, grid: Grid): Path64 {
  const perRad = stepsPerRad(radius, grid)
  const out: Path64 = []
  for (let i = 0; i < ring.length; i += 1) {
    const [a, b, c] = [ring.at(i - 1)!, ring[i]!, ring[(i + 1) % ring.length]!]
    // Outward normals of the sides before and after, counter-clockwise: to the right of the way.
    const fromRad = Math.atan2(a.x - b.x, b.y - a.y)
    const toRad = Math.atan2(b.x - c.x, c.y - b.y)
    const angleRad = (toRad - fromRad + 2 * FULL_TURN_RAD) % FULL_TURN_RAD
    const steps = Math.max(1, Math.ceil(perRad * angleRad))
    for (let k = 0; k <= steps; k += 1) {
      const atRad = fromRad + (angleRad * k) / steps
      out.push({ x: Math.round(b.x + radius * Math.cos(atRad)), y: Math.round(b.y + radius * Math.sin(atRad)) })
    }
  }
  return out
}

export function gridBox(path: Path64): GridBox {
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity }
  for (const { x, y } of path) {
    if (x < box.minX) box.minX = x
    if (x > box.maxX) box.maxX = x
    if (y < box.minY) box.minY = y
    if (y > box.maxY) box.maxY = y
  }
  return box
}

export const boxesMeet = (a: GridBox, b: GridBox): boolean => a.minX <= b.maxX && a.maxX >= b.minX && a.minY <= b.maxY && a.maxY >= b.minY

/** Pieces of what stands in a field. Only things whose boxes meet are joined by the library: its cost grows faster than their number. */
export function piecesOf(grid: Grid, obstructions: readonly Obstruction[]): Piece[] {
  const things = obstructions.map((one) => obstructionPaths(grid, one)).filter((paths) => paths.length > 0)
  return clustersOf(things.map((paths) => ({ paths, box: gridBox(paths.flat()) }))).flatMap((cluster) => {
    const [only] = cluster
    if (cluster.length === 1 && only!.length === 1) return [piece(grid, only![0]!, [])]
    const tree = new PolyTree64()
    booleanOpWithPolyTree(ClipType.Union, cluster.flat(), null, tree, FillRule.NonZero)
    return inTree(grid, tree)
  })
}

/** Free ground lies to the left of an edge: round a hole in it clockwise. */
const ringOf = (grid: Grid, path: Path64): Ring => ({ path, line: (fromGrid(grid, [path])[0] ?? []).toReversed() })
const piece = (grid: Grid, outer: Path64, holes: readonly Path64[]): Piece => ({ outer: ringOf(grid, outer), holes: holes.map((hole) => ringOf(grid, hole)), box: gridBox(outer) })

export const childrenOf = (node: PolyPath64): PolyPath64[] => Array.from({ length: node.count }, (_, i) => node.child(i))

/** Outer rings stand at the first level of the tree, their holes below, and further pieces inside those. */
function inTree(grid: Grid, node: PolyPath64): Piece[] {
  return childrenOf(node).flatMap((outer) => {
    const holes = childrenOf(outer)
    return [piece(grid, outer.poly ?? [], holes.map(({ poly }) => poly ?? [])), ...holes.flatMap((hole) => inTree(grid, hole))]
  })
}

/** Groups of things whose boxes meet, through others too. */
function clustersOf(things: readonly { paths: Paths64; box: GridBox }[]): Paths64[][] {
  const sorted = things.toSorted((a, b) => a.box.minX - b.box.minX)
  const leader = sorted.map((_, i) => i)
  const find = (i: number): number => { let at = i; while (leader[at] !== at) at = leader[at]!; return at }
  let open: number[] = []
  sorted.forEach(({ box }, i) => {
    open = open.filter((j) => sorted[j]!.box.maxX >= box.minX)
    for (const j of open) if (boxesMeet(sorted[j]!.box, box)) leader[find(j)] = find(i)
    open.push(i)
  })
  const groups = new Map<number, Paths64[]>()
  sorted.forEach(({ paths }, i) => { const key = find(i); const group = groups.get(key); if (group === undefined) groups.set(key, [paths]); else group.push(paths) })
  return [...groups.values()]
}
