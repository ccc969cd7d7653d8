import type { ReactNode } from 'react'
import { useStore } from 'zustand'
import { shareWords as words } from '../../messages/ui/shareWords.ts'
import { Figure } from '../common/Figure.tsx'
import { Panel } from '../common/Panel.tsx'
import { useTell, useUi, useView, useWords } from '../context.tsx'
import { pipeWords } from '../title/pipeWords.ts'
import '../styles/share.css'

/** What a link carries, or why it was refused. It is read only here: a button opens it as a copy, closing leaves all as it is. */
export const IncomingPanel = (): ReactNode => {
  const reader = useWords()
  const { local } = reader
  const { services } = useUi()
  const tell = useTell()
  const isYard = useView((view) => view.screen === 'yard')
  const { link } = useStore(services.incoming)
  if (link === null) return null
  const close = services.forgetIncoming
  if (!link.ok) {
    return (
      <Panel title={local(words.refusedTitle)} onClose={close} foot={<button type="button" className="primary" onClick={close}>{local(words.ok)}</button>}>
        <p role="alert">{local(words.refused, { reason: local(link.reason) })}</p>
        <p>{local(words.length, { chars: link.chars })} {isYard ? local(words.untouched) : ''}</p>
      </Panel>
    )
  }
  const { title, job, items, revision, replaces, chars, isHere, notes } = link
  const facts: readonly (readonly [label: string, value: string])[] = [
    [local(words.name), title === '' ? local(words.unnamed) : title],
    [local(words.pipe), pipeWords(job.pipe, reader) ?? local(words.pipeUnknown)],
    [local(words.items), String(items)],
    [local(words.revision), replaces === null ? revision : local(words.replaces, { letter: revision, before: replaces })],
    [local(words.size), local(words.length, { chars })],
  ]
  const foot = (
    <>
      <button type="button" className="primary" onClick={() => void services.openIncoming().then(tell)}>{local(words.openCopy)}</button>
      {isYard ? <button type="button" onClick={services.compareIncoming}>{local(words.compare)}</button> : null}
      <button type="button" onClick={close}>{local(isYard ? words.keep : words.noThanks)}</button>
    </>
  )
  return (
    <Panel title={local(words.incomingTitle)} onClose={close} foot={foot}>
      <p>{local(words.incomingAbout)}</p>
      <dl className="link-facts">{facts.map(([label, value]) => <div key={label}><dt>{label}</dt><dd><Figure text={value} /></dd></div>)}</dl>
      {notes.map((note) => <p key={note.en}>{local(note)}</p>)}
      {isHere ? <p>{local(words.isHere)}</p> : null}
    </Panel>
  )
}
