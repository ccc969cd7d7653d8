import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { body, detailLine, detailOf, gearLine, odOf, outline, part, solid } from './basic.ts'
import type { DrawnFigure } from './basic.ts'
import { lyingSticks } from './sticks.ts'

export interface DrawnRack {
  openSide: 'L' | 'R'
  stopsLeft: boolean | null
  stopsRight: boolean | null
  stickCount: number
  figures: { beamSpacingM: DrawnFigure; beamLengthM: DrawnFigure }
}

const sizeOf = (r: DrawnRack): { halfM: number; openM: number; open: 1 | -1 } => ({
  halfM: (r.figures.beamSpacingM.value ?? 7.112) / 2,
  openM: (r.figures.beamLengthM.value ?? 3.048) - CLOSED_M,
  // y to the left: the open side R lies at negative y.
  open: r.openSide === 'R' ? -1 : 1,
})

/** How far the beams reach beyond the lane on the closed side. */
const CLOSED_M = 0.3
const BEAM_WIDTH_M = 0.213
/** The near end of a stored stick lies this far beyond the near beam, clear of the machine. */
const STICK_BEYOND_BEAM_M = 0.7

/** Beams reach from 1 ft beyond the lane on the closed side to the end of the open side. */
export const rackFootprint = (r: DrawnRack): number[] => {
  const { halfM, openM } = sizeOf(r)
  const half = halfM + 0.15
  const [right, left] = r.openSide === 'R' ? [-openM, CLOSED_M] : [-CLOSED_M, openM]
  return [-half, right, half, right, half, left, -half, left]
}

/** From above: two cross beams on jacks, rails between them, the roller lane on the axis, stops that are up, the sticks stored. */
export const rackPlan = (r: DrawnRack, context: SymbolContext): Primitive[] => {
  const { halfM, openM, open } = sizeOf(r)
  const detail = detailOf(context)
  const beams = [-halfM, halfM]
  const closedY = -open * CLOSED_M
  const openY = open * openM
  const list: Primitive[] = [closedY * 0.55, openY * 0.94].map((y) => ({ t: 'path', points: [-halfM, y, halfM, y], ...detailLine }))
  for (const x of beams) {
    // Jacks stand just beyond the ends of the beam.
    for (const y of [closedY - open * 0.12, openY + open * 0.12]) list.push({ t: 'rect', xM: x - 0.26, yM: y - 0.15, widthM: 0.52, heightM: 0.3, ...part })
    list.push({ t: 'rect', xM: x - BEAM_WIDTH_M / 2, yM: Math.min(closedY, openY), widthM: BEAM_WIDTH_M, heightM: openM + CLOSED_M, ...body })
  }
  const pitch = odOf(context) * 1.13
  const room = Math.max(0, Math.floor((openM - 0.35) / pitch))
  const firstM = open * (0.2 + Math.max(pitch, 0.42))
  // More than one layer fits only on top of the first, so only as many are drawn as lie side by side.
  list.push(...lyingSticks(Math.min(r.stickCount, room), { toM: halfM + STICK_BEYOND_BEAM_M, firstM, pitchM: open * pitch }, context))
  for (const x of beams) {
    list.push(laneRoller(x))
    if (detail === 'far') continue
    const stops = [[r.stopsLeft, 1], [r.stopsRight, -1]] as const
    for (const [isUp, sideSign] of stops) {
      if (isUp === false || context.onShelf === true) continue
      const y = sideSign === open ? openY - open * 0.1 : closedY + open * 0.06
      list.push({ t: 'rect', xM: x - 0.2, yM: y - 0.06, widthM: 0.4, heightM: 0.12, ...(isUp === null ? { fill: 'sheet', stroke: 'ink2', weight: 'context', dash: 'missing' } : solid) })
    }
  }
  return list
}

/** The waisted roller of the lane. */
const laneRoller = (x: number): Primitive => outline([x - 0.29, 0.19, x + 0.29, 0.19, x + 0.13, 0, x + 0.29, -0.19, x - 0.29, -0.19, x - 0.13, 0], solid)

/** Side view: a trestle under each beam, with stops where one is up. */
export const rackSection = (r: DrawnRack, context: SymbolContext & { saddleM: number | null }): Primitive[] => {
  const { halfM } = sizeOf(r)
  const stretch = (context.pxPerLevelM ?? context.pxPerM) / context.pxPerM
  const top = context.saddleM ?? 0.75
  return [-halfM, halfM].flatMap((x) => trestle(x, top, stretch, r.stopsLeft === true || r.stopsRight === true))
}

/** One trestle of a rack at its place: foot, two posts with a brace, the beam, and the stops beside the pipe. */
export const trestle = (x: number, topM: number, stretch: number, hasStops: boolean): Primitive[] => {
  const foot = Math.min(topM * 0.2, 0.13 / stretch)
  const cap = Math.min(topM * 0.25, 0.2 / stretch)
  return [
    outline([x - 0.26, 0, x + 0.26, 0, x + 0.26, foot, x - 0.26, foot], part),
    { t: 'path', points: [x - 0.15, foot, x - 0.15, topM - cap], ...gearLine },
    { t: 'path', points: [x + 0.15, foot, x + 0.15, topM - cap], ...gearLine },
    { t: 'path', points: [x - 0.15, foot, x + 0.15, topM - cap], ...detailLine },
    outline([x - 0.2, topM - cap, x + 0.2, topM - cap, x + 0.2, topM, x - 0.2, topM], body),
    ...(hasStops ? [-0.22, 0.16].map((dx) => outline([x + dx, topM - cap, x + dx + 0.06, topM - cap, x + dx + 0.06, topM + 0.12 / stretch, x + dx, topM + 0.12 / stretch], solid)) : []),
  ]
}
