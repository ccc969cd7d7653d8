import { deriveSite } from '../../derive/site.ts'
import type { SiteModel } from '../../derive/types.ts'
import type { YardDocument } from '../../scene/document.ts'
import { applyEdit } from '../../scene/edit.ts'
import type { App } from '../../state/app.ts'
import type { ViewState } from '../../state/viewStore.ts'

/** The site as the proposal shown would make it; null where there is none, it is of another revision, or its command refuses. */
export const proposedSite = (app: App, proposal: ViewState['proposal'], document: YardDocument): SiteModel | null => {
  if (proposal === null || proposal.revision !== app.documents.getState().revision) return null
  try {
    return deriveSite(applyEdit(document, app.edit(proposal.command, proposal.args)), app.view.getState().shownCase)
  } catch {
    // A command that refuses is told where it is accepted; a ghost of it cannot be drawn.
    return null
  }
}
