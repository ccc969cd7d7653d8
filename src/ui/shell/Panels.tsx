import { lazy, Suspense, type ReactNode } from 'react'
import { QuestionDialog } from '../common/Bars.tsx'
import { usePanels, useView } from '../context.tsx'
import { listPanels } from '../items/width.ts'

/** Fetched when the first panel is opened: the sheet is there before them. */
const OpenPanels = lazy(() => import('./OpenPanels.tsx'))

/** Panels that are no dialog: they lie beside the sheet or across it. */
const besideTheSheet: ReadonlySet<string> = new Set([...listPanels, 'whatIf'])

export const Panels = (): ReactNode => {
  const panel = useView((view) => view.panel)
  const whyCheckId = usePanels((state) => state.whyCheckId)
  return (
    <>
      {(panel === null || besideTheSheet.has(panel)) && whyCheckId === null ? null : <Suspense><OpenPanels /></Suspense>}
      <QuestionDialog />
    </>
  )
}
