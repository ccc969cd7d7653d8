import type { ReactNode } from 'react'
import type { ProposalKind } from '../../checks/proposals/types.ts'
import { proposalWords } from '../../messages/ui/proposalWords.ts'
import { useDocuments, useSite, useUi, useWords } from '../context.tsx'

/** Asks for a proposal; on a phone its ghost is on the plan, so that is turned to. */
export const ProposeButton = ({ kind, className }: { kind: ProposalKind; className?: string }): ReactNode => {
  const { app, services } = useUi()
  const { local } = useWords()
  const writable = useDocuments((state) => state.writable)
  const press = (): void => {
    const { form } = app.view.getState()
    app.view.setState({ tool: null, gearOpen: form === 'desktop' && app.view.getState().gearOpen, panel: null, ...(form === 'phone' ? { leaf: 'plan' as const } : {}) })
    services.proposals.ask(kind)
  }
  return <button type="button" className={className} disabled={!writable} onClick={press}>{local(proposalWords[kind])}</button>
}

/** Both, below the gear of the line; nothing on a layout without a line. */
export const ProposeButtons = (): ReactNode => {
  const { local } = useWords()
  const hasLine = useSite((state) => state.site.run !== null)
  if (!hasLine) return null
  return (
    <div className="propose-buttons" role="group" aria-label={local(proposalWords.group)}>
      <ProposeButton kind="stands" />
      <ProposeButton kind="rollers" />
    </div>
  )
}
export default ProposeButtons
