import type { ReactNode } from 'react'
import type { ArchView } from '../../derive/arch.ts'
import { archPitWords as text } from '../../messages/ui/archPitWords.ts'
import { useWords } from '../context.tsx'

const [WIDTH, HEIGHT, SIDE, TOP, BOTTOM] = [340, 140, 20, 26, 34]
/** Heights are drawn by one of these factors, the largest that fits. */
const steps: readonly number[] = [10, 5, 2, 1]
const POINTS = 60

/** The arch from the side, entry at the right; slings as uprights. */
export const ArchPicture = ({ view }: { view: ArchView }): ReactNode => {
  const { local, figure } = useWords()
  const { arch, supports } = view
  const aheadM = arch.lengthM * 0.08
  const backM = arch.lengthM * 1.12
  const pxPerM = (WIDTH - 2 * SIDE) / (aheadM + backM)
  const times = steps.find((step) => arch.riseM * pxPerM * step <= HEIGHT - TOP - BOTTOM) ?? 1
  const tall = Math.min(pxPerM * times, (HEIGHT - TOP - BOTTOM) / Math.max(arch.riseM, 1e-9))
  const x = (atM: number): number => WIDTH - SIDE - (atM + aheadM) * pxPerM
  const y = (levelM: number): number => HEIGHT - BOTTOM - levelM * tall
  const pipe = Array.from({ length: POINTS + 1 }, (_, i) => (backM * i) / POINTS).map((atM) => `${x(atM).toFixed(1)} ${y(arch.levelM(atM)).toFixed(1)}`)
  return (
    <figure className="bow-figure arch-figure">
      <figcaption className="quiet-text">{local(text.heights, { times })}</figcaption>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={local(text.pictureSaid, { rise: figure({ kind: 'height', value: arch.riseM }), ground: figure({ kind: 'length', value: arch.lengthM }), count: supports.length })}>
        <path d={`M${SIDE} ${y(0)}H${WIDTH - SIDE}`} className="bow-axis" />
        {supports.map(({ backM: atM, levelM }, i) => (
          <g key={atM}>
            <path d={`M${x(atM)} ${y(0)}V${y(levelM)}`} className="bow-axis" />
            <text x={x(atM)} y={y(levelM) - 8} className="bow-word" textAnchor="middle">{i + 1}</text>
          </g>
        ))}
        <path d={`M${pipe.join('L')}`} className="bow-loaded" />
        <text x={x(0)} y={HEIGHT - 12} className="bow-word" textAnchor="end">{local(text.entry)}</text>
        <text x={x(arch.lengthM)} y={HEIGHT - 12} className="bow-word" textAnchor="start">{local(text.rollers)}</text>
      </svg>
    </figure>
  )
}
