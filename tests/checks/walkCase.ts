import type { CheckDefinition, Finding } from '../../src/checks/finding.ts'
import { deriveSite } from '../../src/derive/site.ts'
import type { SiteModel } from '../../src/derive/types.ts'
import type { YardRecord } from '../../src/scene/document.ts'
import type { PlacedRecord } from '../../src/scene/kinds/index.ts'
import type { JobRecord, RunRecord, SetUpRecord } from '../../src/scene/records/frame.ts'
import { documentOf, item, job, layout, run, setUp } from '../helpers/documents.ts'
import { findingsOf, ftM, inM, withFigures } from './yardCase.ts'

/*
 * A gas main along a lane: 1,320 ft of 8 in IPS DR 11 in 40 ft sticks, ¾ in lost at a joint. 34 sticks make
 * 34 × 40 − 33 × 0.0625 = 1,357.94 ft; 33 make 1,318. Carriage travel 12 in: gaps of 18 to 24 in.
 */
export const lane = { method: 'walking', pipe: { system: 'IPS', size: '8', dr: 11, material: 'PE4710' }, stickLengthM: 40 * ftM, neededLengthM: 1320 * ftM, jointLossM: { value: 0.75 * inM, basis: 'measured' } } as const
export const END_FT = 34 * 40 - 33 * 0.0625

interface Parts {
  job?: Partial<JobRecord>
  run?: Partial<RunRecord>
  setUp?: Partial<SetUpRecord>
}

/** Machine of 11 × 6.2 ft with a carriage travel of 12 in, the fall of the ground known. */
export const laneSite = (parts: Parts, ...records: readonly YardRecord[]): SiteModel => {
  const machine = withFigures('machine', 'machine:1', { at: 'onRun', runId: 'run:1', runningM: 0, offsetM: 0, turnRad: 0 }, { carriageTravelM: 12 * inM, lengthM: 11 * ftM, widthM: 6.2 * ftM })
  return deriveSite(documentOf(layout(), job({ ...lane, ...parts.job }), setUp({ fallRatio: 0, crossFallRatio: 0, ...parts.setUp }), run({ surfaces: ['grass'], ...parts.run }), machine, ...records))
}

export const laneFindings = (check: CheckDefinition, parts: Parts, ...records: readonly YardRecord[]): readonly Finding[] => findingsOf(check, laneSite(parts, ...records))

/** A driveway square across the line. */
export const driveway = (number: number, atFt: number, widthFt: number, traffic: 'open' | 'closed' | null = null): PlacedRecord => {
  const made = item('road', `road:${number}`, [{ xM: atFt * ftM, yM: -20 }, { xM: atFt * ftM, yM: 20 }], { name: `drive ${number}`, traffic }) as PlacedRecord & { figures: Record<string, unknown> }
  return { ...made, figures: { widthM: { value: widthFt * ftM, basis: 'measured' } } } as PlacedRecord
}

