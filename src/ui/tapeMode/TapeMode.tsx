import { useEffect, useRef, type KeyboardEvent, type ReactNode } from 'react'
import { useStore } from 'zustand'
import { tapeModeWords as text } from '../../messages/ui/tapeModeWords.ts'
import { layoutOf } from '../../scene/document.ts'
import { useCommand } from '../command.ts'
import { Notice } from '../common/Bars.tsx'
import { Icon } from '../common/Icon.tsx'
import { useModal } from '../common/useModal.ts'
import { isTyping, useSwipe } from '../common/useSwipe.ts'
import { useDocuments, useResults, useSite, useUi, useView, useWords } from '../context.tsx'
import { EndPage } from './EndPage.tsx'
import { JawsLine } from './JawsLine.tsx'
import { MarkPage } from './MarkPage.tsx'
import { firstOpen, marksOf, type Mark } from './marks.ts'
import { tapeSession } from './session.ts'
import { useJaws } from './useJaws.ts'
import '../styles/tapeMode.css'

/** Setting out by tape: one mark full screen, tick, next, in the order one walks. The screen stays awake. */
const TapeMode = ({ onClose }: { onClose: () => void }): ReactNode => {
  const reader = useWords()
  const { local, system } = reader
  const { services } = useUi()
  const runCommand = useCommand()
  const layoutId = useDocuments((state) => layoutOf(state.document).layoutId)
  const leftHanded = useView((view) => view.leftHanded)
  const site = useSite((state) => state.site)
  const run = useResults((state) => state.run)
  const jaws = useJaws()
  const session = useStore(tapeSession)
  const dialog = useModal()
  const heading = useRef<HTMLHeadingElement>(null)
  const marks = marksOf(site, run, system)
  const known = session.layoutId === layoutId ? marks.findIndex(({ key }) => key === session.key) : -1
  const at = session.layoutId !== layoutId ? firstOpen(marks) : session.key === null ? marks.length : known < 0 ? firstOpen(marks) : known
  const mark = marks[at]
  const done = marks.filter(({ isTicked }) => isTicked).length

  // The mark shown stays the one shown when it is ticked: what 'first open' meant on opening is kept.
  const shownKey = mark?.key ?? null
  useEffect(() => {
    if (session.layoutId !== layoutId || session.key !== shownKey) tapeSession.setState({ layoutId, key: shownKey })
  }, [session, layoutId, shownKey])
  useEffect(() => services.keepAwake(), [services])
  useEffect(() => {
    heading.current?.focus()
    dialog.current?.querySelector('.tapemode-body')?.scrollTo(0, 0)
  }, [at, dialog])

  const nameOf = ({ label, name }: Mark): string => (label === '' ? local(name) : `${label} ${local(name)}`)
  const go = (to: number): void => {
    if (to < 0 || to > marks.length) return
    // What stands in a field is taken before the field goes.
    if (document.activeElement instanceof HTMLInputElement) document.activeElement.blur()
    tapeSession.setState({ layoutId, key: marks[to]?.key ?? null })
  }
  const tick = (): void => { if (mark !== undefined) runCommand('setAsSet', { itemId: mark.itemId, [mark.tick]: !mark.isTicked }) }
  const onKeyDown = (event: KeyboardEvent): void => {
    event.stopPropagation()
    if (event.ctrlKey || event.metaKey || event.altKey || event.defaultPrevented || isTyping(event.target)) return
    const onButton = event.target instanceof HTMLElement && event.target.closest('button') !== null
    if (event.key === 'ArrowRight' || event.key === 'PageDown') go(at + 1)
    else if (event.key === 'ArrowLeft' || event.key === 'PageUp') go(at - 1)
    else if (event.key === ' ' && !onButton) tick()
    else if (event.key === 'Enter' && !onButton) {
      if (mark === undefined) onClose()
      else go(at + 1)
    } else return
    event.preventDefault()
  }
  const swipe = useSwipe((by) => go(at + by))
  return (
    <dialog ref={dialog} className="tapemode" aria-labelledby="tapemode-heading" data-touch="true" data-hand={leftHanded ? 'left' : 'right'} onCancel={(event) => { event.preventDefault(); onClose() }} onKeyDown={onKeyDown}>
      <header className="tapemode-head">
        <div>
          <h2 id="tapemode-heading" ref={heading} tabIndex={-1}>{marks.length === 0 ? local(text.title) : mark === undefined ? local(text.end) : nameOf(mark)}</h2>
          <p className="quiet-text">{mark === undefined ? '' : `${local(text.progress, { at: at + 1, count: marks.length })} · `}{local(text.set, { done, count: marks.length })}</p>
        </div>
        <progress max={Math.max(1, marks.length)} value={done} aria-label={local(text.title)} />
        <button type="button" className="square quiet" aria-label={local(text.close)} onClick={onClose}><Icon name="close" sizePx={26} /></button>
      </header>
      <div className="tapemode-body" {...swipe}>
        {marks.length === 0 ? <p className="tapemode-line">{local(text.none)}</p> : mark === undefined ? <EndPage marks={marks} jaws={jaws} nameOf={nameOf} onGo={go} /> : <MarkPage mark={mark} />}
      </div>
      <footer className="tapemode-foot">
        <Notice />
        {mark === undefined || mark.height === null ? null : <JawsLine jaws={jaws} />}
        <button type="button" className="tapemode-back" disabled={at === 0 || marks.length === 0} aria-label={local(text.back)} onClick={() => go(at - 1)}><Icon name="left" sizePx={30} /></button>
        {mark === undefined ? null : <button type="button" className="tapemode-tick" aria-pressed={mark.isTicked} aria-label={local(text.tickOf, { label: nameOf(mark) })} onClick={tick}><span className="tapemode-box" aria-hidden="true">{mark.isTicked ? '✓' : ''}</span>{local(text.tick)}</button>}
        <button type="button" className="tapemode-next" onClick={() => { if (mark === undefined) onClose(); else go(at + 1) }}>{local(mark === undefined ? text.done : at + 1 === marks.length ? text.toEnd : text.next)}{mark === undefined ? null : <Icon name="right" sizePx={32} />}</button>
      </footer>
    </dialog>
  )
}
export default TapeMode
