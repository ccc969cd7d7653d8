import type { ReactNode } from 'react'
import { compareWords as words } from '../../messages/ui/compareWords.ts'
import { comparisonOf } from '../../state/comparison.ts'
import { useUi, useWords } from '../context.tsx'
import { useComparison } from './changes.ts'
import { pointName } from './pointName.ts'

/** While the other plan is drawn and its list is put away: what the thin lines are, back to the list, or done. */
const CompareBar = (): ReactNode => {
  const { app } = useUi()
  const { local } = useWords()
  const comparison = useComparison()
  if (comparison === null) return null
  const { compared, changes } = comparison
  return (
    <div className="tool-hint" role="status">
      <span>{local(words.with)} {pointName(compared.name, local)}: {local(changes.length === 1 ? words.one : words.count, { count: changes.length })}</span>
      <button type="button" onClick={() => app.view.setState({ panel: 'compare' })}>{local(words.list)}</button>
      <button type="button" onClick={() => comparisonOf(app).setState({ compared: null })}>{local(words.done)}</button>
    </div>
  )
}
export default CompareBar
