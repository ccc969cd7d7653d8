import { useMemo, type ReactNode } from 'react'
import { Figure } from '../common/Figure.tsx'
import { LevelMark } from '../common/LevelMark.tsx'
import { useLaggingRun, useResults, useUi, useView, useWords } from '../context.tsx'
import { openFinding } from './actions.ts'
import { RemedyButton } from './Note.tsx'
import { numberedFindings } from './order.ts'
import { sentenceWords, sourceWords, valueWords } from './words.ts'

/** All notes as one line above the title block (tablet held upright): one at a time, the worst first, the next by a tap. */
export const NoteLine = (): ReactNode => {
  const words = useWords()
  const { say } = words
  const { app } = useUi()
  const { run, isStale } = useLaggingRun()
  const status = useResults((state) => state.status)
  const openKey = useView((view) => view.openFindingKey)
  const numbered = useMemo(() => numberedFindings(run), [run])
  const at = Math.max(0, numbered.findIndex(({ finding }) => finding.key === openKey))
  const shown = numbered[at]
  if (shown === undefined) {
    return <section className="note-line" aria-label={say('notesTitle')}><p>{status === 'failed' ? say('checksFailed') : isStale ? say('working') : say('notesNone')}</p><button type="button" onClick={() => app.view.setState({ panel: 'notes' })}>{say('notesAll')}</button></section>
  }
  const { finding, number } = shown
  const value = valueWords(finding, words)
  const next = numbered[(at + 1) % numbered.length]
  return (
    <section className="note-line" aria-label={say('notesTitle')} data-stale={isStale}>
      <button type="button" className="note-line-main" onClick={() => openFinding(app, finding)}>
        {finding.level === 'met' ? null : <LevelMark level={finding.level} sizePx={30} number={number} named />}
        <span className="note-line-words">
          <strong><Figure text={sentenceWords(finding.what, words)} /></strong>
          <span className="quiet-text"><Figure text={[value, sourceWords(finding.source, words)].filter((part) => part !== null).join(', ')} /></span>
        </span>
      </button>
      <RemedyButton numbered={shown} />
      <button type="button" className="note-line-next" onClick={() => { if (next !== undefined) openFinding(app, next.finding) }} onContextMenu={(event) => { event.preventDefault(); app.view.setState({ panel: 'notes' }) }}>{say('noteOf', { number, count: numbered.length })}</button>
    </section>
  )
}
