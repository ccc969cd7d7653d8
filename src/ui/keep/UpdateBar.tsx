import { useState, type ReactNode } from 'react'
import { updateWords as words } from '../../messages/ui/updateWords.ts'
import { useTell, useUi, useWords } from '../context.tsx'

/** A new version waits: loaded when somebody says so, never by itself. Put off, it is not asked again in this window. */
const UpdateBar = (): ReactNode => {
  const { local } = useWords()
  const { services } = useUi()
  const tell = useTell()
  const [isPutOff, setIsPutOff] = useState(false)
  if (isPutOff) return null
  return (
    <div className="state-bar" role="status">
      <span>{local(words.ready)}</span>
      <button type="button" onClick={() => void services.reload().then(tell)}>{local(words.reload)}</button>
      <button type="button" onClick={() => setIsPutOff(true)}>{local(words.later)}</button>
    </div>
  )
}
export default UpdateBar
