import { useState, type ReactNode } from 'react'
import { useStore } from 'zustand'
import { talkWords as text } from '../../messages/ui/talkWords.ts'
import { Icon } from '../common/Icon.tsx'
import { useDocuments } from '../context.tsx'
import { Label, Line } from './Lines.tsx'
import { talkSession } from './session.ts'
import { useTalk } from './talkContext.tsx'
import { timeIn } from './talkLines.ts'

const MOST_PEOPLE = 60
const languageName = { en: text.english, es: text.spanish, both: text.bothLanguages }

/** Names as they are typed, kept in the log with language and time. */
export const SignPage = (): ReactNode => {
  const { say } = useTalk()
  const { people, signed, isPointMissing } = useStore(talkSession)
  const writable = useDocuments((state) => state.writable)
  const [draft, setDraft] = useState('')
  const add = (): void => {
    const name = draft.trim()
    if (name !== '' && !people.includes(name) && people.length < MOST_PEOPLE) talkSession.setState({ people: [...people, name] })
    setDraft('')
  }
  if (signed !== null) {
    return (
      <div className="talk-text">
        <div role="status"><Line text={text.kept} values={{ count: signed.people.length, language: languageName[signed.language ?? 'both'], when: timeIn(signed.when) }} className="talk-line talk-strong" /></div>
        {isPointMissing ? <Line text={text.keptNoPoint} className="talk-line talk-alert" /> : null}
        <ul className="talk-names">{signed.people.map((name) => <li key={name}>{name}</li>)}</ul>
        <Line text={text.triggers} />
        <div className="talk-spot-buttons"><button type="button" className="talk-button" onClick={() => window.print()}><Label text={text.print} /></button></div>
      </div>
    )
  }
  return (
    <div className="talk-text">
      {writable ? <Line text={text.signHow} /> : <Line text={text.readOnly} className="talk-line talk-alert" />}
      <div className="talk-add">
        <input type="text" aria-label={say.label(text.name)} maxLength={200} autoComplete="off" enterKeyHint="enter" value={draft} disabled={!writable} onChange={(event) => setDraft(event.currentTarget.value)} onKeyDown={(event) => { if (event.key === 'Enter') { event.preventDefault(); add() } }} />
        <button type="button" className="talk-button" disabled={draft.trim() === ''} onClick={add}><Label text={text.add} /></button>
      </div>
      <ul className="talk-names">
        {people.map((name) => <li key={name}><span>{name}</span><button type="button" className="square" aria-label={say.label(text.takeAway, { name })} onClick={() => talkSession.setState({ people: people.filter((one) => one !== name) })}><Icon name="close" /></button></li>)}
      </ul>
      {people.length === 0 ? <Line text={text.needName} className="talk-line talk-quiet" /> : null}
      <div className="talk-spot-buttons"><button type="button" className="talk-button" onClick={() => window.print()}><Label text={text.print} /></button></div>
    </div>
  )
}
