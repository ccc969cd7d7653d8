import type { ReactNode } from 'react'
import { Figure } from '../common/Figure.tsx'
import { useWords } from '../context.tsx'

/** Least, now, most: where the figure stands in the range of the gear. Outside the range the mark stands at the end, in red, with a word. */
export const RangeBar = ({ lowM, nowM, highM, guessed }: { lowM: number; nowM: number | null; highM: number; guessed: boolean }): ReactNode => {
  const { say, figure } = useWords()
  if (highM <= lowM) return null
  const share = nowM === null ? null : (nowM - lowM) / (highM - lowM)
  const isOut = share !== null && (share < -1e-6 || share > 1 + 1e-6)
  const text = (valueM: number): string => figure({ kind: 'height', value: valueM })
  const x = share === null ? 0 : Math.min(1, Math.max(0, share)) * 100
  return (
    <div className="range" data-out={isOut}>
      <span className="range-end"><Figure text={text(lowM)} /></span>
      <svg className="range-bar" viewBox="0 0 100 22" preserveAspectRatio="none" role="img" aria-label={say(isOut ? 'rangeOut' : 'rangeSaid', { low: text(lowM), high: text(highM), now: nowM === null ? '?' : text(nowM) })}>
        <path d="M0.5 10V20M0.5 15H99.5M99.5 10V20" vectorEffect="non-scaling-stroke" fill="none" stroke="currentColor" strokeWidth="1.2" strokeDasharray={guessed ? '3 3' : undefined} />
      </svg>
      {share === null ? null : <span className="range-now" style={{ '--at': `${x}%` } as React.CSSProperties} aria-hidden="true" />}
      <span className="range-end"><Figure text={text(highM)} /></span>
      {isOut ? <span className="range-word">{say('rangeOutWord')}</span> : null}
    </div>
  )
}
