import { layoutOf } from '../../scene/document.ts'
import { releaseNow, type ReleasedAs } from '../../scene/revision.ts'
import type { App } from '../../state/app.ts'
import type { Keeper } from './keeper.ts'

/**
 * Notes in the log that the plan leaves the device, and keeps it as a point in time under its letter, to be compared
 * with later. Nothing where this plan left in the same way before, or where this window only reads. Answers at once, so
 * that the share sheet may still be opened by the same tap; the point is kept meanwhile.
 */
export const releasePlan = (app: App, keeper: Keeper, what: ReleasedAs): void => {
  const { documents, env } = app
  const { raised, row } = releaseNow(documents.getState().document, what, env)
  if (raised !== null) documents.getState().commit({ text: { en: `revision ${raised.revision}`, es: `revisión ${raised.revision}` } }, { put: [raised], remove: [] })
  if (row === null || !documents.getState().append([row])) return
  const { document } = documents.getState()
  void keeper.keepPoint(layoutOf(document).layoutId, `${row.letter} ${what}`, document).catch(() => undefined)
}
