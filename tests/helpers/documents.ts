import { JOB_ID, LAYOUT_ID, type YardDocument, type YardRecord } from '../../src/scene/document.ts'
import type { Env } from '../../src/scene/edit.ts'
import { kindOf, type PlacedKind, type PlacedRecord } from '../../src/scene/kinds/index.ts'
import type { Place } from '../../src/scene/parts.ts'
import { jobUnsaid, type JobRecord, type LayoutRecord, type RunRecord, type SetUpRecord, type StringRecord } from '../../src/scene/records/frame.ts'

/** Ids by counter and a fixed clock: what the edge gives the commands, made predictable. */
export const testEnv = (): Env => {
  let count = 0
  return { newId: (prefix) => `${prefix}:t${++count}`, now: () => '2025-06-03T14:32:00.000Z' }
}

export const layout = (over: Partial<LayoutRecord> = {}): LayoutRecord => ({
  id: LAYOUT_ID, kind: 'layout', layoutId: 'layout-test', title: 'Test yard', displayUnits: 'feetInches', unitOverrides: {}, profile: 'US',
  northRad: null, mapOrigin: null, revision: 'A', note: null, ...over,
})

export const job = (over: Partial<JobRecord> = {}): JobRecord => ({
  id: JOB_ID, kind: 'job', pipe: null, stickLengthM: null, otherStickLengthM: null, neededLengthM: null, tailsM: 0,
  jointLossM: { value: null, basis: 'typical' }, wallTemperatureC: { value: null, basis: 'typical' }, temperatureSwingC: { value: null, basis: 'typical' },
  firstStick: 'setByLoader', noseHold: null, ...jobUnsaid(), note: null, ...over,
})

export const setUp = (over: Partial<SetUpRecord> = {}): SetUpRecord => ({
  id: 'setUp:1', kind: 'setUp', name: '', datum: { xM: 0, yM: 0 }, headingRad: 0, pitchRad: null, fallRatio: null, crossFallRatio: null, groundLevelM: null, note: null, ...over,
})

export const run = (over: Partial<RunRecord> = {}): RunRecord => ({ id: 'run:1', kind: 'run', setUpId: 'setUp:1', name: '', vertices: [], surfaces: [null], targetId: null, note: null, ...over })

/** A string of the set-up; the number is its place in the order. */
export const stringAt = (number: number, over: Partial<StringRecord> = {}): StringRecord => ({ id: `string:${number}`, kind: 'string', setUpId: 'setUp:1', runId: 'run:1', name: '', stickCount: null, parkingRow: null, parkingSide: 'right', order: number - 1, joinedToId: null, note: null, ...over })

export const onRun = (runningM: number, over: Partial<Extract<Place, { at: 'onRun' }>> = {}): Place => ({ at: 'onRun', runId: 'run:1', runningM, offsetM: 0, turnRad: 0, ...over })
export const free = (xM: number, yM: number, headingRad = 0): Place => ({ at: 'free', xM, yM, headingRad })
export const onItem = (itemId: string, dxM = 0, dyM = 0, turnRad = 0): Place => ({ at: 'onItem', itemId, dxM, dyM, turnRad })

/** A record of any placeable kind as the app itself would make it. */
export const item = (kind: PlacedKind, id: string, at: Place | readonly { xM: number; yM: number }[], over: Record<string, unknown> = {}): PlacedRecord => {
  // An array has a method `at`, so it is told by being an array.
  const where = Array.isArray(at) ? { place: free(0, 0), points: at as readonly { xM: number; yM: number }[] } : { place: at as Place }
  return { ...kindOf(kind)!.create(id, { ...where, setUpId: 'setUp:1', runId: 'run:1' }), ...over } as PlacedRecord
}

export const documentOf = (...records: readonly YardRecord[]): YardDocument => ({ records: Object.fromEntries(records.map((record) => [record.id, record])) })

/** Layout, job, one set-up at 0, 0 heading +x with its run, and the records given. */
export const yard = (...records: readonly YardRecord[]): YardDocument => documentOf(layout(), job(), setUp(), run(), ...records)
