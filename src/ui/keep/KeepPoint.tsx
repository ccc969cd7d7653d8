import { useState, type FormEvent, type ReactNode } from 'react'
import { compareWords as words } from '../../messages/ui/compareWords.ts'
import { layoutOf } from '../../scene/document.ts'
import { useDocuments, useTell, useUi, useWords } from '../context.tsx'

/** Keeps the plan as it is now as a point in time, under the name that is typed; without one under the layout's. */
export const KeepPoint = ({ onKept }: { onKept: () => void }): ReactNode => {
  const { say, local } = useWords()
  const { services } = useUi()
  const tell = useTell()
  const title = useDocuments((state) => layoutOf(state.document).title)
  const [name, setName] = useState('')
  const keep = async (event: FormEvent): Promise<void> => {
    event.preventDefault()
    const typed = name.trim()
    if (!tell(await services.keepPoint(typed === '' ? (title === '' ? say('untitled') : title) : typed))) return
    setName('')
    onKept()
  }
  return (
    <form className="buttons keep-point" onSubmit={(event) => void keep(event)}>
      <label className="field"><span>{local(words.keepName)}</span><input type="text" value={name} maxLength={120} onChange={(event) => setName(event.target.value)} /></label>
      <button type="submit">{say('pointKeep')}</button>
    </form>
  )
}
