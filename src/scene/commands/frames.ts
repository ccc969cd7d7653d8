import type { Env } from '../edit.ts'
import type { RunRecord, SetUpRecord } from '../records/frame.ts'

/** A set-up nothing more is known of than where its nail and its axis lie. */
export const newSetUp = (env: Env, over: Partial<SetUpRecord> & Pick<SetUpRecord, 'datum' | 'headingRad'>): SetUpRecord => ({
  id: env.newId('setUp'), kind: 'setUp', name: '', pitchRad: null, fallRatio: null, crossFallRatio: null, groundLevelM: null, note: null, ...over,
})

/** A pull path of one leg along the axis, its surface unknown. */
export const newRun = (env: Env, setUpId: string): RunRecord => ({ id: env.newId('run'), kind: 'run', setUpId, name: '', vertices: [], surfaces: [null], targetId: null, note: null })
