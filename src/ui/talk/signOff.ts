import { renderText } from '../../messages/render.ts'
import { talkWords } from '../../messages/ui/talkWords.ts'
import type { Localized } from '../../messages/localized.ts'
import type { Stage } from '../../derive/types.ts'
import { layoutOf } from '../../scene/document.ts'
import { planHash } from '../../scene/planHash.ts'
import type { ReleaseRecord } from '../../scene/records/beside.ts'
import type { App } from '../../state/app.ts'
import type { Services } from '../services.ts'
import { POINT_KEY } from './lastTalk.ts'
import type { TalkSession } from './session.ts'
import { stageIdOf } from './talkModel.ts'

/**
 * Keeps a talk in the layout's log, which is only added to and not undone, and the plan as it is as a named point in
 * time, so that the next talk can say what changed. A point that cannot be kept does not hold up the sign-off. Null where
 * this window only reads.
 */
export async function signOff(app: Pick<App, 'documents' | 'env'>, services: Pick<Services, 'keepPoint'>, talk: Pick<TalkSession, 'languages' | 'people' | 'note'>, stage: Stage, phaseName: Localized): Promise<{ signed: ReleaseRecord; isPointMissing: boolean } | null> {
  const { document, writable } = app.documents.getState()
  if (!writable) return null
  const when = app.env.now()
  const { displayUnits, revision } = layoutOf(document)
  const name = renderText(talkWords.pointName, { phase: phaseName, when }, { language: talk.languages[0] ?? 'en', system: displayUnits }).slice(0, 200)
  const isKept = await services.keepPoint(name).then(({ ok }) => ok).catch(() => false)
  const signed: ReleaseRecord = {
    id: app.env.newId('release'), kind: 'release', letter: revision, what: 'talk', when, contentHash: planHash(document), replaces: null, text: talk.note.trim() === '' ? null : talk.note.trim(),
    stageId: stageIdOf(stage), language: talk.languages.length > 1 ? 'both' : (talk.languages[0] ?? 'en'), people: [...talk.people], ...(isKept ? { extras: { [POINT_KEY]: name } } : {}),
  }
  return app.documents.getState().append([signed]) ? { signed, isPointMissing: !isKept } : null
}
