import type { ReactNode } from 'react'
import type { BowAt } from '../../derive/bow.ts'
import type { BowAnswer } from '../../derive/bowAnswer.ts'
import { bowTurnWords } from '../../messages/bowTurn.ts'
import { bowWords as text } from '../../messages/ui/bowWords.ts'
import { useWords } from '../context.tsx'
import { toDegrees } from './turns.ts'

const [WIDTH, HEIGHT, LEFT, TOP, BOTTOM] = [330, 150, 8, 12, 26]

/** Face gap over all turns, with the bounds of its limit, the turn shown and the best one. */
export const BowCurve = ({ answer, at, turnDeg }: { answer: BowAnswer; at: BowAt | null; turnDeg: number }): ReactNode => {
  const { local, figure } = useWords()
  const { sweep, checkM, fixM } = answer
  if (sweep === null) return null
  const { curve, leastGap } = sweep
  const mostM = Math.max(...curve.map(({ faceGapM }) => faceGapM))
  const bounds = [{ boundM: checkM, word: text.check }, { boundM: fixM, word: text.fix }].filter(({ boundM }) => boundM !== null && boundM < 1.6 * mostM)
  const topM = 1.12 * Math.max(mostM, ...bounds.map(({ boundM }) => boundM!))
  // Left of ends up is positive and drawn to the left.
  const x = (degrees: number): number => LEFT + ((180 - degrees) / 360) * (WIDTH - 2 * LEFT)
  const y = (gapM: number): number => HEIGHT - BOTTOM - (gapM / topM) * (HEIGHT - BOTTOM - TOP)
  const half = curve.map(({ turnRad, faceGapM }) => ({ degrees: toDegrees(turnRad), faceGapM }))
  const points = [...half.toReversed(), ...half.slice(1).map(({ degrees, faceGapM }) => ({ degrees: -degrees, faceGapM }))]
  const short = (gapM: number): string => figure({ kind: 'shortLength', value: gapM })
  const bestDeg = toDegrees(leastGap.turnRad)
  const best = [...new Set([bestDeg, -bestDeg])]
  return (
    <figure className="bow-figure">
      <figcaption>{local(text.curve)}</figcaption>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={local(text.curveSaid, { least: short(leastGap.faceGapM), best: local(bowTurnWords(leastGap.turnRad)), most: short(mostM), now: at === null ? '?' : short(at.faceGapM) })}>
        <path d={`M${LEFT} ${HEIGHT - BOTTOM}H${WIDTH - LEFT}`} className="bow-axis" />
        {[-180, -90, 0, 90, 180].map((degrees) => (
          <g key={degrees}>
            <path d={`M${x(degrees)} ${HEIGHT - BOTTOM}v5`} className="bow-axis" />
            <text x={x(degrees)} y={HEIGHT - 6} className="bow-word" textAnchor={degrees === 180 ? 'start' : degrees === -180 ? 'end' : 'middle'}>{local(bowTurnWords((degrees * Math.PI) / 180)).replace(/^(ends|puntas) (to the |a la )?/, '')}</text>
          </g>
        ))}
        {bounds.map(({ boundM, word }) => (
          <g key={word.en}>
            <path d={`M${LEFT} ${y(boundM!)}H${WIDTH - LEFT}`} className="bow-bound" />
            <text x={WIDTH - LEFT} y={y(boundM!) - 4} className="bow-word" textAnchor="end">{local(word)} {short(boundM!)}</text>
          </g>
        ))}
        <path d={`M${points.map(({ degrees, faceGapM }) => `${x(degrees).toFixed(1)} ${y(faceGapM).toFixed(1)}`).join('L')}`} className="bow-line" />
        {best.map((degrees) => <path key={degrees} d="M0 -4L6 -14H-6Z" transform={`translate(${x(degrees)} ${y(leastGap.faceGapM)})`} className="bow-best" />)}
        {at === null ? null : <circle cx={x(turnDeg)} cy={y(at.faceGapM)} r={6} className="bow-now" />}
      </svg>
    </figure>
  )
}
