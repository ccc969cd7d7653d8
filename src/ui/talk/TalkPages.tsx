import { useState, type ReactNode } from 'react'
import { useStore } from 'zustand'
import type { Finding } from '../../checks/finding.ts'
import { talkWords as text } from '../../messages/ui/talkWords.ts'
import { localizedOf } from '../../messages/ui/text.ts'
import { jobOf } from '../../scene/document.ts'
import { phases, type Phase } from '../../scene/parts.ts'
import { useCommand } from '../command.ts'
import { LevelMark } from '../common/LevelMark.tsx'
import { useDocuments, useLaggingRun, useSite, useUi } from '../context.tsx'
import { worstOfPhase } from '../findings/order.ts'
import { phaseKey } from '../heading/Heading.tsx'
import { useSinceTalk } from './lastTalk.ts'
import { Label, Line, Sentence, StopSign } from './Lines.tsx'
import { talkSession, type TalkSession } from './session.ts'
import { useTalk } from './talkContext.tsx'
import { TalkPlan } from './TalkPlan.tsx'
import { changeLines, nextLines, timeIn, wrongLines } from './talkLines.ts'
import { classLine, openFindings, phaseOfStageId } from './talkModel.ts'

const withJoint = new Set<Phase>(['load', 'fuse', 'pull'])
const languageChoices: readonly { languages: TalkSession['languages']; label: (typeof text)['english'] }[] = [
  { languages: ['en'], label: text.english }, { languages: ['es'], label: text.spanish }, { languages: ['en', 'es'], label: text.bothLanguages },
]

/** Stage and languages, and what the last talk was. */
export const ChoosePage = (): ReactNode => {
  const { app } = useUi()
  const { say, stage } = useTalk()
  const { run } = useLaggingRun()
  const session = useStore(talkSession)
  const most = useSite((state) => (state.site.sticks.stickLengthM === null ? 1 : Math.max(1, state.site.sticks.stickCount - 1)))
  const since = useSinceTalk(session.before)
  const joint = Math.min(stage.joint, most)
  const before = session.before === null ? null : phaseOfStageId(session.before.stageId)
  return (
    <div className="talk-text">
      <h3 id="talk-stage"><Label text={text.chooseStage} /></h3>
      <div className="talk-choices" role="group" aria-labelledby="talk-stage">
        {phases.map((phase) => {
          const worst = worstOfPhase(run, phase)
          return (
            <button type="button" key={phase} aria-pressed={phase === stage.phase} onClick={() => app.view.setState({ phase, noseM: null })}>
              <Label text={localizedOf(phaseKey(phase))} />{worst === null || worst === 'met' || worst === 'NOTE' ? null : <LevelMark level={worst} sizePx={20} named />}
            </button>
          )
        })}
      </div>
      {withJoint.has(stage.phase) && most > 1 ? (
        <div className="talk-joint" role="group" aria-label={say.label(text.joint)}>
          <button type="button" className="square" aria-label={`${say.label(text.joint)} −`} disabled={joint <= 1} onClick={() => app.view.setState({ joint: joint - 1 })}>−</button>
          <output><Label text={text.jointOf} values={{ joint, count: most }} /></output>
          <button type="button" className="square" aria-label={`${say.label(text.joint)} +`} disabled={joint >= most} onClick={() => app.view.setState({ joint: joint + 1 })}>+</button>
        </div>
      ) : null}
      <h3 id="talk-language"><Label text={text.chooseLanguage} /></h3>
      <div className="talk-choices" role="group" aria-labelledby="talk-language">
        {languageChoices.map(({ languages, label }) => <button type="button" key={label.en} aria-pressed={languages.join() === session.languages.join()} onClick={() => talkSession.setState({ languages })}>{label.en}</button>)}
      </div>
      {session.before === null ? <Line text={text.noTalk} /> : <Line text={text.lastTalk} values={{ phase: before === null ? (session.before.stageId ?? '?') : localizedOf(phaseKey(before)), when: timeIn(session.before.when), letter: session.before.letter }} />}
      {since.kind === 'changed' || since.kind === 'unknown' ? <Line text={text.changedSince} className="talk-line talk-alert" /> : null}
      <Line text={text.triggers} />
    </div>
  )
}

export const NextPage = (): ReactNode => {
  const { stage, phaseName, spots } = useTalk()
  const site = useSite((state) => state.site)
  const most = Math.max(1, site.sticks.stickCount - 1)
  const [doing, ...rest] = nextLines(site, stage, spots)
  return (
    <div className="talk-text">
      <p className="talk-stage"><Label text={phaseName} />{withJoint.has(stage.phase) ? <><span aria-hidden="true">, </span><Label text={text.jointOf} values={{ joint: Math.min(stage.joint, most), count: most }} /></> : null}</p>
      <Sentence {...doing!} />
      {rest.map((line) => <Line key={line.text.en} {...line} />)}
    </div>
  )
}

export const ZonePage = (): ReactNode => {
  const { step, say } = useTalk()
  if (step.name !== 'zone') return null
  const { zone } = step
  if (zone === null) return <div className="talk-text"><Sentence text={text.noZones} /></div>
  return (
    <>
      <div className="talk-see">
        <TalkPlan chosen={zone} title={say.label(text.planOf, { zone: zone.name })} />
        <div className="talk-class" data-class={zone.zoneClass}>
          <span className="talk-swatch" aria-hidden="true" />
          <div><p className="talk-name"><Label text={zone.name} /></p><Line {...classLine(zone)} className="talk-class-line" /></div>
        </div>
        {zone.missing.length > 0 ? <Line text={text.unknownSize} className="talk-line talk-quiet" /> : null}
      </div>
      <div className="talk-text">
        <div aria-live="polite"><Sentence text={zone.sentence} /></div>
        <Line text={text.saysBack} className="talk-line talk-quiet" />
      </div>
    </>
  )
}

export const StopsPage = (): ReactNode => {
  const { stops, stage } = useTalk()
  const { run, isStale } = useLaggingRun()
  const found = openFindings(run?.findings ?? [], stage.phase)
  return (
    <div className="talk-text">
      <div className="talk-anybody"><StopSign /><Sentence text={text.anybodyStop} /></div>
      <ul className="talk-list">{stops.map((line) => <li key={line.text.en}><Line {...line} /></li>)}</ul>
      {found.length === 0 ? null : (
        <>
          <h3><Label text={text.openNotes} /></h3>
          <ul className="talk-list" data-stale={isStale}>{found.slice(0, 3).map((finding) => <OpenFinding key={finding.key} finding={finding} />)}</ul>
          {found.length > 3 ? <Line text={text.moreNotes} values={{ count: found.length - 3 }} /> : null}
        </>
      )}
      {isStale ? <Line text={text.working} className="talk-line talk-quiet" /> : null}
    </div>
  )
}

const OpenFinding = ({ finding }: { finding: Finding }): ReactNode => (
  <li className="talk-finding">{finding.level === 'met' ? null : <LevelMark level={finding.level} sizePx={26} named />}<Line text={finding.what.text} values={finding.what.values ?? {}} /></li>
)

export const ChangedPage = (): ReactNode => {
  const before = useStore(talkSession, (session) => session.before)
  const since = useSinceTalk(before)
  const [first, ...rest] = changeLines(since)
  if (since.kind !== 'changed') return <div className="talk-text"><Sentence {...first!} /></div>
  return <div className="talk-text"><ul className="talk-list">{[first!, ...rest].map((line, i) => <li key={i}><Line {...line} /></li>)}</ul></div>
}

const dispatchFields = ['address', 'muster', 'caller'] as const

export const WrongPage = (): ReactNode => {
  const { say } = useTalk()
  const run = useCommand()
  const dispatch = useDocuments((state) => jobOf(state.document).dispatch)
  const writable = useDocuments((state) => state.writable)
  const site = useSite((state) => state.site)
  return (
    <div className="talk-text">
      <dl className="talk-dispatch">
        {dispatchFields.map((field) => (
          <div key={field}>
            <dt><Label text={text[field]} /></dt>
            <dd>{writable ? <DispatchField label={say.label(text[field])} value={dispatch[field] ?? ''} onCommit={(value) => { run('setJob', { path: `dispatch.${field}`, value: value === '' ? null : value }, { text: text.dispatch }) }} /> : (dispatch[field] ?? <Label text={text.notSaid} />)}</dd>
          </div>
        ))}
      </dl>
      {wrongLines(site).map((line) => <Line key={line.text.en} {...line} />)}
      <h3><Label text={text.burn} /></h3>
      <Line text={text.burnDo} className="talk-line talk-strong" />
      <h3><Label text={text.crush} /></h3>
      <Line text={text.crushDo} className="talk-line talk-strong" />
      <Line text={text.firstMinuteSource} className="talk-line talk-quiet" />
    </div>
  )
}

/** Written on Enter or on leaving, and only where it changed. */
const DispatchField = ({ label, value, onCommit }: { label: string; value: string; onCommit: (value: string) => void }): ReactNode => {
  const { say } = useTalk()
  const [draft, setDraft] = useState<string | null>(null)
  const leave = (): void => {
    if (draft !== null && draft.trim() !== value) onCommit(draft.trim())
    setDraft(null)
  }
  return <input type="text" aria-label={label} maxLength={200} autoComplete="off" enterKeyHint="done" placeholder={say.label(text.notSaid)} value={draft ?? value} onChange={(event) => setDraft(event.currentTarget.value)} onBlur={leave} onKeyDown={(event) => { if (event.key === 'Enter') leave() }} />
}

export const QuestionPage = (): ReactNode => {
  const { say } = useTalk()
  const note = useStore(talkSession, (session) => session.note)
  return (
    <div className="talk-text">
      <Sentence text={text.openQuestion} />
      <Line text={text.questionHow} />
      <label className="talk-field"><span><Label text={text.noted} /></span><textarea rows={4} maxLength={2000} value={note} aria-label={say.label(text.noted)} onChange={(event) => talkSession.setState({ note: event.currentTarget.value })} /></label>
    </div>
  )
}

/** Heading of a page. */
export const pageHeading = { choose: text.title, next: text.whatNext, zone: text.whereGetYou, stand: text.whereStand, stops: text.whatStops, changed: text.whatChanged, wrong: text.ifWrong, question: text.openQuestion, sign: text.signOff } as const

