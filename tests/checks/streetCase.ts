import { deriveSite } from '../../src/derive/site.ts'
import type { CheckDefinition, Finding } from '../../src/checks/finding.ts'
import type { YardDocument, YardRecord } from '../../src/scene/document.ts'
import { after as commanded } from '../helpers/commands.ts'
import { documentOf, item, job, layout, onRun, run, setUp, testEnv } from '../helpers/documents.ts'
import { boxM, findingsOf, ftM, inM, machineAt0, withFigures } from './yardCase.ts'

/*
 * A slipline in a short street: 900 ft of host and 14 ft of tails, 24 in IPS DR 17 in 50 ft sticks, 1.5 in lost at a joint.
 * 19 sticks: 19 × 50 − 18 × 0.125 = 947.75 ft; 18 would make 897.9 of 914. The street is closed over 360 × 34 ft.
 */
const street = { pipe: { system: 'IPS', size: '24', dr: 17, material: 'PE4710' }, stickLengthM: 50 * ftM, neededLengthM: 900 * ftM, tailsM: 14 * ftM, jointLossM: { value: 1.5 * inM, basis: 'measured' } } as const
/** Ids go on counting from step to step. */
const env = testEnv()
export const after = (document: YardDocument, name: string, args: unknown): YardDocument => commanded(document, name, args, env)

/** Rope 8, puller 12, over-run 10: a lead of 30 ft. */
const puller = withFigures('puller', 'puller:1', onRun(268 * ftM), { ropeLengthM: 8 * ftM, lengthM: 12 * ftM, widthM: 6 * ftM })
/** The rack's far frame reaches 71 ft behind the datum: 55 of infeed and 16 of machine. */
const rack = (() => {
  const beamM = 40 * ftM
  const reachM = 71 * ftM
  return withFigures('rack', 'rack:1', onRun(-(reachM - beamM / 2 - 0.15)), { beamSpacingM: beamM, beamLengthM: 6 * ftM })
})()
const kerbs = item('boundary', 'boundary:1', boxM(-72 * ftM, 288 * ftM, -7 * ftM, 27 * ftM))
export const calder = (...records: readonly YardRecord[]): YardDocument => documentOf(layout(), job(street), setUp({ fallRatio: 0, crossFallRatio: 0 }), run({ surfaces: ['asphalt'] }), machineAt0(), rack, puller, kerbs, ...records)
export const inStrings = (counts: readonly number[], ...records: readonly YardRecord[]): YardDocument => after(calder(...records), 'splitStrings', { setUpId: 'setUp:1', counts, side: 'left' })
export const findings = (check: CheckDefinition, document: YardDocument): readonly Finding[] => findingsOf(check, deriveSite(document))
