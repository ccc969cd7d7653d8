import { useEffect, useRef, useState, type CSSProperties, type KeyboardEvent, type ReactNode } from 'react'
import { useStore } from 'zustand'
import { talkWords as text } from '../../messages/ui/talkWords.ts'
import { layoutOf } from '../../scene/document.ts'
import { Notice } from '../common/Bars.tsx'
import { Icon } from '../common/Icon.tsx'
import { useModal } from '../common/useModal.ts'
import { isTyping, useSwipe } from '../common/useSwipe.ts'
import { useDocuments, useSite, useUi } from '../context.tsx'
import { lastTalkOf, useSinceTalk } from './lastTalk.ts'
import { Label, Line, StopSign } from './Lines.tsx'
import { freshSession, talkSession } from './session.ts'
import { signOff } from './signOff.ts'
import { SignPage } from './SignPage.tsx'
import { StandPage } from './StandPage.tsx'
import { TalkProvider, useTalk } from './talkContext.tsx'
import { talkInkStyle } from './talkInks.ts'
import { spokenLines } from './talkLines.ts'
import { ChangedPage, ChoosePage, NextPage, pageHeading, QuestionPage, StopsPage, WrongPage, ZonePage } from './TalkPages.tsx'
import { TalkSheet } from './TalkSheet.tsx'
import '../styles/talk.css'

const pages = { choose: ChoosePage, next: NextPage, zone: ZonePage, stand: StandPage, stops: StopsPage, changed: ChangedPage, wrong: WrongPage, question: QuestionPage, sign: SignPage } as const

/** The toolbox talk: one thing a page, large, in the languages of the crew; kept where it was when the plan is looked at in between. */
const TalkMode = ({ onClose }: { onClose: () => void }): ReactNode => {
  const { app, services } = useUi()
  const layoutId = useDocuments((state) => layoutOf(state.document).layoutId)
  const isOurs = useStore(talkSession, (session) => session.layoutId === layoutId)
  useEffect(() => {
    if (talkSession.getState().layoutId === layoutId) return
    const { language } = app.view.getState()
    talkSession.setState({ ...freshSession, layoutId, before: lastTalkOf(app.documents.getState().document), languages: language === 'es' ? ['es', 'en'] : ['en', 'es'] })
  }, [app, layoutId])
  useEffect(() => services.keepAwake(), [services])
  useEffect(() => {
    document.documentElement.dataset['print'] = 'talk'
    return () => {
      delete document.documentElement.dataset['print']
      services.voice.hush()
    }
  }, [services])
  return isOurs ? <TalkProvider><TalkScreen onClose={onClose} /><TalkSheet /></TalkProvider> : null
}
export default TalkMode

const TalkScreen = ({ onClose }: { onClose: () => void }): ReactNode => {
  const talk = useTalk()
  const { say, steps, step, at, zones, stage, phaseName } = talk
  const { app, services } = useUi()
  const dialog = useModal()
  const heading = useRef<HTMLHeadingElement>(null)
  const session = useStore(talkSession)
  const since = useSinceTalk(session.before)
  const site = useSite((state) => state.site)
  const voice = useStore(services.voice.store)
  const [isSigning, setIsSigning] = useState(false)
  useEffect(() => {
    services.voice.hush()
    heading.current?.focus()
    heading.current?.closest('dialog')?.querySelector('.talk-body')?.scrollTo(0, 0)
  }, [at, services])

  const isSign = step.name === 'sign'
  const canSign = session.people.length > 0 && session.signed === null && !isSigning
  const close = (): void => {
    if (session.signed !== null) talkSession.setState(freshSession)
    onClose()
  }
  const sign = async (): Promise<void> => {
    setIsSigning(true)
    const done = await signOff(app, services, session, stage, phaseName)
    setIsSigning(false)
    if (done !== null) talkSession.setState(done)
  }
  const go = (by: 1 | -1): void => {
    const to = at + by
    if (to >= 0 && to < steps.length) talkSession.setState({ step: to })
  }
  const onNext = (): void => {
    if (!isSign) go(1)
    else if (session.signed !== null) close()
    else if (canSign) void sign()
  }
  const onKeyDown = (event: KeyboardEvent): void => {
    event.stopPropagation()
    if (event.ctrlKey || event.metaKey || event.altKey || event.defaultPrevented || isTyping(event.target)) return
    const onButton = event.target instanceof HTMLElement && event.target.closest('button, a, summary') !== null
    if (event.key === 'ArrowRight' || event.key === 'PageDown') { if (!isSign) go(1) } else if (event.key === 'ArrowLeft' || event.key === 'PageUp') go(-1)
    else if (event.key === 'Enter' && !onButton) onNext()
    else return
    event.preventDefault()
  }
  const swipe = useSwipe((by) => { if (by < 0 || !isSign) go(by) })
  const Page = pages[step.name]
  const hasVoice = say.languages.some((language) => voice[language])
  const read = (): void => {
    if (voice.isReading) return services.voice.hush()
    // Each language whole, one after the other: a line in each by turns is hard to follow.
    const lines = spokenLines({ ...talk, site, since })
    services.voice.say(say.words.flatMap((words) => lines.map(({ text: line, values = {} }) => ({ text: words.local(line, values), language: words.language }))))
  }
  return (
    <dialog ref={dialog} className="talk" aria-labelledby="talk-heading" style={talkInkStyle as CSSProperties} data-languages={say.languages.length} onCancel={(event) => { event.preventDefault(); close() }} onKeyDown={onKeyDown}>
      <header className="talk-head">
        <div className="talk-where">
          <h2 id="talk-heading" ref={heading} tabIndex={-1}><Label text={pageHeading[step.name]} /></h2>
          <p className="talk-quiet"><Label text={phaseName} />{step.name === 'zone' && step.zone !== null ? <>, <Label text={text.zoneAt} values={{ at: step.index + 1, count: zones.length }} /></> : null}</p>
        </div>
        <div className="talk-ticks" role="img" aria-label={say.label(text.progress, { at: at + 1, count: steps.length })}>{steps.map((_, i) => <span key={i} data-done={i <= at} />)}</div>
        <StopSign />
        <button type="button" className="square talk-close" aria-label={say.label(text.close)} onClick={close}><Icon name="close" sizePx={26} /></button>
      </header>
      <div className="talk-body" data-step={step.name} {...swipe}>
        <Page />
        {say.languages.includes('es') ? <Line text={text.spanishMark} className="talk-line talk-quiet talk-mark" /> : null}
      </div>
      <footer className="talk-foot">
        <Notice />
        <button type="button" className="talk-button talk-back" disabled={at === 0} aria-label={say.label(text.back)} onClick={() => go(-1)}><Icon name="left" sizePx={28} /></button>
        {hasVoice ? <button type="button" className="talk-button talk-read" aria-pressed={voice.isReading} aria-label={say.label(voice.isReading ? text.hush : text.readAloud)} onClick={read}><Icon name="voice" sizePx={28} /></button> : null}
        <button type="button" className="talk-next" disabled={isSign && session.signed === null && !canSign} onClick={onNext}>
          <span><Label text={!isSign ? (step.name === 'choose' ? text.start : text.next) : session.signed === null ? text.sign : text.done} /></span>{isSign ? null : <Icon name="right" sizePx={34} />}
        </button>
      </footer>
    </dialog>
  )
}
