import type { ReactNode } from 'react'
import { useStore } from 'zustand'
import { asSetWords as words } from '../../messages/ui/asSetWords.ts'
import { Figure } from '../common/Figure.tsx'
import { LevelMark } from '../common/LevelMark.tsx'
import { useSite, useUi, useWords } from '../context.tsx'
import { sentenceWords } from '../findings/words.ts'

/** While heights as set are shown: findings of the plan that do not hold as set. */
const GoneNotes = (): ReactNode => {
  const reader = useWords()
  const { app } = useUi()
  const stamp = useSite((state) => state.stamp)
  const planned = useStore(app.planned)
  if (planned.stamp !== stamp || planned.gone.length === 0) return null
  return (
    <details className="gone-notes">
      <summary>{reader.local(words.goneTitle)} ({planned.gone.length})</summary>
      <ul>
        {planned.gone.map((finding) => (
          <li key={finding.key}>{finding.level === 'met' ? null : <LevelMark level={finding.level} sizePx={15} named />}<span><Figure text={sentenceWords(finding.what, reader)} /></span></li>
        ))}
      </ul>
    </details>
  )
}
export default GoneNotes
