/** Where a body of some width can go: a field less what stands in it, in parts that hang together. */
import { booleanOpWithPolyTree, ClipType, difference, FillRule, type Path64, type Paths64, type PolyPath64, PolyTree64, union } from 'clipper2-ts'
import { boxesMeet, childrenOf, gridBox, type GridBox, type Obstruction, obstructionPaths, type Piece, piecesOf } from './blockedPieces.ts'
import { fromGrid, type Grid, gridFor, toGrid } from './buffer.ts'
import { areaM2, boundingBox, type Box, containment } from './polygon.ts'
import type { Vec } from './vector.ts'

export type { Obstruction }

/** One connected part of the free field: its outline and what lies in it. */
export interface FreePart {
  outline: readonly Vec[]
  holes: readonly (readonly Vec[])[]
}

/** What is in the way, ready to be taken from the field: worked out once, used with more on top. */
export interface Blocked {
  grid: Grid
  field: Paths64
  pieces: readonly Piece[]
  /** Outlines of what was added before, by the thing added. */
  added: WeakMap<Opened, readonly Outline[]>
}

interface Outline {
  path: Path64
  box: GridBox
}

/** A field (rings by the even-odd rule) with what stands in it whatever the stage. */
export function blockedField(field: readonly (readonly Vec[])[], obstructions: readonly Obstruction[]): Blocked {
  const grid = gridFor(field.flat(), 0)
  return { grid, field: union(field.map((ring) => toGrid(grid, ring)), FillRule.EvenOdd), pieces: piecesOf(grid, obstructions), added: new WeakMap() }
}

/** Things in the way and what opens them, and nothing else: gates and their fences. */
export interface Opened {
  things: readonly Obstruction[]
  openings?: readonly Obstruction[]
}

/**
 * Parts of the field that are free of what is blocked and of what is added, each connected in itself and with no way to
 * another for a point (widen the obstructions by half the body's width to ask for a body). Exact to the grid of
 * buffer.ts; corners as `CORNER_SAG_M` says. Only pieces near an edge of the field or of what is added are cut; every
 * other one is a hole of the part it stands in. Outlines of an `Opened` are worked out once for as long as it lives.
 */
export function freeParts(blocked: Blocked, added: readonly Opened[]): readonly FreePart[] {
  const { grid, field, pieces } = blocked
  const outlines = added.flatMap((one) => outlinesOf(blocked, one))
  const edges = [...field.map((path) => ({ path, box: gridBox(path) })), ...outlines]
  const alone: Piece[] = []
  const cut: Paths64 = outlines.map(({ path }) => path)
  for (const piece of pieces) {
    if (edges.some(({ path, box }) => boxesMeet(box, piece.box) && runsThrough(path, piece.box))) cut.push(piece.outer.path, ...piece.holes.map(({ path }) => path))
    else alone.push(piece)
  }
  const tree = new PolyTree64()
  booleanOpWithPolyTree(ClipType.Difference, field, cut, tree, FillRule.NonZero)
  const parts: GrowingPart[] = []
  collect(grid, tree, parts)
  for (const piece of alone) standIn(parts, piece)
  return parts
}

function outlinesOf({ grid, added }: Blocked, one: Opened): readonly Outline[] {
  let outlines = added.get(one)
  if (outlines === undefined) {
    const pathsOfAll = (all: readonly Obstruction[]): Paths64 => all.flatMap((thing) => obstructionPaths(grid, thing))
    const { things, openings = [] } = one
    const paths = openings.length === 0 ? pathsOfAll(things) : difference(pathsOfAll(things), pathsOfAll(openings), FillRule.NonZero)
    added.set(one, (outlines = paths.map((path) => ({ path, box: gridBox(path) }))))
  }
  return outlines
}

/** Whether a side of the ring comes into the box: its own box does, and the corners are not all on one side of it. */
function runsThrough(path: Path64, { minX, minY, maxX, maxY }: GridBox): boolean {
  let a = path.at(-1)
  for (const b of path) {
    if (a !== undefined && Math.min(a.x, b.x) <= maxX && Math.max(a.x, b.x) >= minX && Math.min(a.y, b.y) <= maxY && Math.max(a.y, b.y) >= minY) {
      const [dx, dy] = [b.x - a.x, b.y - a.y]
      const sides = [dx * (minY - a.y) - dy * (minX - a.x), dx * (minY - a.y) - dy * (maxX - a.x), dx * (maxY - a.y) - dy * (minX - a.x), dx * (maxY - a.y) - dy * (maxX - a.x)]
      if (Math.min(...sides) <= 0 && Math.max(...sides) >= 0) return true
    }
    a = b
  }
  return false
}

interface GrowingPart extends FreePart {
  holes: (readonly Vec[])[]
  /** Holes that were cut, before pieces standing alone are added. */
  cutHoles: readonly (readonly Vec[])[]
}

/** Outer rings stand at the first level of the tree, their holes below, and further parts inside those. */
function collect(grid: Grid, node: PolyPath64, parts: GrowingPart[]): void {
  for (const outer of childrenOf(node)) {
    const nodes = childrenOf(outer)
    const holes = nodes.map((hole) => ringOf(grid, hole))
    parts.push({ outline: ringOf(grid, outer), holes, cutHoles: [...holes] })
    for (const hole of nodes) collect(grid, hole, parts)
  }
}

const ringOf = (grid: Grid, { poly }: PolyPath64): readonly Vec[] => (poly === null ? [] : (fromGrid(grid, [poly])[0] ?? []))

/** A piece no edge comes near is a hole of the smallest part round it, and its own holes are parts. In none, it is blocked ground anyway. */
function standIn(parts: GrowingPart[], { outer, holes }: Piece): void {
  const point = outer.line[0]
  if (point === undefined) return
  const round = parts.filter((part) => isIn(part.outline, part.cutHoles, point))
  const part = round.length < 2 ? round[0] : round.toSorted((a, b) => areaM2(a.outline) - areaM2(b.outline))[0]
  if (part === undefined) return
  part.holes.push(outer.line)
  for (const { line } of holes) parts.push({ outline: line, holes: [], cutHoles: [] })
}

const boxes = new WeakMap<readonly Vec[], Box | null>()

/** Upright box of a ring, worked out once. */
export function boxOf(ring: readonly Vec[]): Box | null {
  let box = boxes.get(ring)
  if (box === undefined) boxes.set(ring, (box = boundingBox(ring)))
  return box
}

const isInBox = (ring: readonly Vec[], { xM, yM }: Vec): boolean => {
  const box = boxOf(ring)
  return box !== null && xM >= box.minXM && xM <= box.maxXM && yM >= box.minYM && yM <= box.maxYM
}

const isIn = (outline: readonly Vec[], holes: readonly (readonly Vec[])[], point: Vec): boolean =>
  isInBox(outline, point) && containment(outline, point) !== 'outside' && holes.every((hole) => !isInBox(hole, point) || containment(hole, point) !== 'inside')

/** Whether a point lies in a part or on its edge. */
export const isInPart = ({ outline, holes }: FreePart, point: Vec): boolean => isIn(outline, holes, point)
