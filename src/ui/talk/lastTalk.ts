import { useEffect, useMemo, useState } from 'react'
import { changesBetween, type Change } from '../../scene/changeWords.ts'
import { recordsOf, type YardDocument } from '../../scene/document.ts'
import { planHash } from '../../scene/planHash.ts'
import type { ReleaseRecord } from '../../scene/records/beside.ts'
import { useShownDocument, useUi } from '../context.tsx'
import type { Services } from '../services.ts'

/** Last talk of the log; the log is only added to, so it is the last row. */
export const lastTalkOf = (document: YardDocument): ReleaseRecord | null => recordsOf(document, 'release').findLast(({ what }) => what === 'talk') ?? null

/** Key under which a row of the log names the point in time kept with it. */
export const POINT_KEY = 'point'

/**
 * What changed since the last talk. `unknown`: the plan is another, and what it was then is not on this device (the file
 * came from elsewhere, or storage was cleared).
 */
export type SinceTalk = { kind: 'first' } | { kind: 'looking' } | { kind: 'same'; talk: ReleaseRecord } | { kind: 'unknown'; talk: ReleaseRecord } | { kind: 'changed'; talk: ReleaseRecord; changes: readonly Change[] }

/** The layout as it was at a talk; null where this device does not have it. */
export async function documentAtTalk(services: Pick<Services, 'points' | 'pointDocument'>, talk: ReleaseRecord): Promise<YardDocument | null> {
  const name = talk.extras?.[POINT_KEY]
  if (name === undefined) return null
  const point = (await services.points()).find((one) => one.name === name)
  return point === undefined ? null : services.pointDocument(point.pointId)
}

/** Compares the layout with what it was at the talk; a point that is another plan than the one talked about does not count. */
export function sinceTalk(talk: ReleaseRecord, then: YardDocument | null, now: YardDocument): SinceTalk {
  if (planHash(now) === talk.contentHash) return { kind: 'same', talk }
  if (then === null || planHash(then) !== talk.contentHash) return { kind: 'unknown', talk }
  const changes = changesBetween(then, now)
  return changes.length === 0 ? { kind: 'same', talk } : { kind: 'changed', talk, changes }
}

/** `talk`: the last one held before this; worked out anew whenever the document changes. */
export const useSinceTalk = (talk: ReleaseRecord | null): SinceTalk => {
  const { services } = useUi()
  const document = useShownDocument()
  const [then, setThen] = useState<{ talkId: string; document: YardDocument | null } | null>(null)
  useEffect(() => {
    let isOpen = true
    if (talk !== null) void documentAtTalk(services, talk).catch(() => null).then((found) => { if (isOpen) setThen({ talkId: talk.id, document: found }) })
    return () => { isOpen = false }
  }, [services, talk])
  return useMemo(() => {
    if (talk === null) return { kind: 'first' }
    if (then === null || then.talkId !== talk.id) return { kind: 'looking' }
    return sinceTalk(talk, then.document, document)
  }, [talk, then, document])
}
