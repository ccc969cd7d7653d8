import type { ReactNode } from 'react'
import { Panel } from '../common/Panel.tsx'
import { useUi, useWords } from '../context.tsx'

export const AboutPanel = ({ onClose }: { onClose: () => void }): ReactNode => {
  const words = useWords()
  const { say } = words
  const { services: { about } } = useUi()
  return (
    <Panel title={say('aboutTitle')} onClose={onClose}>
      <p>{say('aboutWhat')}</p>
      <p>{say('aboutVersion', { app: about.appVersion, file: about.fileVersion })}</p>
      <p>{words.local(about.licence)}</p>
      <h3>{say('cautionTitle')}</h3>
      <p>{say('caution')}</p>
      <p>{say('cautionMore')}</p>
      <h3>{say('privacyTitle')}</h3>
      <p>{say('privacy')}</p>
      <h3>{say('noticesTitle')}</h3>
      {about.notices.map((notice) => (
        <details key={notice.name}>
          <summary>{notice.name}, {notice.licence}</summary>
          <pre tabIndex={0}>{notice.text}</pre>
        </details>
      ))}
    </Panel>
  )
}

/** Keyboard map, made from the table that binds the keys. */
export const KeysPanel = ({ onClose }: { onClose: () => void }): ReactNode => {
  const words = useWords()
  const { services } = useUi()
  const rows = services.keyMap()
  const groups = [...new Set(rows.map(({ group }) => group.en))]
  return (
    <Panel title={words.say('keysTitle')} onClose={onClose} wide reading>
      <p className="quiet-text">{words.say('keysAbout')}</p>
      {groups.map((group) => {
        const inGroup = rows.filter((row) => row.group.en === group)
        return (
          <section key={group}>
            <h3>{words.local(inGroup[0]!.group)}</h3>
            <dl className="keys">{inGroup.map((row) => <div key={`${row.keys} ${row.does.en}`}><dt><kbd>{row.keys}</kbd></dt><dd>{words.local(row.does)}</dd></div>)}</dl>
          </section>
        )
      })}
    </Panel>
  )
}
