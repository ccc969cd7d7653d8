import { lazy, Suspense, useEffect, useMemo, useState, type ReactNode } from 'react'
import type { CheckRun } from '../../checks/finding.ts'
import { Figure } from '../common/Figure.tsx'
import { Icon } from '../common/Icon.tsx'
import { LevelMark } from '../common/LevelMark.tsx'
import { useIsStale, useLaggingRun, usePanels, useResults, useSite, useUi, useView, useWords } from '../context.tsx'
import { localizedOf } from '../../messages/ui/text.ts'
import { noteListWords } from '../../messages/ui/noteListWords.ts'
import { openMissing } from './actions.ts'
import { cappedNotes, MOST_OF_LEVEL, type LevelNotes } from './capped.ts'
import { Note } from './Note.tsx'
import { metFindings, missingFields, numberedFindings, unknownFindings, type NumberedFinding } from './order.ts'
import { levelKey, sentenceWords, sourceWords, valueWords } from './words.ts'

/** Fetched with the first look at heights as set. */
const GoneNotes = lazy(() => import('../asSet/GoneNotes.tsx'))

/** The notes in the margin: open ones in order, then what is to confirm and what is met, folded. */
export const Margin = (): ReactNode => {
  const { say } = useWords()
  const { run, isStale } = useLaggingRun()
  const numbered = useMemo(() => numberedFindings(run), [run])
  const isAsSet = useView((view) => view.shownCase.variant === 'asSet')
  return (
    <section className="notes" aria-label={say('notesTitle')} data-stale={isStale} aria-busy={isStale}>
      <StatusLine />
      {run === null ? null : (
        <>
          {numbered.length === 0 ? null : <OfferUsual />}
          {numbered.length === 0 ? <NothingOpen /> : <NoteList numbered={numbered} />}
          {isAsSet ? <Suspense><GoneNotes /></Suspense> : null}
          <ToConfirm run={run} />
          <Met run={run} />
        </>
      )}
      <p className="caution">{say('cautionShort')}</p>
    </section>
  )
}

/** The open notes; of a level with a great many, the first and an offer of the rest. */
const NoteList = ({ numbered }: { numbered: readonly NumberedFinding[] }): ReactNode => {
  const allOf = usePanels((state) => state.allNotesOf)
  const openKey = useView((view) => view.openFindingKey)
  const levels = useMemo(() => cappedNotes(numbered, allOf, openKey), [numbered, allOf, openKey])
  return (
    <ol className={numbered.length > MOST_OF_LEVEL ? 'note-list note-list-long' : 'note-list'}>
      {levels.flatMap((notes) => [
        ...notes.shown.map((entry) => <Note key={entry.finding.key} numbered={entry} />),
        ...(notes.more === 0 ? [] : [<li key={`more ${notes.level}`} className="note-more"><ShowAll notes={notes} /></li>]),
      ])}
    </ol>
  )
}

const ShowAll = ({ notes: { level, more } }: { notes: LevelNotes }): ReactNode => {
  const words = useWords()
  const { panels } = useUi()
  return <button type="button" className="fold" onClick={() => panels.setState({ allNotesOf: [...panels.getState().allNotesOf, level] })}><Icon name="right" sizePx={13} />{words.local(noteListWords.more, { count: more, level: words.say(levelKey(level)) })}</button>
}

/** Working, failed, or nothing: stale figures are greyed, and this says why. */
const StatusLine = (): ReactNode => {
  const words = useWords()
  const status = useResults((state) => state.status)
  const failure = useResults((state) => state.failure)
  const isStale = useIsStale()
  if (status === 'failed') {
    return (
      <div className="note note-failed" role="alert">
        <div className="note-main">
          <LevelMark level="CHECK" sizePx={23} />
          <span className="note-words"><span className="note-level">{words.say('levelCheck')}</span><span className="note-sentence">{words.say('checksFailed')}</span>{failure === null ? null : <span className="quiet-text">{failure}</span>}</span>
        </div>
      </div>
    )
  }
  const isWorking = isStale || status === 'working'
  return <p className="notes-status" data-shown={isWorking}>{isWorking ? words.say('working') : ''}</p>
}

const useProposeUsual = (): (() => void) => {
  const { app } = useUi()
  return () => {
    const setUpId = app.site.getState().site.setUp?.id
    if (setUpId !== undefined) app.view.setState({ proposal: { command: 'usualSetUp', args: { setUpId }, label: localizedOf('usualSetUp'), revision: app.documents.getState().revision } })
  }
}

/** A line without a single support: the usual set-up answers most of what stands below. */
const OfferUsual = (): ReactNode => {
  const { say } = useWords()
  const isBare = useSite((state) => state.site.setUp !== null && state.site.supports.length === 0)
  const hasProposal = useView((view) => view.proposal !== null)
  const propose = useProposeUsual()
  if (!isBare || hasProposal) return null
  return <div className="empty"><p>{say('noSupports')}</p><button type="button" className="primary" onClick={propose}>{say('emptyUsual')}</button></div>
}

/** Nothing on the list: says what would stand here and offers the next step. */
const NothingOpen = (): ReactNode => {
  const { say } = useWords()
  const { app } = useUi()
  const hasPipe = useSite((state) => state.site.job.pipe !== null)
  const hasSupports = useSite((state) => state.site.supports.length > 0)
  const setUpId = useSite((state) => state.site.setUp?.id ?? null)
  const propose = useProposeUsual()
  return (
    <div className="empty">
      <p>{say(hasPipe && hasSupports ? 'notesNone' : 'notesEmpty')}</p>
      {!hasPipe ? <button type="button" className="primary" onClick={() => app.view.setState({ panel: 'job' })}>{say('emptyPipe')}</button>
        : !hasSupports ? setUpId === null
          ? <button type="button" className="primary" onClick={() => app.view.setState({ tool: { name: 'strip' } })}>{say('toolStrip')}</button>
          : <button type="button" className="primary" onClick={propose}>{say('emptyUsual')}</button> : null}
    </div>
  )
}

const ToConfirm = ({ run }: { run: CheckRun }): ReactNode => {
  const words = useWords()
  const { app, panels } = useUi()
  const isOpen = usePanels((state) => state.confirmOpen)
  const unknown = unknownFindings(run)
  const fields = missingFields(unknown)
  if (unknown.length === 0) return null
  const whose = (recordId: string): string => {
    const placed = app.site.getState().site.placed.get(recordId)
    return placed === undefined || placed.label === '' ? '' : `${placed.label}: `
  }
  return (
    <div className="folded">
      <button type="button" className="fold" aria-expanded={isOpen} onClick={() => panels.setState({ confirmOpen: !isOpen })}><Icon name={isOpen ? 'down' : 'right'} sizePx={13} />{words.say('toConfirm', { count: run.counts.toConfirm })}</button>
      {isOpen ? (
        <ul className="confirm-list">
          {unknown.filter(({ missing }) => missing.length === 0).map((finding) => <li key={finding.key}><Figure text={sentenceWords(finding.what, words)} /></li>)}
          {fields.map((input) => (
            <li key={`${input.recordId}|${input.path}`}><button type="button" className="link" onClick={() => openMissing(app, input)}>{whose(input.recordId)}{words.local(input.label)}</button></li>
          ))}
        </ul>
      ) : null}
    </div>
  )
}

const Met = ({ run }: { run: CheckRun }): ReactNode => {
  const words = useWords()
  const { panels } = useUi()
  const isOpen = usePanels((state) => state.metOpen)
  const met = metFindings(run)
  if (met.length === 0) return null
  return (
    <div className="folded">
      <button type="button" className="fold" aria-expanded={isOpen} onClick={() => panels.setState({ metOpen: !isOpen })}><Icon name={isOpen ? 'down' : 'right'} sizePx={13} />{words.say('met', { count: met.length })}</button>
      {isOpen ? (
        <ul className="met-list">
          {met.map((finding) => {
            const value = valueWords(finding, words)
            return (
              <li key={finding.key}>
                <span><Figure text={sentenceWords(finding.what, words)} /></span>
                <span className="quiet-text block">{value === null ? null : <Figure text={`${value} · `} />}<em>{sourceWords(finding.source, words)}</em> · <button type="button" className="link" onClick={() => panels.setState({ whyCheckId: finding.checkId })}>{words.say('why')}</button></span>
              </li>
            )
          })}
        </ul>
      ) : null}
    </div>
  )
}

/** Says a change of the counts once it has settled, to those who do not see the margin. */
export const LevelAnnouncer = (): ReactNode => {
  const { app } = useUi()
  const { say } = useWords()
  const [counts, setCounts] = useState<CheckRun['counts'] | null>(null)
  useEffect(() => app.results.subscribe(({ run, stamp }) => {
    // Only what has settled is said, and only where it differs; a drag would otherwise never stop talking.
    if (run === null || stamp !== app.site.getState().stamp || app.documents.getState().preview !== null) return
    setCounts((before) => (before !== null && before.STOP === run.counts.STOP && before.FIX === run.counts.FIX && before.CHECK === run.counts.CHECK ? before : run.counts))
  }), [app])
  return <p className="visually-hidden" aria-live="polite" role="status">{counts === null ? '' : say('countsSaid', { stop: counts.STOP, fix: counts.FIX, check: counts.CHECK })}</p>
}

/** 44 px margin of a tablet held level: shapes only, tapped open one at a time over the plan. */
export const MarginShapes = (): ReactNode => {
  const words = useWords()
  const { app } = useUi()
  const { run, isStale } = useLaggingRun()
  const openKey = useView((view) => view.openFindingKey)
  const numbered = useMemo(() => numberedFindings(run), [run])
  const opened = numbered.find(({ finding }) => finding.key === openKey)
  return (
    <section className="margin-shapes" aria-label={words.say('notesTitle')} data-stale={isStale}>
      <ol>
        {numbered.map(({ finding, number }) => (
          <li key={finding.key}>
            <button type="button" aria-expanded={openKey === finding.key} aria-label={sentenceWords(finding.what, words)} onClick={() => { if (openKey === finding.key) app.view.setState({ openFindingKey: null }); else app.view.setState({ openFindingKey: finding.key }) }}>
              {finding.level === 'met' ? null : <LevelMark level={finding.level} sizePx={26} number={number} named />}
            </button>
          </li>
        ))}
        <li><button type="button" aria-label={words.say('notesAll')} onClick={() => app.view.setState({ panel: 'notes' })}><Icon name="more" /></button></li>
      </ol>
      {opened === undefined ? null : (
        <div className="note-over">
          <button type="button" className="quiet square note-over-close" aria-label={words.say('close')} onClick={() => app.view.setState({ openFindingKey: null })}><Icon name="close" /></button>
          <ol className="note-list"><Note numbered={opened} isOpen /></ol>
        </div>
      )}
    </section>
  )
}
