/**
 * A worked layout of a 12 in IPS DR 17 string: by the convention it is stated in, on the bare beam, and by the product's own, as a yard.
 * Stated: BOP 30 in, ground rollers 6 in, level ground, E 78,000 psi, mean wall for weight and stiffness, jaws as two points at 0 and
 * 2 ft, tail at −30 ft on stands at −10 and −20 ft, lay-down of 42.9 ft with stands at 74, 31 and 5 % of 24 in.
 */
import { deriveSite } from '../../src/derive/site.ts'
import { runThroughOf } from '../../src/derive/stages/runThrough.ts'
import type { RunThrough } from '../../src/derive/stages/types.ts'
import { solveContactBeam } from '../../src/engine/beam/solveContactBeam.ts'
import type { ContactBeamResult, PointSupport } from '../../src/engine/beam/types.ts'
import { footM, inchM, poundForceN, psiPa } from '../../src/units/factors.ts'
import { fusionYard } from './fusionYard.ts'

const odM = 12.75 * inchM
const idM = odM - 2 * 1.06 * 0.75 * inchM
export const statedSection = {
  bendingStiffnessNm2: (78_000 * psiPa * Math.PI * (odM ** 4 - idM ** 4)) / 64,
  lineLoadNPerM: (955 * 9.80665 * Math.PI * (odM ** 2 - idM ** 2)) / 4,
}

/** Place in ft, height of the bottom of pipe in inches. */
export type Stand = readonly [number, number]

/** Quarter points of the 42.9 ft lay-down at 74, 31 and 5 % of 24 in, set to a tenth. */
export const quarterPoints = (fromFt: number): Stand[] => [[fromFt + 10.7, 23.7], [fromFt + 21.4, 13.5], [fromFt + 32.2, 7.2], [fromFt + 42.9, 6]]
export const softStart: readonly Stand[] = [[12.5, 30], [25, 28.5], [35.7, 21.5], [46.4, 12.5], [57.1, 7.25], [67.8, 6]]
export const twoBehind: readonly Stand[] = [[-20, 30], [-10, 30]]

export interface StatedLayout {
  stands: readonly Stand[]
  behind?: readonly Stand[]
  tailFt?: number
  areJawsOpen?: boolean
}

const support = ([xFt, heightIn]: Stand): PointSupport => ({ xM: xFt * footM, levelM: heightIn * inchM })
const ground = { xM: [0], levelM: [0] }
/** Rollers on from the last stand, 12.5 ft apart. */
const rowFrom = (lastFt: number, count: number): Stand[] => Array.from({ length: count }, (_, i): Stand => [lastFt + 12.5 * (i + 1), 6])

export interface StatedString {
  result: ContactBeamResult
  /** Index of the inner jaw among the supports; the outer follows, then the stands. */
  jaw: number
  /** At 0 and at 2 ft, lb. */
  jawsLb: [number, number]
}

/** The string of 250 ft beyond the jaws. */
export function statedString({ stands, behind = twoBehind, tailFt = 30, areJawsOpen = false }: StatedLayout): StatedString {
  const jaw = (xFt: number): PointSupport => ({ ...support([xFt, 30]), twoWay: !areJawsOpen })
  const supports = [...behind.map(support), jaw(0), jaw(2), ...[...stands, ...rowFrom(stands.at(-1)![0], 14)].map(support)]
  const result = solveContactBeam({ startM: -tailFt * footM, lengthM: (tailFt + 250) * footM, section: statedSection, supports, ground })
  const at = behind.length
  return { result, jaw: at, jawsLb: [result.supports[at]!.reactionN / poundForceN, result.supports[at + 1]!.reactionN / poundForceN] }
}

export const without = (xFt: number): Stand[] => softStart.filter(([x]) => x !== xFt)
export const sunk = (list: readonly Stand[], xFt: number): Stand[] => list.map(([x, h]): Stand => [x, x === xFt ? h - 0.5 : h])

/** Bottom of pipe less roller top, in, with the tip at a support of the soft start or of the row behind it; jaws closed. */
export function statedNoseIn(xFt: number): number {
  const row = [...softStart, ...rowFrom(67.8, 8)]
  const heightIn = row.find(([x]) => Math.abs(x - xFt) < 1e-6)![1]
  const jaws = [0, 2].map((x) => ({ ...support([x, 30]), twoWay: true }))
  const supports = [...twoBehind.map(support), ...jaws, ...row.filter(([x]) => x < xFt - 1e-6).map(support)]
  const result = solveContactBeam({ startM: -30 * footM, lengthM: (30 + xFt) * footM, section: statedSection, supports, ground })
  return result.ends.levelM[1] / inchM - heightIn
}

/** Layouts by the name they go under in shared/cases/worked-layout.json. */
export const statedLayouts: Readonly<Record<string, StatedLayout>> = {
  'one level stand': { stands: [[12.5, 30], ...quarterPoints(12.5)] },
  'one level stand, jaws open': { stands: [[12.5, 30], ...quarterPoints(12.5)], areJawsOpen: true },
  'two level stands, jaws open': { stands: [[12.5, 30], [25, 30], ...quarterPoints(25)], areJawsOpen: true },
  'soft start': { stands: softStart },
  'soft start, stand at 25 ft removed': { stands: without(25) },
  'soft start, stand at 25 ft sunk ½ in': { stands: sunk(softStart, 25) },
  'soft start, stand at 12.5 ft removed': { stands: without(12.5) },
  'soft start, rear infeed stand removed': { stands: softStart, behind: [[-10, 30]] },
  'soft start, stand at −10 ft sunk ½ in': { stands: softStart, behind: sunk(twoBehind, -10) },
  'soft start, tail of 40 ft': { stands: softStart, tailFt: 40 },
}

/** The same stands as a yard of the product: 40 ft sticks, its own clamps, walls, modulus, bodies and lifts. */
export const ownRun = (stands: readonly Stand[], infeedFt: readonly number[] = [-10, -20]): RunThrough =>
  runThroughOf(deriveSite(fusionYard({
    neededFt: 250, infeed: infeedFt, rollers: rowFrom(67.8, 14).map(([x]) => x), job: { noseHold: 'free', firstStick: 'fedThrough' },
    exits: stands.map(([x, heightIn]) => [x, 30 - heightIn] as const),
  })))
