import { useState, type ReactNode } from 'react'
import { bowTurnWords } from '../../messages/bowTurn.ts'
import { bowWords as text } from '../../messages/ui/bowWords.ts'
import { jobOf } from '../../scene/document.ts'
import { useCommand } from '../command.ts'
import { Panel } from '../common/Panel.tsx'
import { useDocuments, useSite, useUi, useWords } from '../context.tsx'
import { fieldName } from '../fields/focus.ts'
import { NumberField } from '../fields/NumberField.tsx'
import { openMissing } from '../findings/actions.ts'
import { BowCurve } from './BowCurve.tsx'
import { BowDial } from './BowDial.tsx'
import { BowFigures, Gap } from './BowFigures.tsx'
import { BowSide } from './BowSide.tsx'
import { steppedDeg, toDegrees, toRadians, wrappedDeg } from './turns.ts'
import { useBow } from './useBow.ts'

/** Ends up where nobody has said: the turn most crews try first. */
const FIRST_TURN_DEG = 0
const SAME_RAD = 1e-6

/** Bowed sticks turned about their own axis: every turn with its face gap, the best one, and the way into the job. */
export const BowPanel = ({ onClose }: { onClose: () => void }): ReactNode => {
  const { local } = useWords()
  const { app } = useUi()
  const run = useCommand()
  const job = useDocuments((state) => jobOf(state.document))
  const writable = useDocuments((state) => state.writable)
  const jaws = useSite((state) => state.site.jaws)
  const jobTurn = job.stickBowTurnRad
  const [turnDeg, setTurnDeg] = useState(() => (jobTurn === null ? FIRST_TURN_DEG : wrappedDeg(toDegrees(jobTurn))))
  const { answer, at, status } = useBow(toRadians(turnDeg))
  const set = (path: string, value: number | null, mergeKey?: string): void => { run('setJob', { path, value }, { text: text.set }, mergeKey) }
  const sweep = answer?.sweep ?? null
  const bestDeg = sweep === null ? null : toDegrees(sweep.leastGap.turnRad)
  const isJobTurn = jobTurn !== null && Math.abs(toRadians(wrappedDeg(toDegrees(jobTurn))) - toRadians(turnDeg)) < SAME_RAD
  return (
    <Panel
      title={local(text.title)} onClose={onClose} wide
      foot={
        <>
          <button type="button" className="primary" disabled={!writable || sweep === null || isJobTurn} onClick={() => set('stickBowTurnRad', toRadians(turnDeg))}>{local(text.use)}</button>
          <button type="button" disabled={!writable || jobTurn === null} onClick={() => set('stickBowTurnRad', null)}>{local(text.clear)}</button>
          <span className="quiet-text bow-said" role="status">{isJobTurn ? local(text.used) : jobTurn === null ? local(text.notTurned) : local(text.jobTurn, { turn: local(bowTurnWords(jobTurn)) })}</span>
        </>
      }
    >
      <p>{local(text.lead)}</p>
      <div className="bow-top">
        <div className="bow-hands">
          <BowDial turnDeg={turnDeg} bestDeg={bestDeg === null ? [] : [...new Set([bestDeg, -bestDeg])]} onTurn={setTurnDeg} />
          <p className="bow-turn-words">
            <strong>{local(bowTurnWords(toRadians(turnDeg)))}</strong>
            {answer === null || sweep === null ? null : <span className="bow-gaps"><span className="bow-gap">{local(text.faceGap)} <Gap answer={answer} at={at} /></span><span className="bow-gap">{local(text.best)} <Gap answer={answer} at={sweep.leastGap} /></span></span>}
            <span className="quiet-text">{local(text.lookingDown)}{bestDeg === null ? '' : ` · ▾ ${local(text.best)}`}</span>
          </p>
          <div className="buttons">
            <button type="button" onClick={() => setTurnDeg(steppedDeg(turnDeg, 1))}>{local(text.back15)}</button>
            <button type="button" onClick={() => setTurnDeg(steppedDeg(turnDeg, -1))}>{local(text.ahead15)}</button>
            <button type="button" onClick={() => setTurnDeg(0)}>{local(text.toEndsUp)}</button>
            <button type="button" disabled={bestDeg === null} onClick={() => setTurnDeg(bestDeg!)}>{local(text.toBest)}</button>
          </div>
        </div>
        <div className="bow-fields">
          <NumberField label={local(text.bow)} kind="shortLength" value={job.stickBowM.value} nullable min={0} max={2} name={fieldName(job.id, 'stickBowM.value')} onCommit={(value, key) => set('stickBowM.value', value, key)} />
          <p className="quiet-text">{local(text.measure)}</p>
          <NumberField label={local(text.turn)} kind="angle" value={toRadians(turnDeg)} min={-Math.PI} max={Math.PI} hideOther onCommit={(value) => { if (value !== null) setTurnDeg(wrappedDeg(toDegrees(value))) }} />
          <p className="quiet-text">{local(text.dialHow)}</p>
        </div>
      </div>
      <div className="bow-answer" data-working={status === 'working'} aria-busy={status === 'working'}>
        {answer === null
          ? <p role="status">{local(status === 'failed' ? text.failed : text.working)}</p>
          : answer.missing.length > 0
            ? <><p>{local(text.needs)}</p><ul className="rows">{answer.missing.map((input) => <li key={`${input.recordId}|${input.path}`}><button type="button" className="link" onClick={() => openMissing(app, input)}>{local(input.label)}</button></li>)}</ul></>
            : sweep === null
              ? <p role="status">{local(text.unsettled)}</p>
              : (
                <>
                  <BowFigures answer={answer} at={at} />
                  <div className="bow-pictures">
                    <BowCurve answer={answer} at={at} turnDeg={turnDeg} />
                    {answer.shapes === null ? null : <BowSide shapes={answer.shapes} jaws={jaws} />}
                  </div>
                  <p className="quiet-text">{local(text.limits)}</p>
                </>
              )}
      </div>
    </Panel>
  )
}
