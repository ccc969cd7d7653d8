import type { ReactNode } from 'react'
import type { Level } from '../../checks/finding.ts'
import type { ViewState } from '../../state/viewStore.ts'
import { setWet } from '../../state/wetMode.ts'
import { openRunThrough } from '../../state/runThroughMode.ts'
import { isPlan } from '../../derive/whatIf.ts'
import { phases, type Phase } from '../../scene/parts.ts'
import type { UiKey } from '../../messages/ui/text.ts'
import { Figure } from '../common/Figure.tsx'
import { Icon, type IconName } from '../common/Icon.tsx'
import { LevelMark } from '../common/LevelMark.tsx'
import { useDocuments, useLaggingRun, useSite, useUi, useView, useWords } from '../context.tsx'
import { numberedFindings, worstOfPhase } from '../findings/order.ts'
import { levelKey } from '../findings/words.ts'

export const phaseKey = (phase: Phase): UiKey => `phase_${phase}` as const

/** The plan's heading line: what is drawn, as at which phase and joint, and the few things that act on the whole sheet. */
export const Heading = (): ReactNode => {
  const { say } = useWords()
  const form = useView((view) => view.form)
  const orientation = useView((view) => view.orientation)
  const turned = useView((view) => view.turned)
  if (form === 'phone') return <PhoneHeading />
  return (
    <header className="heading">
      <div className="heading-name">
        <h2>{say('plan')}</h2>
        {form === 'desktop' ? <span className="quiet-text">{say(orientation === 'northUp' ? 'planNorthUp' : turned ? 'planTurned' : 'planAlong')}</span> : null}
      </div>
      <SheetButtons />
      <div className="heading-phase">
        {form === 'desktop' ? <PhaseChips /> : <PhaseSelect />}
        <JointSlider />
      </div>
    </header>
  )
}

const PhoneHeading = (): ReactNode => {
  const { say } = useWords()
  const { app } = useUi()
  const leaf = useView((view) => view.leaf)
  const { run } = useLaggingRun()
  const count = numberedFindings(run).length
  const leaves = [['plan', say('plan').toLowerCase()], ['side', say('sideView')], ['notes', say('notesLeaf', { count })]] as const
  return (
    <header className="heading heading-phone">
      <div className="leaf-row">
        <div className="leaf-tabs" role="tablist" aria-label={say('leaves')}>
          {leaves.map(([name, label]) => (
            <button
              type="button" role="tab" key={name} id={`tab-${name}`} aria-controls={leaf === name ? `leaf-${name}` : undefined} aria-selected={leaf === name} tabIndex={leaf === name ? 0 : -1} onClick={() => app.view.setState({ leaf: name })}
              onKeyDown={(event) => {
                const at = leaves.findIndex(([other]) => other === name) + ({ ArrowRight: 1, ArrowLeft: -1 }[event.key] ?? 0)
                const next = leaves[at]?.[0]
                if (next === undefined || next === name) return
                app.view.setState({ leaf: next })
                document.getElementById(`tab-${next}`)?.focus()
              }}
            >{label}</button>
          ))}
        </div>
        <PhaseSelect />
      </div>
      <SheetButtons />
      {leaf === 'side' ? <JointSlider /> : null}
    </header>
  )
}

/** 'zones as at': one chip a phase with its worst mark. */
const PhaseChips = (): ReactNode => {
  const { say } = useWords()
  const { app } = useUi()
  const shown = useView((view) => view.phase)
  const { run, isStale } = useLaggingRun()
  return (
    <div className="phase-chips" role="group" aria-label={say('zonesAsAt')} data-stale={isStale}>
      <span className="quiet-text">{say('zonesAsAt')}</span>
      {phases.map((phase) => {
        const worst = worstOfPhase(run, phase)
        return (
          <button type="button" key={phase} aria-pressed={phase === shown} onClick={() => app.view.setState({ phase })}>
            {say(phaseKey(phase))}<PhaseMark level={worst} />
          </button>
        )
      })}
    </div>
  )
}

const PhaseMark = ({ level }: { level: Level | null }): ReactNode => (level === null || level === 'met' ? null : <LevelMark level={level} sizePx={11} named />)

const PhaseSelect = (): ReactNode => {
  const { say } = useWords()
  const { app } = useUi()
  const shown = useView((view) => view.phase)
  const { run } = useLaggingRun()
  const form = useView((view) => view.form)
  return (
    <label className="phase-select">
      <span className={form === 'phone' ? 'visually-hidden' : 'quiet-text'}>{say('zonesAsAt')}</span>
      <select value={shown} onChange={(event) => app.view.setState({ phase: event.currentTarget.value as Phase })} onKeyDown={(event) => event.stopPropagation()}>
        {phases.map((phase) => {
          const worst = worstOfPhase(run, phase)
          return <option key={phase} value={phase}>{say(form === 'phone' ? 'atPhase' : 'phasePlain', { phase: say(phaseKey(phase)) })}{worst === null || worst === 'met' || worst === 'NOTE' || form === 'phone' ? '' : ` · ${say(levelKey(worst))}`}</option>
        })}
      </select>
    </label>
  )
}

/** The string at any length: how many joints are made. */
const JointSlider = (): ReactNode => {
  const words = useWords()
  const { say } = words
  const { app } = useUi()
  const joint = useView((view) => view.joint)
  const most = useSite((state) => (state.site.sticks.stickLengthM === null ? 0 : state.site.sticks.stickCount - 1))
  const shown = Math.min(joint, most)
  const lengthM = useSite((state) => state.site.sticks.stringLengthM(shown + 1))
  if (most < 2) return null
  const text = say('jointOf', { joint: shown, count: most })
  const length = words.figure({ kind: 'length', value: lengthM })
  return (
    <label className="joint">
      <span><Figure text={text} /></span>
      <input type="range" min={1} max={most} step={1} value={shown} aria-valuetext={`${text}, ${length}`} onChange={(event) => app.view.setState({ joint: Number(event.currentTarget.value) })} onKeyDown={(event) => event.stopPropagation()} />
      <span className="quiet-text"><Figure text={say('jointLength', { length })} /></span>
    </label>
  )
}

const talkName = { en: 'talk', es: 'charla' }
const talkLabel = { en: 'toolbox talk: the next stage, zone by zone', es: 'charla de seguridad: la etapa que sigue, zona por zona' }
const wetName = { en: 'wet', es: 'mojado' }
const wetLabel = { en: 'wet mode: plan frozen, large buttons', es: 'modo mojado: plano congelado, botones grandes' }
const tapeName = { en: 'set out', es: 'replantear' }
const tapeLabel = { en: 'setting out by tape: one mark at a time', es: 'replanteo con cinta: una marca a la vez' }
const runThroughName = { en: 'run-through', es: 'ensayo' }
const runThroughLabel = { en: 'run-through: the job stage by stage', es: 'ensayo: el trabajo etapa por etapa' }

interface SheetButton {
  key: string
  icon: IconName
  label: string
  words: string
  isOn?: boolean
  disabled?: boolean
  press: () => void
}

/** Which buttons carry their word beside the picture: as many as the heading line has room for in both languages. */
const namedOn: Readonly<Record<ViewState['form'], readonly string[]>> = {
  desktop: ['fold', 'hold', 'whatIf', 'run', 'talk', 'items'],
  tabletLandscape: [],
  tabletPortrait: [],
  phone: [],
}

/** What is left in wet mode, each with its word. */
const wetButtons: readonly string[] = ['fit', 'run', 'talk', 'setOut']

/** Undo and redo name their step; the rest acts on the sheet. */
const SheetButtons = (): ReactNode => {
  const words = useWords()
  const { say } = words
  const { app, services } = useUi()
  const form = useView((view) => view.form)
  const fold = useView((view) => view.fold)
  const past = useDocuments((state) => state.past.at(-1))
  const future = useDocuments((state) => state.future.at(-1))
  const writable = useDocuments((state) => state.writable)
  const turned = useView((view) => view.turned)
  const orientation = useView((view) => view.orientation)
  const holdStill = useView((view) => view.holdStill)
  const isUpright = useView((view) => view.tapeVertical)
  const panel = useView((view) => view.panel)
  const isOther = useView((view) => !isPlan(view.shownCase))
  const wet = useView((view) => view.wet)
  const step = (entry: typeof past): string => (entry === undefined ? '' : words.local(entry.label.text, entry.label.values))
  const buttons: readonly SheetButton[] = [
    { key: 'undo', icon: 'undo', words: say('undo'), label: past === undefined ? say('undoNone') : say('undoStep', { step: step(past) }), disabled: past === undefined || !writable, press: () => { app.documents.getState().undo() } },
    { key: 'redo', icon: 'redo', words: say('redo'), label: future === undefined ? say('redoNone') : say('redoStep', { step: step(future) }), disabled: future === undefined || !writable, press: () => { app.documents.getState().redo() } },
    { key: 'turn', icon: 'turn', words: say('turnSheet'), label: say('turnSheet'), isOn: turned, press: () => services.act('turnRound') },
    { key: 'north', icon: orientation === 'northUp' ? 'along' : 'north', words: say(orientation === 'northUp' ? 'alongTape' : 'northUp'), label: say(orientation === 'northUp' ? 'alongTape' : 'northUp'), press: () => services.act('northUp') },
    { key: 'fit', icon: 'fit', words: say('showAll'), label: say('showAll'), press: () => services.act('fit') },
    { key: 'fold', icon: 'fold', words: say(fold === null ? 'foldSheet' : 'foldOpen'), label: say(fold === null ? 'foldSheet' : 'foldOpen'), isOn: fold !== null, press: () => services.act('fold') },
    { key: 'hold', icon: 'hold', words: say('holdStill'), label: say('holdStill'), isOn: holdStill, press: () => app.view.setState({ holdStill: !holdStill }) },
    { key: 'whatIf', icon: 'whatIf', words: say('whatIf'), label: say('whatIfOpen'), isOn: panel === 'whatIf' || isOther, press: () => app.view.setState({ panel: panel === 'whatIf' ? null : 'whatIf' }) },
    { key: 'run', icon: 'runThrough', words: words.local(runThroughName), label: words.local(runThroughLabel), press: () => openRunThrough(app) },
    { key: 'talk', icon: 'talk', words: words.local(talkName), label: words.local(talkLabel), press: () => app.view.setState({ panel: 'talk' }) },
    { key: 'setOut', icon: 'measure', words: words.local(tapeName), label: words.local(tapeLabel), press: () => app.view.setState({ panel: 'tape' }) },
    { key: 'wet', icon: 'wet', words: words.local(wetName), label: words.local(wetLabel), press: () => setWet(app.view, true) },
    { key: 'items', icon: 'list', words: say('items'), label: say('itemsOpen'), isOn: panel === 'items', press: () => app.view.setState({ panel: panel === 'items' ? null : 'items' }) },
  ]
  // On a narrow sheet the words are left to the label; a step's name shows as the button's title.
  const named = (key: string): boolean => wet || namedOn[form].includes(key)
  // An upright tape always runs up the sheet: north up would change nothing there.
  const shown = buttons.filter(({ key }) => (!wet || wetButtons.includes(key)) && (key !== 'north' || !isUpright) && (key !== 'fold' || (!isUpright && orientation === 'alongTape')))
  return (
    <div className="sheet-buttons" role="toolbar" aria-label={say('sheet')}>
      {shown.map(({ key, icon, label, words: text, isOn, disabled = false, press }) => (
        <button type="button" key={key} className={`sheet-${key}`} aria-pressed={isOn} aria-label={label} title={label} disabled={disabled} onClick={press}>
          <Icon name={icon} sizePx={form === 'desktop' ? 17 : 20} />{named(key) ? <span className="sheet-word">{text}</span> : null}
        </button>
      ))}
    </div>
  )
}
