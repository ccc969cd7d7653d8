import { describe, expect, it } from 'vitest'
import { gaugeDrag } from '../../src/checks/list/gaugeDrag.ts'
import { carriageDragsOf } from '../../src/derive/carriageDrags.ts'
import { onRun } from '../helpers/documents.ts'
import { findingsOf, ftM, levelsOf, rollersAt, siteOf, withFigures } from './yardCase.ts'

const rollers = rollersAt(11 * ftM, 320 * ftM, 11 * ftM)
const machine = (carriageSide: 'infeed' | 'exit', figures: Record<string, number | null> = {}) => withFigures('machine', 'machine:1', onRun(0), { pistonAreaM2: 0.003, fusionForceLimitN: 40_000, ...figures }, { carriageSide })
const yard = (fallRatio: number, carriageSide: 'infeed' | 'exit', figures: Record<string, number | null> = {}) => siteOf({ setUp: { fallRatio } }, machine(carriageSide, figures), ...rollers)

describe('drag on the gauge', () => {
  it('carriage on the infeed moves the loose stick only: 0.1 of its weight on the level', () => {
    // Roller friction 0.1 (ASTM F1962 planning value, from memory).
    const site = yard(0, 'infeed')
    const [drag, ...more] = carriageDragsOf(site)
    expect(more).toEqual([])
    const weightN = site.pipe.properties!.lineLoadNPerM * site.sticks.stickLengthM!
    expect(drag!.movingN).toBeCloseTo(0.1 * weightN, 6)
    expect(drag!.pressurePa).toBeCloseTo((0.1 * weightN) / 0.003, 3)
  })
  it('carriage on the exit moves the whole string: at joint k 0.1 of the weight of k sticks', () => {
    const site = yard(0, 'exit')
    for (const { joint, movingN } of carriageDragsOf(site)) expect(movingN / (0.1 * site.pipe.properties!.lineLoadNPerM * site.sticks.stringLengthM(joint)), `joint ${joint}`).toBeCloseTo(1, 9)
  })
  it('the slope adds where it goes up and takes off where it goes down: µ cosα ± sinα', () => {
    // Falling 2 % to the exit: toward the exit 0.1 − 0.02 = 0.08 of the weight per plan length, back 0.12.
    const q = siteOf({}).pipe.properties!.lineLoadNPerM
    const stickM = 40 * ftM
    expect(carriageDragsOf(yard(0.02, 'infeed'))[0]!.movingN).toBeCloseTo(0.08 * q * stickM, 0)
    const last = carriageDragsOf(yard(0.02, 'exit')).at(-1)!
    expect(last.movingN / (q * yard(0, 'exit').sticks.stringLengthM(last.joint))).toBeCloseTo(0.12, 3)
  })
  it('is met with its figure on the gauge where the carriage pushes enough', () => {
    const [met, ...more] = findingsOf(gaugeDrag, yard(0, 'infeed'))
    expect([met!.level, more]).toEqual(['met', []])
    expect(met!.what.text.en).toContain('{gauge} on the gauge')
    // 10 in DR 17: mean wall not in it, 75 psi on π (OD − t) t with OD 10.75 in, t 10.75/17: 20.1 in², some 1,507 lb.
    expect(met!.limit!.value! / 4.4482216152605).toBeCloseTo(1507, -1)
  })
  it('is CHECK where drag is more than the fusion force, FIX where both are more than the carriage pushes', () => {
    const site = yard(0, 'exit')
    const last = carriageDragsOf(site).at(-1)!
    expect(levelsOf(gaugeDrag, yard(0, 'exit', { fusionForceLimitN: last.movingN + last.fusionForceN - 1 }))).toEqual(['met', 'FIX'])
    expect(levelsOf(gaugeDrag, yard(0, 'exit', { fusionForceLimitN: last.movingN + last.fusionForceN + 1 }))).toEqual(['met'])
    // A tenth of the usual pressure between the faces: 151 lb against some 240 lb of drag.
    const light = siteOf({ job: { procedure: procedureOf(7.5 * 6894.757) } }, machine('exit'), ...rollers)
    expect(levelsOf(gaugeDrag, light)).toEqual(['CHECK'])
  })
  it('names what is missing on the machine and never passes without it', () => {
    const missingOf = (figures: Record<string, number | null>) => findingsOf(gaugeDrag, yard(0, 'infeed', figures)).filter(({ isUnknown }) => isUnknown).flatMap(({ level, missing }) => [level, ...missing.map(({ path }) => path)])
    expect(missingOf({ fusionForceLimitN: null })).toEqual(['CHECK', 'figures.fusionForceLimitN.value'])
    expect(missingOf({ pistonAreaM2: null })).toEqual(['CHECK', 'figures.pistonAreaM2.value'])
    expect(missingOf({ pistonAreaM2: null, fusionForceLimitN: null })).toHaveLength(3)
  })
})

/** An operator's procedure that says only the pressure between the faces. */
function procedureOf(interfacialPressurePa: number) {
  const none = { value: null, basis: 'jobRule' as const }
  return { name: '', heaterC: none, soakS: none, openCloseS: none, coolS: none, holdBeforePullS: none, beadM: none, interfacialPressurePa: { value: interfacialPressurePa, basis: 'jobRule' as const } }
}
