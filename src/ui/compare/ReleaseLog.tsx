import type { ReactNode } from 'react'
import { compareWords as words } from '../../messages/ui/compareWords.ts'
import { revisionHash, releasesOf } from '../../scene/revision.ts'
import { useDocuments, useWords } from '../context.tsx'
import { timeWords } from '../title/timeWords.ts'

/** Digits of the content hash that are shown: enough to tell papers apart by eye. */
const SHOWN_DIGITS = 8

/** Every time the plan was printed or shared, newest first: letter, how, when, what it replaces, and whether it is the plan as it is now. */
export const ReleaseLog = (): ReactNode => {
  const { local, language } = useWords()
  const document = useDocuments((state) => state.document)
  const rows = releasesOf(document).toReversed()
  const now = rows.length === 0 ? null : revisionHash(document)
  return (
    <section aria-label={local(words.logTitle)}>
      <h3>{local(words.logTitle)}</h3>
      {rows.length === 0 ? <p className="quiet-text">{local(words.logNone)}</p> : (
        <ul className="rows release-log">
          {rows.map(({ id, letter, what, when, replaces, contentHash }) => (
            <li key={id}>
              <span className="row-main">
                <strong>{letter}</strong> {local(what === 'printed' ? words.printed : words.shared)}{replaces === null ? '' : `, ${local(words.replaces, { letter: replaces })}`}
                <span className="quiet-text block">{[timeWords(when, language), local(words.hash, { hash: contentHash.slice(0, SHOWN_DIGITS) }), ...(contentHash === now ? [local(words.same)] : [])].join(' · ')}</span>
              </span>
            </li>
          ))}
        </ul>
      )}
    </section>
  )
}
