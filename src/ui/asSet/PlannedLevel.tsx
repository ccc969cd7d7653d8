import type { ReactNode } from 'react'
import { useStore } from 'zustand'
import type { Level } from '../../checks/finding.ts'
import { asSetWords as words } from '../../messages/ui/asSetWords.ts'
import { useSite, useUi, useWords } from '../context.tsx'
import { levelKey } from '../findings/words.ts'

/** Beside the level of a finding as set: what the same finding is in the plan, where that differs. */
const PlannedLevel = ({ findingKey, level }: { findingKey: string; level: Level }): ReactNode => {
  const { local, say } = useWords()
  const { app } = useUi()
  const stamp = useSite((state) => state.stamp)
  const planned = useStore(app.planned)
  if (planned.stamp !== stamp) return null
  const inPlan = planned.levels.get(findingKey)
  if (inPlan === level) return null
  const isOpen = inPlan !== undefined && inPlan !== 'met'
  return <span className="planned-level">{isOpen ? local(words.inPlan, { level: say(levelKey(inPlan)) }) : local(words.inPlanNone)}</span>
}
export default PlannedLevel
