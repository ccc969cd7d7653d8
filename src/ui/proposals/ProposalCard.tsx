import { useEffect, useRef, type ReactNode } from 'react'
import { useStore } from 'zustand'
import type { FindingLine, ProposalResult, SupportCounts } from '../../checks/proposals/types.ts'
import { proposalWords as words } from '../../messages/ui/proposalWords.ts'
import { Figure } from '../common/Figure.tsx'
import { LevelMark } from '../common/LevelMark.tsx'
import { useCommand } from '../command.ts'
import { useUi, useView, useWords } from '../context.tsx'
import { openMissing } from '../findings/actions.ts'
import { levelKey, sentenceWords } from '../findings/words.ts'
import '../styles/proposal.css'

const LEAST_PX = 170
const MOST_PX = 400

/** The search while it runs, and what it answers: beside the ghost on the plan, so that both are seen together. */
const ProposalCard = (): ReactNode => {
  const card = useRef<HTMLElement>(null)
  useEffect(() => {
    const before = document.activeElement
    card.current?.focus({ preventScroll: true })
    return () => {
      // Where the focus came from is where it goes back, unless it has gone elsewhere meanwhile.
      if (document.activeElement === document.body && before instanceof HTMLElement && before.isConnected) before.focus({ preventScroll: true })
    }
  }, [])
  const { services } = useUi()
  const { local, figure } = useWords()
  const { kind, status, share, result, failure } = useStore(services.proposals.store)
  // Never taller than the plan it lies on: its foot stays in sight and its body scrolls.
  const planPx = useView((view) => view.bandSizePx.plan.heightPx)
  if (kind === null) return null
  const clear = <button type="button" onClick={() => services.proposals.clear()}>{local(status === 'working' ? words.cancel : words.clear)}</button>
  return (
    <section ref={card} tabIndex={-1} className="proposal-card" style={{ maxHeight: Math.max(LEAST_PX, Math.min(MOST_PX, planPx - 24)) }} aria-label={local(words[kind])} aria-busy={status === 'working'} onKeyDown={(event) => { if (event.key === 'Escape') { event.stopPropagation(); services.proposals.clear() } }}>
      <header><strong>{local(words[kind])}</strong></header>
      <div className="proposal-body" tabIndex={0} role="group" aria-label={local(words[kind])}>
        {status === 'working' ? <p role="status">{local(words.working, { share: figure({ kind: 'percent', value: Math.round(share * 100) / 100 }) })}<progress max={1} value={share} aria-label={local(words[kind])} /></p> : null}
        {status === 'failed' ? <p role="alert">{local(words.failed, { reason: failure ?? '' })}</p> : null}
        {status === 'done' && result !== null ? <Answer result={result} /> : null}
      </div>
      <footer className="buttons">{status === 'done' && result?.status === 'found' ? <Accept result={result} /> : null}{clear}</footer>
    </section>
  )
}
export default ProposalCard

type Found = Extract<ProposalResult, { status: 'found' }>

/** One step, of the layout it was searched from: the desk lets go first, so that the new revision starts no other search. */
const Accept = ({ result }: { result: Found }): ReactNode => {
  const { services } = useUi()
  const { local } = useWords()
  const run = useCommand()
  return (
    <button
      type="button" className="primary"
      onClick={() => {
        const { command, args, label } = result.command
        services.proposals.clear()
        run(command, args, { text: label })
      }}
    >{local(words.accept)}</button>
  )
}

const Answer = ({ result }: { result: ProposalResult }): ReactNode => {
  const reader = useWords()
  const { local, figure } = reader
  const { app } = useUi()
  switch (result.status) {
    case 'found': return <FoundAnswer result={result} />
    case 'nothing': return <p role="status">{local(words.nothing)} <span className="quiet-text">{local(words.nothingCounts, { stands: result.present.stands, rollers: result.present.rollers })}</span></p>
    case 'missing': return <><h3>{local(words.missing)}</h3><ul>{result.missing.map((input) => <li key={`${input.recordId}|${input.path}`}><button type="button" className="link" onClick={() => openMissing(app, input)}>{local(input.label)}</button></li>)}</ul></>
    case 'impossible':
      return (
        <>
          <h3 role="status">{local(words.impossible)}</h3>
          <ul>
            {result.unmet.map(({ title, what, by, gear }) => (
              <li key={title.en + what.text.en}>
                <strong>{local(title)}</strong>{by === null ? null : <>: <Figure text={local(words.by, { by: figure(by) })} /></>}
                <p><Figure text={sentenceWords(what, reader)} /></p>
                <p className="proposal-gear"><Figure text={local(words.gear, { gear: sentenceWords(gear, reader) })} /></p>
              </li>
            ))}
          </ul>
        </>
      )
  }
}

const FoundAnswer = ({ result }: { result: Found }): ReactNode => {
  const reader = useWords()
  const { local } = reader
  const { present, proposed, clears, toConfirm, reasons, said } = result
  const saved = present.stands + present.rollers - proposed.stands - proposed.rollers
  return (
    <>
      <p className="quiet-text" role="status">{local(words.shown)}</p>
      <Counts present={present} proposed={proposed} />
      {clears.length === 0 ? <p>{local(words.clearsNone, { count: saved })}</p> : <Lines title={local(words.clears)} lines={clears} />}
      <p className="quiet-text">{local(words.raisesNone)}</p>
      {said.map((sentence) => <p key={sentence.text.en}><Figure text={sentenceWords(sentence, reader)} /></p>)}
      <h3>{local(words.reasons)}</h3>
      <ul className="proposal-reasons">{reasons.map(({ fromM, kind, text }) => <li key={`${kind}${fromM}`}><Figure text={sentenceWords(text, reader)} /></li>)}</ul>
      {toConfirm.length === 0 ? null : <Lines title={local(words.toConfirm)} lines={toConfirm} />}
    </>
  )
}

const Counts = ({ present, proposed }: { present: SupportCounts; proposed: SupportCounts }): ReactNode => {
  const { local } = useWords()
  const rows = [[words.standCount, present.stands, proposed.stands], [words.rollerCount, present.rollers, proposed.rollers]] as const
  return (
    <table>
      <thead><tr><td /><th scope="col">{local(words.now)}</th><th scope="col">{local(words.proposed)}</th></tr></thead>
      <tbody>{rows.map(([name, now, then]) => <tr key={name.en}><th scope="row">{local(name)}</th><td>{now}</td><td>{then}</td></tr>)}</tbody>
    </table>
  )
}

const Lines = ({ title, lines }: { title: string; lines: readonly FindingLine[] }): ReactNode => {
  const reader = useWords()
  return (
    <>
      <h3>{title}</h3>
      <ul className="proposal-lines">
        {lines.map(({ key, level, what }) => (
          <li key={key}>{level === 'met' ? null : <LevelMark level={level} sizePx={20} />}<span><span className="note-level">{reader.say(levelKey(level))}</span> <Figure text={sentenceWords(what, reader)} /></span></li>
        ))}
      </ul>
    </>
  )
}
