import { JOB_ID, LAYOUT_ID, type YardDocument, type YardRecord } from './document.ts'
import type { Env } from './edit.ts'
import { infeedRoomM, lineAt, stripCorners } from './commands/strip.ts'
import { boundary } from './kinds/boundary.ts'
import { unknownFigure } from './parts.ts'
import { jobUnsaid, type JobRecord, type LayoutRecord } from './records/frame.ts'

/** The short form of a new yard. Every field may be skipped (null). Fall: drop per length down-string, positive falls to the exit. */
export interface NewYardForm {
  title?: string
  profile?: LayoutRecord['profile']
  pipe: JobRecord['pipe']
  neededLengthM: number | null
  stickLengthM: number | null
  stripLengthM: number | null
  stripWidthM: number | null
  fallRatio: number | null
}

type Units = LayoutRecord['displayUnits']

const layoutOfForm = (env: Env, displayUnits: Units, form: Partial<NewYardForm>): LayoutRecord => ({
  id: LAYOUT_ID, kind: 'layout', layoutId: env.newId('layout'), title: form.title ?? '', displayUnits, unitOverrides: {},
  profile: form.profile ?? (displayUnits === 'feetInches' ? 'US' : 'metric-generic'), northRad: null, mapOrigin: null, revision: 'A', note: null,
})

const jobOfForm = (form: Partial<NewYardForm>): JobRecord => ({
  id: JOB_ID, kind: 'job', pipe: form.pipe ?? null, stickLengthM: form.stickLengthM ?? null, otherStickLengthM: null, neededLengthM: form.neededLengthM ?? null, tailsM: 0,
  jointLossM: unknownFigure(), wallTemperatureC: unknownFigure(), temperatureSwingC: unknownFigure(), firstStick: 'setByLoader', noseHold: null, ...jobUnsaid(), note: null,
})

const documentOf = (records: readonly YardRecord[]): YardDocument => ({ records: Object.fromEntries(records.map((record) => [record.id, record])) })

/** A layout with nothing on it: no set-up, no site, the job unknown. */
export const emptyDocument = (env: Env, displayUnits: Units): YardDocument => documentOf([layoutOfForm(env, displayUnits, {}), jobOfForm({})])

/**
 * The yard of the short form: datum at 0, 0, axis along +x, run and machine; with length and width of the strip its
 * boundary too, placed so that one stick and 10 ft fit on the infeed and the exit has the rest. A strip of which only one
 * of the two is known has no boundary: an invented width would raise findings nobody can answer.
 */
export function newDocument(form: NewYardForm, env: Env, displayUnits: Units): YardDocument {
  const { stripLengthM: lengthM, stripWidthM: widthM } = form
  const records: YardRecord[] = [layoutOfForm(env, displayUnits, form), jobOfForm(form), ...lineAt(env, { xM: 0, yM: 0 }, 0, form.fallRatio)]
  if (lengthM !== null && widthM !== null) {
    const end = { xM: -infeedRoomM(form.stickLengthM, lengthM), yM: 0 }
    const ring = stripCorners({ end, headingRad: 0, lengthM, widthM })
    records.push(boundary.create(env.newId('boundary'), { place: { at: 'free', ...end, headingRad: 0 }, points: ring, setUpId: '', runId: '' }))
  }
  return documentOf(records)
}
