import { lazy, Suspense, type ReactNode } from 'react'
import { QuestionDialog } from '../common/Bars.tsx'
import { usePanels, useView } from '../context.tsx'

/** Fetched when the first panel is opened: the sheet is there before them. */
const OpenPanels = lazy(() => import('./OpenPanels.tsx'))

export const Panels = (): ReactNode => {
  const panel = useView((view) => view.panel)
  const whyCheckId = usePanels((state) => state.whyCheckId)
  return (
    <>
      {(panel === null || panel === 'items') && whyCheckId === null ? null : <Suspense><OpenPanels /></Suspense>}
      <QuestionDialog />
    </>
  )
}
