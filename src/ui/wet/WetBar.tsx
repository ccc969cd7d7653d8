import { useEffect, type ReactNode } from 'react'
import { wetWords } from '../../messages/ui/wetWords.ts'
import { setWet } from '../../state/wetMode.ts'
import { useUi, useWords } from '../context.tsx'
import { HoldButton } from './HoldButton.tsx'
import '../styles/wet.css'

/** Says that the plan is frozen while the mode lasts, and holds the way out of it. Large targets everywhere meanwhile. */
const WetBar = (): ReactNode => {
  const { app } = useUi()
  const { local } = useWords()
  useEffect(() => {
    document.documentElement.dataset['wet'] = 'true'
    return () => { delete document.documentElement.dataset['wet'] }
  }, [])
  return (
    <section className="state-bar wet-bar" aria-label={local(wetWords.on)}>
      <span>{local(wetWords.on)}</span>
      <HoldButton label={local(wetWords.leaveLabel)} onConfirm={() => setWet(app.view, false)}>{local(wetWords.leave)}</HoldButton>
    </section>
  )
}
export default WetBar
