import { useState, type ReactNode } from 'react'
import { runThroughWords as text } from '../../messages/ui/runThroughWords.ts'
import { Icon } from '../common/Icon.tsx'
import { Region } from '../common/Region.tsx'
import { useUi, useView, useWords } from '../context.tsx'
import { closeRunThrough } from '../../state/runThroughMode.ts'
import { PullBand } from './PullBand.tsx'
import { RunControls, RunSentence, RunTitle, useRunKeys } from './RunHead.tsx'
import { RunMargin } from './RunMargin.tsx'
import { MiniStrip } from './MiniStrip.tsx'
import { NoseMark, TapeStrip } from './TapeStrip.tsx'
import { usePlayer, type Player } from './usePlayer.ts'
import { useRun, type Run } from './useRun.ts'
import '../styles/runThrough.css'

/** The run-through's own parts of the sheet: heading, strip and nose on the tape, pull under the side view, what is so at the stage. */
const RunThrough = ({ touch }: { touch: boolean }): ReactNode => {
  const run = useRun()
  const player = usePlayer(run)
  return run === null ? null : <Parts run={run} player={player} touch={touch} />
}
export default RunThrough

const Parts = ({ run, player, touch }: { run: Run; player: Player; touch: boolean }): ReactNode => {
  const { local } = useWords()
  const form = useView((view) => view.form)
  const leaf = useView((view) => view.leaf)
  const isUpright = useView((view) => view.tapeVertical)
  useRunKeys(run, player)
  const title = local(text.title)
  const hasSection = form !== 'phone' || leaf === 'side'
  return (
    <>
      <div className="area-head run-head">
        <Region name={title}>
          {form === 'phone' ? <PhoneTop run={run} /> : <><RunTitle run={run} /><div className="run-row"><RunControls run={run} player={player} />{form === 'desktop' ? null : <SideDrawer run={run} />}</div><RunSentence run={run} /></>}
        </Region>
      </div>
      {form === 'phone' ? <div className="area-run"><Region name={title}><RunSentence run={run} />{isUpright ? <MiniStrip run={run} /> : null}<RunControls run={run} player={player} /></Region></div> : null}
      {isUpright ? <div className="area-nose"><NoseMark run={run} onTouch={player.stop} /></div> : (
        <div className="area-stages"><Region name={local(text.strip)}><TapeStrip run={run} touch={touch} /><NoseMark run={run} onTouch={player.stop} /></Region></div>
      )}
      {hasSection ? <Region name={local(text.pull)}><PullBand run={run} /></Region> : null}
      {form === 'desktop' || (form === 'phone' && leaf === 'notes') ? <div className="area-margin" id={form === 'phone' ? 'leaf-notes' : undefined} role={form === 'phone' ? 'tabpanel' : undefined} tabIndex={0} aria-label={local(text.place)}><Region name={local(text.place)}><RunMargin run={run} /></Region></div> : null}
    </>
  )
}

/** Phone: the leaves stay, the name of the stage beside them. */
const PhoneTop = ({ run }: { run: Run }): ReactNode => {
  const words = useWords()
  const { app } = useUi()
  const leaf = useView((view) => view.leaf)
  const leaves = [['plan', words.say('plan').toLowerCase()], ['side', words.say('sideView')], ['notes', words.local(text.side)]] as const
  return (
    <>
      <div className="leaf-row">
        <div className="leaf-tabs" role="tablist" aria-label={words.say('leaves')}>
          {leaves.map(([name, label]) => (
            <button
              type="button" role="tab" key={name} id={`tab-${name}`} aria-controls={leaf === name ? `leaf-${name}` : undefined} aria-selected={leaf === name} tabIndex={leaf === name ? 0 : -1} onClick={() => app.view.setState({ leaf: name })}
              onKeyDown={(event) => {
                const next = leaves[leaves.findIndex(([other]) => other === name) + ({ ArrowRight: 1, ArrowLeft: -1 }[event.key] ?? 0)]?.[0]
                if (next === undefined || next === name) return
                app.view.setState({ leaf: next })
                document.getElementById(`tab-${next}`)?.focus()
              }}
            >{label}</button>
          ))}
        </div>
        <button type="button" className="run-step run-close" aria-label={words.local(text.close)} onClick={() => closeRunThrough(app)}><Icon name="close" /></button>
      </div>
      <RunTitle run={run} />
    </>
  )
}

/** Tablet: what is so at the stage slides over the drawing, as a note does. */
const SideDrawer = ({ run }: { run: Run }): ReactNode => {
  const { local } = useWords()
  const [isOpen, setIsOpen] = useState(false)
  return (
    <>
      <button type="button" className="run-step run-side-button" aria-expanded={isOpen} aria-label={local(text.sideOpen)} aria-controls="run-side" onClick={() => setIsOpen(!isOpen)}><Icon name="list" /><span>{local(text.side)}</span></button>
      {isOpen ? <div className="run-side" id="run-side" role="region" tabIndex={0} aria-label={local(text.sideOpen)} onKeyDown={(event) => { if (event.key === 'Escape') { event.stopPropagation(); setIsOpen(false) } }}><RunMargin run={run} /></div> : null}
    </>
  )
}
