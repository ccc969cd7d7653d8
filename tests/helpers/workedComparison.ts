/** Figures of the worked layout: by the convention it is stated in, and by the product's own beside it. */
import { footM, inchM, poundForceN } from '../../src/units/factors.ts'
import type { RunThrough } from '../../src/derive/stages/types.ts'
import { ownRun, quarterPoints, softStart, statedLayouts, statedNoseIn, statedString, sunk, without, type Stand } from './workedLayout.ts'

const NOSE_FT = [12.5, 25, 35.7, 46.4, 57.1, 67.8, 80.3, 92.8, 105.3, 117.8, 142.8] as const

/** Our values for a row of shared/cases/worked-layout.json, in its unit. */
export function workedFigures(layout: string, quantity: string): number[] {
  const stated = statedLayouts[layout]
  if (stated === undefined) throw new Error(`there is no layout ${layout}`)
  if (quantity === 'nose') return NOSE_FT.map(statedNoseIn)
  const { result, jaw, jawsLb } = statedString(stated)
  switch (quantity) {
    case 'jaws': return jawsLb
    case 'jawGaps': return [result.supports[jaw]!.gapM / inchM, result.supports[jaw + 1]!.gapM / inchM]
    case 'firstStandGap': return [result.supports[jaw + 2]!.gapM / inchM]
    case 'largestStand': return [Math.max(...result.supports.slice(jaw + 2, jaw + 2 + stated.stands.length).map(({ reactionN }) => reactionN)) / poundForceN]
    default: throw new Error(`there is no figure ${quantity}`)
  }
}

/** Clamps of the exit side at a joint far from the nose, inner and outer, lb. */
const exitLb = (run: RunThrough): [number, number] => {
  const jaws = run.stages.find(({ stage }) => stage.id === 'fuse:5')?.jaws
  if (!jaws) throw new Error('joint 5 of the worked layout is not solved')
  return [jaws.innerExitN / poundForceN, jaws.outerExitN / poundForceN]
}

const whole = (values: readonly number[]): string => values.map((value) => String(Math.round(value) + 0)).join(', ')
const tenth = (value: number): string => (Math.round(value * 10) / 10 + 0).toFixed(1)

/** The section of docs/verification.md that puts the product's own convention beside the stated one. */
export function workedComparison(): string[] {
  const layouts: readonly (readonly [string, string, readonly Stand[]])[] = [
    ['one level stand', 'one level stand', [[12.5, 30], ...quarterPoints(12.5)]],
    ['soft start', 'soft start', softStart],
    ['soft start, stand at 25 ft removed', 'soft start, stand at 25 ft removed', without(25)],
    ['soft start, stand at 25 ft sunk ½ in', 'soft start, stand at 25 ft sunk ½ in', sunk(softStart, 25)],
    ['soft start, stand at 12.5 ft removed', 'soft start, stand at 12.5 ft removed', without(12.5)],
  ]
  const own = ownRun(softStart)
  const arrivals = own.stages.flatMap((stage) => stage.arrivals)
  const noseAt = (xFt: number): string => {
    const arrival = arrivals.find(({ runningM }) => Math.abs(runningM / footM - xFt) < 0.01)
    return arrival === undefined ? '' : tenth(0 - arrival.droopM / inchM)
  }
  const infeed = own.stages.find(({ stage }) => stage.id === 'fuse:5')!.jaws!
  return [
    '## The worked layout by the product’s own convention', '',
    'The same stands as a yard of this product, worked out by the run-through (`tests/helpers/workedLayout.ts`). The two columns answer different questions and are not meant to agree:', '',
    '- **Bodies.** While a joint is fused the string ends at the joint plane and the stick before it is a body of its own; the stated string runs on to −30 ft through both jaws.',
    '- **Clamps.** Ours hold 4 in and 28 in from the joint plane on either side; the stated pair stands at 0 and 2 ft.',
    '- **Nose.** Ours comes in with the jaws open on lifts 2 in up, 4 ft to either side, and the tail where its length puts it: the first two arrivals lie elsewhere, from the third on they agree to 0.4 in.',
    '- **Walls and modulus.** Weight from the mean wall in both; stiffness from the minimum wall and 82,000 psi (0.5 h at 73 °F) here, from the mean wall and 78,000 psi there: EI within 1 %.', '',
    '| exit clamps, inner and outer, lb | stated convention | product |', '| --- | --- | --- |',
    ...layouts.map(([name, stated, stands]) => `| ${name} | ${whole(statedString(statedLayouts[stated]!).jawsLb)} | ${whole(exitLb(ownRun(stands)))} |`), '',
    `The stick of 40 ft behind it on stands at −10 and −20 ft: infeed clamps ${whole([infeed.innerInfeedN / poundForceN, infeed.outerInfeedN / poundForceN])} lb. The tail of 30 ft of the stated layout hides that; with 40 ft it shows ${whole(statedString(statedLayouts['soft start, tail of 40 ft']!).jawsLb)} lb.`, '',
    'Both conventions agree on what matters: one level stand makes the jaws fight, two with a soft start do not, the last level stand is the one to guard and the one nearest the jaws is not.', '',
    '| nose over the roller, in, at ft | stated convention | product |', '| --- | --- | --- |',
    ...NOSE_FT.map((xFt) => `| ${xFt} | ${tenth(statedNoseIn(xFt))} | ${noseAt(xFt)} |`), '',
  ]
}
