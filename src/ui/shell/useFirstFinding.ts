import { useEffect } from 'react'
import { useUi } from '../context.tsx'
import { numberedFindings } from '../findings/order.ts'

/** After a new yard is drawn its first finding opens, as soon as the checks have settled. */
export const useFirstFinding = (): void => {
  const { app, panels } = useUi()
  useEffect(() => app.results.subscribe(({ run, stamp, status }) => {
    if (!panels.getState().opensFirst || run === null || status !== 'settled' || stamp !== app.site.getState().stamp) return
    panels.setState({ opensFirst: false })
    const first = numberedFindings(run)[0]
    if (first !== undefined) app.view.setState({ openFindingKey: first.finding.key })
  }), [app, panels])
}
