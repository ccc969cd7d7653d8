import type { ReactNode } from 'react'
import { useStore } from 'zustand'
import { keepWords as words } from '../../messages/ui/keepWords.ts'
import { useTell, useUi, useWords } from '../context.tsx'
import { megabytes } from './megabytes.ts'
import type { Nudge } from './nudge.ts'

/** Asks for a file to be saved, with the reason; put off, it comes back with another reason or as many edits again. */
const KeepBar = ({ nudge, onLater }: { nudge: Nudge; onLater: () => void }): ReactNode => {
  const { local } = useWords()
  const { services } = useUi()
  const tell = useTell()
  const { editsSinceFile, usedBytes, allowedBytes } = useStore(services.storage)
  return (
    <div className="state-bar" role="status">
      <span>{local(words[nudge], { count: editsSinceFile, used: megabytes(usedBytes), allowed: megabytes(allowedBytes) })}</span>
      <button type="button" onClick={() => void services.saveFile().then(tell)}>{local(words.save)}</button>
      <button type="button" onClick={onLater}>{local(words.later)}</button>
    </div>
  )
}
export default KeepBar
