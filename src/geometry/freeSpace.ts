/** Where a body of some width can go: a field less what stands in it, in parts that hang together. */
import { booleanOpWithPolyTree, ClipType, difference, FillRule, PolyTree64, type Paths64, union, type PolyPath64 } from 'clipper2-ts'
import { filled, fromGrid, type Grid, gridFor, toGrid, widened } from './buffer.ts'
import type { Shape } from './distance.ts'
import { boundingBox, containment } from './polygon.ts'
import type { Vec } from './vector.ts'

/** Something in the way, kept off by `roomM` all round. */
export interface Obstruction {
  shape: Shape
  roomM: number
}

/** One connected part of the free field: its outline and what lies in it. */
export interface FreePart {
  outline: readonly Vec[]
  holes: readonly (readonly Vec[])[]
}

/** What is in the way, ready to be taken from the field: worked out once, used with more on top. */
export interface Blocked {
  grid: Grid
  field: Paths64
  paths: Paths64
}

/** Round corners are flattened this far inside the true arc, m; straight sides are exact to the grid. */
const CORNER_SAG_M = 0.02

const pathsOf = (grid: Grid, { shape, roomM }: Obstruction): Paths64 => {
  const points = shape.kind === 'point' ? [shape.point] : shape.points
  const first = points[0]
  if (first === undefined) return []
  if (shape.kind !== 'polygon') return widened(grid, points, roomM, CORNER_SAG_M)
  return [...filled(grid, points), ...(roomM > 0 ? widened(grid, [...points, first], roomM, CORNER_SAG_M) : [])]
}

/** A field (rings by the even-odd rule) with what stands in it whatever the stage. */
export function blockedField(field: readonly (readonly Vec[])[], obstructions: readonly Obstruction[]): Blocked {
  const grid = gridFor(field.flat(), 0)
  return { grid, field: union(field.map((ring) => toGrid(grid, ring)), FillRule.EvenOdd), paths: union(obstructions.flatMap((one) => pathsOf(grid, one)), FillRule.NonZero) }
}

/** Things in the way and what opens them, and nothing else: gates and their fences. */
export interface Opened {
  things: readonly Obstruction[]
  openings?: readonly Obstruction[]
}

/**
 * Parts of the field that are free of what is blocked and of what is added, each connected in itself and with no way to
 * another for a point (widen the obstructions by half the body's width to ask for a body). Exact to the grid of
 * buffer.ts; corners as `CORNER_SAG_M` says.
 */
export function freeParts({ grid, field, paths }: Blocked, added: readonly Opened[]): readonly FreePart[] {
  const pathsOfAll = (all: readonly Obstruction[]): Paths64 => all.flatMap((one) => pathsOf(grid, one))
  const opened = added.flatMap(({ things, openings = [] }) => (openings.length === 0 ? pathsOfAll(things) : difference(pathsOfAll(things), pathsOfAll(openings), FillRule.NonZero)))
  const tree = new PolyTree64()
  booleanOpWithPolyTree(ClipType.Difference, field, [...paths, ...opened], tree, FillRule.NonZero)
  const parts: FreePart[] = []
  collect(grid, tree, parts)
  return parts
}

const childrenOf = (node: PolyPath64): PolyPath64[] => Array.from({ length: node.count }, (_, i) => node.child(i))

/** Outer rings stand at the first level of the tree, their holes below, and further parts inside those. */
function collect(grid: Grid, node: PolyPath64, parts: FreePart[]): void {
  for (const outer of childrenOf(node)) {
    const holes = childrenOf(outer)
    parts.push({ outline: ringOf(grid, outer), holes: holes.map((hole) => ringOf(grid, hole)) })
    for (const hole of holes) collect(grid, hole, parts)
  }
}

const ringOf = (grid: Grid, { poly }: PolyPath64): readonly Vec[] => (poly === null ? [] : (fromGrid(grid, [poly])[0] ?? []))

const boxes = new WeakMap<FreePart, ReturnType<typeof boundingBox>>()

/** Whether a point lies in a part or on its edge. */
export function isInPart(part: FreePart, point: Vec): boolean {
  let box = boxes.get(part)
  if (box === undefined) boxes.set(part, (box = boundingBox(part.outline)))
  if (box === null || point.xM < box.minXM || point.xM > box.maxXM || point.yM < box.minYM || point.yM > box.maxYM) return false
  return containment(part.outline, point) !== 'outside' && part.holes.every((hole) => containment(hole, point) !== 'inside')
}
