import { lazy, Suspense, type ReactNode } from 'react'
import { Figure } from '../common/Figure.tsx'
import { LevelMark } from '../common/LevelMark.tsx'
import { useCommand } from '../command.ts'
import { useDocuments, useIsStale, useUi, useView, useWords } from '../context.tsx'
import { offerOf } from '../proposals/offers.ts'
import { openFinding } from './actions.ts'
import type { NumberedFinding } from './order.ts'
import { levelKey, sentenceWords, sourceWords, valueWords } from './words.ts'

/** Fetched when the first note is opened. */
const FindingBand = lazy(() => import('./FindingBand.tsx'))

/** Fetched with the first note that a proposal answers. */
const ProposeButton = lazy(() => import('../proposals/ProposeButtons.tsx').then((part) => ({ default: part.ProposeButton })))

/** Fetched with the first look at heights as set. */
const PlannedLevel = lazy(() => import('../asSet/PlannedLevel.tsx'))

/** A margin note: mark, level word, sentence, value against limit with its source class, one move. */
export const Note = ({ numbered, isOpen: alwaysOpen = false }: { numbered: NumberedFinding; isOpen?: boolean }): ReactNode => {
  const { finding, number } = numbered
  const words = useWords()
  const { say } = words
  const { app, panels } = useUi()
  // On a phone the place of a note is on another leaf.
  const isLeaf = useView((view) => view.form === 'phone' && view.leaf === 'notes' && view.openFindingKey === finding.key)
  const isChosen = useView((view) => view.openFindingKey === finding.key)
  const isOpen = alwaysOpen || isChosen
  const isAsSet = useView((view) => view.shownCase.variant === 'asSet')
  const level = finding.level === 'met' ? 'NOTE' : finding.level
  const value = valueWords(finding, words)
  // Only what stops or breaks shows its button unasked; the others unfold.
  const showsMove = isOpen || level === 'STOP' || level === 'FIX'
  const offer = offerOf[finding.checkId]
  const sentence = sentenceWords(finding.what, words)
  const move = finding.move === null ? null : sentenceWords(finding.move, words)
  const label = finding.remedy === null ? null : words.local(finding.remedy.label.text, finding.remedy.label.values)
  // A short remedy stands on its button; a longer one in words above it where no move says it already.
  const moveWords = move ?? (label !== null && label.length > LABEL_LETTERS ? label : null)
  return (
    <li className="note" data-level={level} data-open={isOpen} data-key={finding.key}>
      <button type="button" className="note-main" aria-expanded={isOpen} onClick={() => { if (isChosen && !alwaysOpen) app.view.setState({ openFindingKey: null }); else openFinding(app, finding) }}>
        <LevelMark level={level} sizePx={23} number={number} />
        <span className="note-words">
          <span className="note-level">{say(levelKey(level))}{isAsSet ? <Suspense><PlannedLevel findingKey={finding.key} level={finding.level} /></Suspense> : null}</span>
          <span className="note-sentence"><Figure text={sentence} /></span>
          {value === null ? <span className="note-value note-source-only"><em>{sourceWords(finding.source, words)}</em></span> : <span className="note-value"><span><Figure text={value} /></span><em>{sourceWords(finding.source, words)}</em></span>}
        </span>
      </button>
      {isOpen ? <Suspense><FindingBand finding={finding} /></Suspense> : null}
      {showsMove ? (
        <div className="note-move">
          {moveWords === null || (label !== null && label.length <= LABEL_LETTERS && sameWords(moveWords, label)) ? null : <p className="note-move-words"><Figure text={moveWords} /></p>}
          <div className="buttons">
            <RemedyButton numbered={numbered} />
            {finding.opens === undefined ? null : <button type="button" onClick={() => app.view.setState({ panel: finding.opens!.panel })}>{sentenceWords(finding.opens.label, words)}</button>}
            {offer === undefined ? null : <Suspense><ProposeButton kind={offer} /></Suspense>}
            <button type="button" onClick={() => panels.setState({ whyCheckId: finding.checkId })} aria-label={say('whyOf', { sentence })}>{say('why')}</button>
            {isLeaf ? <button type="button" onClick={() => app.view.setState({ leaf: 'plan' })}>{say('showOnPlan')}</button> : null}
          </div>
        </div>
      ) : null}
      {isOpen ? <p className="note-cite quiet-text">{finding.source.cite}</p> : null}
    </li>
  )
}

/** Longest label a button shows in full; longer ones stand in the sentence above it. */
const LABEL_LETTERS = 30

const sameWords = (a: string, b: string): boolean => a.replace(/\.$/, '').toLowerCase() === b.replace(/\.$/, '').toLowerCase()

/** The one-click move. It belongs to the revision it was worked out for: on any other it waits for the checks. */
export const RemedyButton = ({ numbered: { finding }, className = 'primary' }: { numbered: NumberedFinding; className?: string }): ReactNode => {
  const words = useWords()
  const run = useCommand()
  const isStale = useIsStale()
  const writable = useDocuments((state) => state.writable)
  const { remedy } = finding
  if (remedy === null) return null
  const label = words.local(remedy.label.text, remedy.label.values)
  const doIt = words.say('doIt')
  return (
    <button
      type="button" className={className} disabled={isStale || !writable} aria-label={`${label.length <= LABEL_LETTERS ? '' : `${doIt}: `}${label}`} title={isStale ? words.say('working') : label}
      onClick={() => { run(remedy.command, remedy.args, { text: remedy.label.text, ...(remedy.label.values === undefined ? {} : { values: remedy.label.values }) }) }}
    >
      <Figure text={label.length <= LABEL_LETTERS ? label : doIt} />
    </button>
  )
}
