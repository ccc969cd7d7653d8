import { lazy, Suspense, type ReactNode } from 'react'
import { QuestionDialog } from '../common/Bars.tsx'
import { usePanels, useUi, useView } from '../context.tsx'
import { listPanels } from '../items/width.ts'

/** Fetched when the first panel is opened: the sheet is there before them. */
const OpenPanels = lazy(() => import('./OpenPanels.tsx'))

/** The talk is a mode of its own; fetched when it is first opened. */
const TalkMode = lazy(() => import('../talk/TalkMode.tsx'))

/** So is setting out by tape. */
const TapeMode = lazy(() => import('../tapeMode/TapeMode.tsx'))

/** Panels that are no dialog: they lie beside the sheet, across it or over all of it. */
const besideTheSheet: ReadonlySet<string> = new Set([...listPanels, 'whatIf', 'talk', 'tape'])

export const Panels = (): ReactNode => {
  const { app } = useUi()
  const panel = useView((view) => view.panel)
  const whyCheckId = usePanels((state) => state.whyCheckId)
  return (
    <>
      {(panel === null || besideTheSheet.has(panel)) && whyCheckId === null ? null : <Suspense><OpenPanels /></Suspense>}
      {panel === 'talk' ? <Suspense><TalkMode onClose={() => { if (app.view.getState().panel === 'talk') app.view.setState({ panel: null }) }} /></Suspense> : null}
      {panel === 'tape' ? <Suspense><TapeMode onClose={() => { if (app.view.getState().panel === 'tape') app.view.setState({ panel: null }) }} /></Suspense> : null}
      <QuestionDialog />
    </>
  )
}
