import { useEffect, useRef, type ReactNode } from 'react'
import { stagesOf } from '../../derive/stages/stagesOf.ts'
import { runThroughWords as text } from '../../messages/ui/runThroughWords.ts'
import { arrivalFrom, arrivalNoseM } from '../../state/runThroughView.ts'
import { Figure } from '../common/Figure.tsx'
import { Icon } from '../common/Icon.tsx'
import { useUi, useView, useWords } from '../context.tsx'
import { closeRunThrough } from '../../state/runThroughMode.ts'
import { nowSentence, stageName } from './stageNames.ts'
import { firstToDo, happens } from './toDo.ts'
import type { Player } from './usePlayer.ts'
import type { Run } from './useRun.ts'

/** Name of the stage and where the string is. */
export const RunTitle = ({ run }: { run: Run }): ReactNode => {
  const words = useWords()
  const { stage, stages, noseM } = run
  const { app } = useUi()
  const { stringLengthM, stickLengthM } = app.site.getState().site.sticks
  const joints = stages.reduce((most, { joint }) => Math.max(most, joint ?? 0), 0)
  // While a stick is fed its own tail lies behind; the string's is meant here.
  const tailM = noseM === null || stickLengthM === null ? null : noseM - stringLengthM(stage.sticks)
  const sticks = stage.sticks === 1 ? words.local(text.oneStick) : words.local(text.sticks, { count: stage.sticks })
  return (
    <div className="run-title">
      <h2>{words.local(text.title)}</h2>
      <p className="run-stage" aria-live="polite">{stageName(stage, joints, words)}</p>
      <p className="quiet-text run-where"><Figure text={noseM === null ? words.local(text.noPipe) : words.local(text.where, { nose: { runningM: noseM }, tail: { runningM: tailM === null ? null : tailM + 0 }, sticks })} /></p>
    </div>
  )
}

/** One sentence: what happens now and what to do. */
export const RunSentence = ({ run }: { run: Run }): ReactNode => {
  const words = useWords()
  const { stage, result, onWayM, isOld } = run
  return <p className="run-sentence" data-stale={isOld}><Figure text={nowSentence(happens(stage), result === undefined ? null : firstToDo(result, onWayM), words)} /></p>
}

/** To an arrival one further on or back, over the stages that have come. */
export const useArrivalStep = (run: Run): ((step: 1 | -1) => (() => void) | null) => {
  const { results, stage, noseM, goNose } = run
  return (step) => {
    const found = arrivalFrom(results.stages, stage.index, noseM ?? (step === 1 ? -Infinity : Infinity), step)
    return found === null ? null : () => goNose(arrivalNoseM(found.arrival))
  }
}

/** Buttons and slider through the stages; 48 px on every size. */
export const RunControls = ({ run, player }: { run: Run; player: Player }): ReactNode => {
  const words = useWords()
  const { app } = useUi()
  const form = useView((view) => view.form)
  const { stages, stage, go } = run
  const step = useArrivalStep(run)
  const [ahead, behind] = [step(1), step(-1)]
  const last = stages.length - 1
  const joints = stages.reduce((most, { joint }) => Math.max(most, joint ?? 0), 0)
  const name = stageName(stage, joints, words)
  const { isPlaying, toggle } = player
  const isWide = form === 'desktop' || form === 'tabletPortrait'
  return (
    <div className="run-controls" role="group" aria-label={words.local(text.controls)}>
      <button type="button" className="run-step" aria-label={words.local(text.back)} disabled={stage.index === 0} onClick={() => { player.stop(); go(stage.index - 1) }}><Icon name="left" />{isWide ? <span>{words.local(text.back)}</span> : null}</button>
      <button type="button" className="run-step run-play" aria-pressed={isPlaying} aria-label={words.local(isPlaying ? text.pause : text.play)} onClick={toggle}><Icon name={isPlaying ? 'pause' : 'play'} /></button>
      <button type="button" className="run-step" aria-label={words.local(text.next)} disabled={stage.index === last} onClick={() => { player.stop(); go(stage.index + 1) }}>{isWide ? <span>{words.local(text.next)}</span> : null}<Icon name="right" /></button>
      <input
        type="range" className="run-slider" min={0} max={last} step={1} value={stage.index} aria-label={words.local(text.slider)} aria-valuetext={words.local(text.stageOf, { stage: name, index: stage.index + 1, count: stages.length })}
        onChange={(event) => { player.stop(); go(Number(event.currentTarget.value)) }} onKeyDown={(event) => { if (event.key !== 'Escape' && event.key !== ' ') event.stopPropagation() }}
      />
      <button type="button" className="run-step" aria-label={words.local(text.lastArrival)} disabled={behind === null} onClick={() => { player.stop(); behind?.() }}><Icon name="arrivalBack" /></button>
      <button type="button" className="run-step" aria-label={words.local(text.nextArrival)} disabled={ahead === null} onClick={() => { player.stop(); ahead?.() }}>{form === 'desktop' ? <span>{words.local(text.nextArrival)}</span> : null}<Icon name="arrivalNext" /></button>
      {form === 'phone' ? null : <button type="button" className="run-step run-close" aria-label={words.local(text.close)} onClick={() => closeRunThrough(app)}><Icon name="close" /></button>}
    </div>
  )
}

/** Elements that keep their own arrows and spaces. */
const keepsKeys = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && (target.isContentEditable || target.closest('input, textarea, select, [role="slider"], [role="tablist"], [role="dialog"], dialog, [data-band="tape"]') !== null)

/**
 * Arrow keys step through the stages (with Shift through the arrivals), Home and End go to the ends, space plays, Esc ends the mode.
 * Where something is chosen the plan keeps its arrows, and Esc first lets go of it.
 */
export const useRunKeys = (run: Run, player: Player): void => {
  const { app } = useUi()
  const step = useArrivalStep(run)
  const now = useRef({ run, player, step })
  useEffect(() => { now.current = { run, player, step } })
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (event.ctrlKey || event.metaKey || event.altKey || event.defaultPrevented || document.querySelector('dialog[open]') !== null) return
      const { target, key } = event
      const { selection, tool, panel } = app.view.getState()
      const isChosen = selection.length > 0 || tool !== null
      const isOnPlan = target instanceof HTMLElement && target.closest('[data-band="plan"]') !== null
      const isTyping = target instanceof HTMLElement && (target.isContentEditable || (target.matches('input, textarea, select') && !target.matches('input[type="range"]')))
      const { run: shown, player: plays, step: stepTo } = now.current
      const act = ((): (() => void) | null => {
        if (key === 'Escape') {
          if (isTyping || panel !== null || app.documents.getState().pending !== null || (isChosen && isOnPlan)) return null
          return isChosen ? () => app.view.setState({ selection: [], tool: null, openFindingKey: null }) : () => closeRunThrough(app)
        }
        if (keepsKeys(target) || (isOnPlan && isChosen)) return null
        const count = stagesOf(app.site.getState().site).length
        if (key === ' ') return target instanceof HTMLElement && target.closest('button, summary, a, [role="option"]') !== null ? null : plays.toggle
        const forward = (key === 'ArrowRight') !== app.view.getState().turned
        if (key === 'ArrowRight' || key === 'ArrowLeft') return event.shiftKey ? stepTo(forward ? 1 : -1) : () => shown.go(shown.stage.index + (forward ? 1 : -1))
        if (key === 'Home') return () => shown.go(0)
        if (key === 'End') return () => shown.go(count - 1)
        return null
      })()
      if (act === null) return
      event.preventDefault()
      event.stopPropagation()
      if (key !== ' ') plays.stop()
      act()
    }
    // Before the plan sees them: there the same arrows nudge what is chosen.
    document.addEventListener('keydown', onKey, true)
    return () => document.removeEventListener('keydown', onKey, true)
  }, [app])
}
