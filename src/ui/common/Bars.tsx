import { lazy, Suspense, useEffect, useState, type ReactNode } from 'react'
import { useStore } from 'zustand'
import { useCommand } from '../command.ts'
import { useDocuments, usePanels, useTell, useUi, useView, useWords } from '../context.tsx'
import { nudgeOf, NUDGE_EDITS } from '../keep/nudge.ts'
import { Panel } from './Panel.tsx'

/** Fetched when a file should be saved. */
const KeepBar = lazy(() => import('../keep/KeepBar.tsx'))

/** Fetched when a new version waits. */
const UpdateBar = lazy(() => import('../keep/UpdateBar.tsx'))

/** Fetched with the first question asked in wet mode. */
const HoldButton = lazy(() => import('../wet/HoldButton.tsx'))

const NOTICE_MS = 5000

/** A short notice; after a move by touch it offers to take the move back for five seconds. */
export const Notice = (): ReactNode => {
  const { app } = useUi()
  const { say } = useWords()
  const notice = useView((view) => view.notice)
  const revision = useDocuments((state) => state.revision)
  const [held, setHeld] = useState(false)
  useEffect(() => {
    if (notice === null || held) return
    const timer = setTimeout(() => { if (app.view.getState().notice === notice) app.view.setState({ notice: null }) }, NOTICE_MS)
    return () => clearTimeout(timer)
  }, [notice, held, app])
  // Undo belongs to the step that was told of; another step since then makes it wrong.
  const mayUndo = notice !== null && notice.undo && notice.atRevision === revision
  return (
    <div className="notice-place" role="status" aria-live="polite">
      {notice === null ? null : (
        <div className="notice" onPointerEnter={() => setHeld(true)} onPointerLeave={() => setHeld(false)} onFocus={() => setHeld(true)} onBlur={() => setHeld(false)}>
          <span>{notice.text}</span>
          {mayUndo ? <button type="button" onClick={() => { app.documents.getState().undo(); app.view.setState({ notice: null }) }}>{say('undoLoud')}</button> : null}
        </div>
      )}
    </div>
  )
}

/** A proposal drawn as a ghost: accept makes it one step, clear takes it away. It holds only for the revision it was made from. */
export const ProposalBar = (): ReactNode => {
  const { app } = useUi()
  const words = useWords()
  const run = useCommand()
  const proposal = useView((view) => view.proposal)
  const revision = useDocuments((state) => state.revision)
  const isOld = proposal !== null && proposal.revision !== revision
  useEffect(() => {
    // Made again from the layout as it is now; the ghost follows.
    if (proposal !== null && isOld && proposal.isSearched !== true) app.view.setState({ proposal: { ...proposal, revision } })
  }, [proposal, isOld, revision, app])
  // A searched proposal has a card of its own.
  if (proposal === null || proposal.isSearched === true) return null
  const accept = (): void => {
    app.view.setState({ proposal: null })
    run(proposal.command, proposal.args, { text: proposal.label })
  }
  return (
    <section className="proposal-bar" aria-label={words.say('proposal')}>
      <p><strong>{words.local(proposal.label)}</strong><span>{proposal.command === 'usualSetUp' ? words.say('usualSetUpAbout') : words.say('proposalAbout')}</span></p>
      <span className="buttons">
        <button type="button" className="primary" onClick={accept}>{words.say('accept')}</button>
        <button type="button" onClick={() => app.view.setState({ proposal: null })}>{words.say('clear')}</button>
      </span>
    </section>
  )
}

/** What is in hand: says what the next tap does and how to let go. */
export const ToolHint = (): ReactNode => {
  const { app } = useUi()
  const { say } = useWords()
  const tool = useView((view) => view.tool)
  // The roll-off tool has a bar of its own, which says what came of it.
  if (tool === null || tool.name === 'rollOff') return null
  return (
    <div className="tool-hint" role="status">
      <span>{say(`hint_${tool.name}`)}</span>
      <button type="button" onClick={() => app.view.setState({ tool: null })}>{say('letGo')}</button>
    </div>
  )
}

/** Lines across the top that stay until what they say is over: reading only, an unsaved state, an example's copy. */
export const StateBars = (): ReactNode => {
  const { services } = useUi()
  const words = useWords()
  const { say } = words
  const tell = useTell()
  const storage = useStore(services.storage)
  const hasUpdate = useStore(services.update, ({ isReady }) => isReady)
  const [hidden, setHidden] = useState<string | null>(null)
  const [putOff, setPutOff] = useState({ nudge: '', edits: 0 })
  const nudge = storage.saved === 'saved' ? nudgeOf(storage) : null
  const isNudged = nudge !== null && (putOff.nudge !== nudge || storage.editsSinceFile < putOff.edits || storage.editsSinceFile >= putOff.edits + NUDGE_EDITS)
  return (
    <>
      {hasUpdate ? <Suspense><UpdateBar /></Suspense> : null}
      {storage.heldElsewhere ? <div className="state-bar" role="status"><span>{say('heldElsewhere')}</span><button type="button" onClick={() => void services.takeOver().then(tell)}>{say('takeOver')}</button></div> : null}
      {storage.saved === 'unsaved' || storage.saved === 'blocked' ? <div className="state-bar state-bar-bad" role="alert"><span>{storage.reason === null ? say('savedNot') : words.local(storage.reason)}</span><button type="button" onClick={() => void services.saveFile().then(tell)}>{say('saveCopy')}</button></div> : null}
      {isNudged ? <Suspense><KeepBar nudge={nudge} onLater={() => setPutOff({ nudge, edits: storage.editsSinceFile })} /></Suspense> : null}
      {storage.recovered === null || hidden === storage.recovered.en ? null : <div className="state-bar" role="status"><span>{words.local(storage.recovered)}</span><button type="button" onClick={() => setHidden(storage.recovered?.en ?? null)}>{say('understood')}</button></div>}
      {storage.isExample ? <div className="state-bar state-bar-quiet" role="region" aria-label={say('isExample')}><span>{say('isExample')}</span><button type="button" onClick={() => void services.resetExample().then(tell)}>{say('putBack')}</button></div> : null}
    </>
  )
}

/** A question before something that is hard to take back. */
export const QuestionDialog = (): ReactNode => {
  const question = usePanels((state) => state.question)
  const wet = useView((view) => view.wet)
  if (question === null) return null
  const { title, lines, yes, no, danger, answer } = question
  return (
    <Panel
      question title={title} onClose={() => answer(false)}
      foot={<>{danger && wet ? <Suspense><HoldButton className="danger" onConfirm={() => answer(true)}>{yes}</HoldButton></Suspense> : <button type="button" className={danger ? 'danger' : 'primary'} onClick={() => answer(true)}>{yes}</button>}{no === undefined ? null : <button type="button" autoFocus onClick={() => answer(false)}>{no}</button>}</>}
    >
      {lines.map((line) => <p key={line}>{line}</p>)}
    </Panel>
  )
}
