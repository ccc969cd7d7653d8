import type { ReactNode } from 'react'
import { Panel } from '../common/Panel.tsx'
import { useUi, useWords } from '../context.tsx'
import { moreEntries, moreGroups, type MoreEntry } from './entries.ts'

/** Tools that have no place of their own on the sheet, in groups. */
export const MorePanel = ({ onClose }: { onClose: () => void }): ReactNode => {
  const words = useWords()
  const { app } = useUi()
  const choose = ({ panel, open }: MoreEntry): void => {
    app.view.setState({ panel: panel ?? null })
    open?.(app)
  }
  return (
    <Panel title={words.local({ en: 'more', es: 'más' })} onClose={onClose} wide>
      {(Object.keys(moreGroups) as (keyof typeof moreGroups)[]).map((group) => {
        const entries = moreEntries.filter((entry) => entry.group === group)
        return entries.length === 0 ? null : (
          <section key={group} className="more-group">
            <h3>{words.local(moreGroups[group])}</h3>
            <div className="menu-list">
              {entries.map((entry) => (
                <button type="button" key={entry.label.en} onClick={() => choose(entry)}>
                  <strong>{words.local(entry.label)}</strong><span className="quiet-text block">{words.local(entry.about)}</span>
                </button>
              ))}
            </div>
          </section>
        )
      })}
    </Panel>
  )
}
