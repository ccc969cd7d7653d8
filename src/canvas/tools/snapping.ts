import type { UnitSystem } from '../../units/format.ts'
import type { Pickable, SnapMark, ToolContext } from './types.ts'

/** Reach of a snap on screen, px: fingers hide what they point at. */
export const snapReachPx = { mouse: 8, pen: 8, touch: 14 } as const

const inchM = 0.0254
const footM = 0.3048
const steps: Record<UnitSystem, readonly number[]> = {
  feetInches: [inchM, 3 * inchM, 6 * inchM, footM, 5 * footM, 10 * footM, 50 * footM, 100 * footM],
  metric: [0.01, 0.05, 0.1, 0.5, 1, 5, 10, 50, 100],
}

/** The finest round tape distance still worth a step on screen (4 px and more). */
export const roundStepM = (system: UnitSystem, pxPerM: number): number => steps[system].find((stepM) => stepM * pxPerM >= 4) ?? steps[system].at(-1)!

/** Nearest multiple of a step; −0 becomes 0. */
export const roundTo = (valueM: number, stepM: number): number => Math.round(valueM / stepM) * stepM + 0

export interface RunNeighbour {
  id: string
  runningM: number
  offsetM: number
  xM: number
  yM: number
}

export interface RunSnapInput {
  runningM: number
  offsetM: number
  neighbours: readonly RunNeighbour[]
  pxPerM: number
  reachPx: number
  system: UnitSystem
}

export interface RunSnap {
  runningM: number
  offsetM: number
  marks: readonly SnapMark[]
}

/** Nearer than this to the axis counts as on the line, m. */
const onLineM = 0.05

interface Offer {
  valueM: number
  mark: SnapMark
}

/** Distances that repeat the spacing of neighbours on the line: one beyond either pair, and half way between two. */
const equalSpacings = (runningM: number, onLine: readonly number[]): Offer[] => {
  const before = onLine.filter((at) => at < runningM - 1e-9).slice(-2)
  const after = onLine.filter((at) => at > runningM + 1e-9).slice(0, 2)
  const offers: Offer[] = []
  const [b2, b1] = before.length === 2 ? (before as [number, number]) : [null, before[0] ?? null]
  const [a1, a2] = [after[0] ?? null, after[1] ?? null]
  if (b2 !== null && b1 !== null) offers.push({ valueM: 2 * b1 - b2, mark: { kind: 'equal', betweenM: [b2, b1, 2 * b1 - b2] } })
  if (a1 !== null && a2 !== null) offers.push({ valueM: 2 * a1 - a2, mark: { kind: 'equal', betweenM: [2 * a1 - a2, a1, a2] } })
  if (b1 !== null && a1 !== null) offers.push({ valueM: (b1 + a1) / 2, mark: { kind: 'equal', betweenM: [b1, (b1 + a1) / 2, a1] } })
  return offers
}

const nearest = (valueM: number, offers: readonly Offer[], reachM: number): Offer | null => {
  let best: Offer | null = null
  for (const offer of offers) {
    const awayM = Math.abs(offer.valueM - valueM)
    if (awayM <= reachM && (best === null || awayM < Math.abs(best.valueM - valueM))) best = offer
  }
  return best
}

/**
 * A place on the run brought to what lies near: the axis, neighbours (same distance, same offset, equal spacing), else
 * the round distance of the tape at this scale. Both directions snap on their own.
 *
 * Input:  running and offset in m, exit and right positive; reach in px.
 * Output: the place with a mark for every snap that is worth showing.
 */
export const snapOnRun = ({ runningM, offsetM, neighbours, pxPerM, reachPx, system }: RunSnapInput): RunSnap => {
  const reachM = reachPx / pxPerM
  const stepM = roundStepM(system, pxPerM)
  const marks: SnapMark[] = []

  const sidewards = neighbours.filter((n) => Math.abs(n.offsetM) > onLineM).map((n): Offer => ({ valueM: n.offsetM, mark: { kind: 'along', id: n.id, xM: n.xM, yM: n.yM } }))
  const isOnAxis = Math.abs(offsetM) <= reachM
  const beside = isOnAxis ? null : nearest(offsetM, sidewards, reachM)
  const newOffsetM = isOnAxis ? 0 : (beside?.valueM ?? roundTo(offsetM, stepM))
  if (isOnAxis) marks.push({ kind: 'axis', text: { en: 'on the line', es: 'en la línea' } })
  if (beside !== null) marks.push(beside.mark)

  const onLine = neighbours.filter((n) => Math.abs(n.offsetM) <= onLineM).map((n) => n.runningM).sort((a, b) => a - b)
  const offers = [
    ...(isOnAxis ? equalSpacings(runningM, onLine) : []),
    ...neighbours.filter((n) => Math.abs(n.offsetM - newOffsetM) > onLineM).map((n): Offer => ({ valueM: n.runningM, mark: { kind: 'across', id: n.id, xM: n.xM, yM: n.yM } })),
  ]
  const along = nearest(runningM, offers, reachM * 0.5)
  const roundM = roundTo(runningM, stepM)
  // A round distance wins over a neighbour only where it is the same place: a tape is read in round figures anyway.
  if (along !== null) marks.push(along.mark)
  else marks.push({ kind: 'round', runningM: roundM })
  return { runningM: along?.valueM ?? roundM, offsetM: newOffsetM, marks }
}

export interface PointSnap {
  xM: number
  yM: number
  runningM: number | null
  offsetM: number | null
  marks: readonly SnapMark[]
}

export interface PointSnapOptions {
  reachPx: number
  /** Ids that do not count as neighbours: what is being moved and what rides on it. */
  without: ReadonlySet<string>
  /** The point before, for legs square to the axis. */
  from?: { xM: number; yM: number } | undefined
  /** Corners of features and centres of items catch the point. */
  toCorners: boolean
  suspended: boolean
}

type SnapContext = Pick<ToolContext, 'pickables' | 'pxPerM' | 'hasSetUp' | 'toRunning' | 'atRunning' | 'system'>

/** Items near enough along the run to matter; keeps a drag quick among a thousand. */
const neighboursOf = (context: SnapContext, without: ReadonlySet<string>): RunNeighbour[] =>
  context.pickables.flatMap((p) => (p.isFeature || p.runningM === null || p.offsetM === null || without.has(p.id) || (p.carrierId !== null && without.has(p.carrierId)) ? [] : [{ id: p.id, runningM: p.runningM, offsetM: p.offsetM, xM: p.xM, yM: p.yM }]))

const cornerNear = (context: SnapContext, xM: number, yM: number, reachM: number, without: ReadonlySet<string>): { xM: number; yM: number } | null => {
  let best: { xM: number; yM: number } | null = null
  let bestM = reachM
  const offer = (cornerX: number, cornerY: number): void => {
    const awayM = Math.hypot(cornerX - xM, cornerY - yM)
    if (awayM < bestM) [best, bestM] = [{ xM: cornerX, yM: cornerY }, awayM]
  }
  for (const p of context.pickables) {
    if (without.has(p.id)) continue
    if (p.isFeature) for (let i = 0; i + 1 < p.outlineM.length; i += 2) offer(p.outlineM[i]!, p.outlineM[i + 1]!)
    else offer(p.xM, p.yM)
  }
  return best
}

/** A site point brought to what lies near it. Without a set-up, to round site coordinates. */
export const snapPoint = (context: SnapContext, xM: number, yM: number, options: PointSnapOptions): PointSnap => {
  const free = (): PointSnap => {
    const on = context.hasSetUp ? context.toRunning(xM, yM) : null
    return { xM, yM, runningM: on?.runningM ?? null, offsetM: on?.offsetM ?? null, marks: [] }
  }
  if (options.suspended) return free()
  if (options.toCorners) {
    const corner = cornerNear(context, xM, yM, options.reachPx / context.pxPerM, options.without)
    if (corner !== null) {
      const on = context.hasSetUp ? context.toRunning(corner.xM, corner.yM) : null
      return { ...corner, runningM: on?.runningM ?? null, offsetM: on?.offsetM ?? null, marks: [{ kind: 'corner', ...corner }] }
    }
  }
  if (!context.hasSetUp) {
    const stepM = roundStepM(context.system, context.pxPerM)
    return { xM: roundTo(xM, stepM), yM: roundTo(yM, stepM), runningM: null, offsetM: null, marks: [] }
  }
  const at = context.toRunning(xM, yM)
  const snapped = snapOnRun({ ...at, neighbours: neighboursOf(context, options.without), pxPerM: context.pxPerM, reachPx: options.reachPx, system: context.system })
  let { runningM, offsetM } = snapped
  const marks = [...snapped.marks]
  if (options.from !== undefined) {
    const before = context.toRunning(options.from.xM, options.from.yM)
    const reachM = options.reachPx / context.pxPerM
    const isAlong = Math.abs(at.offsetM - before.offsetM) <= reachM
    const isAcross = !isAlong && Math.abs(at.runningM - before.runningM) <= reachM
    if (isAlong) offsetM = before.offsetM
    if (isAcross) runningM = before.runningM
    if (isAlong || isAcross) marks.push({ kind: 'square', xM: options.from.xM, yM: options.from.yM })
  }
  const site = context.atRunning(runningM, offsetM)
  return { xM: site.xM, yM: site.yM, runningM, offsetM, marks }
}

/** Ids that move along: the ones given and everything attached to them, at any depth. */
export const withRiders = (pickables: readonly Pickable[], ids: readonly string[]): Set<string> => {
  const moving = new Set(ids)
  for (let grew = true; grew; ) {
    grew = false
    for (const p of pickables) {
      if (p.carrierId !== null && moving.has(p.carrierId) && !moving.has(p.id)) {
        moving.add(p.id)
        grew = true
      }
    }
  }
  return moving
}
