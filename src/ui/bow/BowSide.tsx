import type { ReactNode } from 'react'
import type { BowShapes } from '../../derive/bowAnswer.ts'
import type { JawsView } from '../../derive/types.ts'
import { bowWords as text } from '../../messages/ui/bowWords.ts'
import { useWords } from '../context.tsx'

const [WIDTH, HEIGHT, SIDE, TOP, BOTTOM] = [330, 130, 14, 12, 30]
/** Heights are drawn by one of these factors, the largest that fits. */
const steps: readonly number[] = [200, 100, 50, 20, 10, 5, 2, 1]

/** The stick in the infeed from the side, jaws at the right: with its weight on its supports, and dashed as it comes, held by the jaws alone. */
export const BowSide = ({ shapes, jaws }: { shapes: BowShapes; jaws: JawsView }): ReactNode => {
  const { local, figure } = useWords()
  const { runningM, loadedM, freeM, supports } = shapes
  const [firstM, lastM] = [runningM[0]!, runningM.at(-1)!]
  const levels = [...loadedM, ...freeM, ...supports.map(({ levelM }) => levelM), 0]
  const [lowM, highM] = [Math.min(...levels), Math.max(...levels)]
  const pxPerM = (WIDTH - 2 * SIDE) / (lastM - firstM)
  const roomPx = HEIGHT - TOP - BOTTOM
  const times = steps.find((step) => (highM - lowM) * pxPerM * step <= roomPx) ?? 1
  const x = (at: number): number => SIDE + (at - firstM) * pxPerM
  const spareUpPx = (roomPx - (highM - lowM) * pxPerM * times) / 2
  const y = (levelM: number): number => TOP + spareUpPx + (highM - levelM) * pxPerM * times
  const lineOf = (levelsM: readonly number[]): string => `M${runningM.map((at, i) => `${x(at).toFixed(1)} ${y(levelsM[i]!).toFixed(1)}`).join('L')}`
  const tailM = loadedM[0]!
  return (
    <figure className="bow-figure">
      <figcaption>{local(text.side)} <span className="quiet-text">{local(text.heights, { times })}</span></figcaption>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={`${local(text.side)}: ${local(text.loaded)} ${figure({ kind: 'shortLength', value: tailM })}, ${local(text.free)} ${figure({ kind: 'shortLength', value: freeM[0]! })}`}>
        <path d={`M${SIDE} ${y(0)}H${WIDTH - SIDE}`} className="bow-axis bow-dash-axis" />
        <path d={lineOf(freeM)} className="bow-free" />
        <path d={lineOf(loadedM)} className="bow-loaded" />
        {supports.map(({ label, runningM: at, levelM }) => (
          <g key={label} transform={`translate(${x(at)} ${y(levelM)})`}>
            <path d="M0 2L7 15H-7Z" className="bow-support" />
            <text y={28} className="bow-word" textAnchor="middle">{label}</text>
          </g>
        ))}
        {[-jaws.outerClampM, -jaws.innerClampM].map((at) => <path key={at} d={`M${x(at)} ${y(0) - 11}v22`} className="bow-jaw" />)}
        <text x={WIDTH - SIDE} y={y(0) - 16 < 12 ? y(0) + 26 : y(0) - 16} className="bow-word" textAnchor="end">{local(text.jaws)}</text>
      </svg>
      <p className="bow-key"><span><svg viewBox="0 0 30 8" aria-hidden="true"><path d="M0 4H30" className="bow-loaded" /></svg>{local(text.loaded)}</span><span><svg viewBox="0 0 30 8" aria-hidden="true"><path d="M0 4H30" className="bow-free" /></svg>{local(text.free)}</span></p>
    </figure>
  )
}
