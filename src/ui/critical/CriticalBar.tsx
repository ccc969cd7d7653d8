import type { ReactNode } from 'react'
import { criticalWords as words } from '../../messages/ui/criticalWords.ts'
import { useUi, useWords } from '../context.tsx'

/** While the ranking is drawn and its list is put away: what the numbers mean, back to the list, or done. */
const CriticalBar = (): ReactNode => {
  const { app } = useUi()
  const { local } = useWords()
  return (
    <div className="tool-hint" role="status">
      <span>{local(words.bar)}</span>
      <button type="button" onClick={() => app.view.setState({ panel: 'critical' })}>{local(words.list)}</button>
      <button type="button" onClick={() => app.critical.turn(false)}>{local(words.done)}</button>
    </div>
  )
}
export default CriticalBar
