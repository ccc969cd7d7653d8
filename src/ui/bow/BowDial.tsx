import { useRef, type PointerEvent, type ReactNode } from 'react'
import { bowTurnWords } from '../../messages/bowTurn.ts'
import { bowWords as text } from '../../messages/ui/bowWords.ts'
import { useWords } from '../context.tsx'
import { onDial, toRadians, turnAtDeg, turnOfKey } from './turns.ts'

interface BowDialProps {
  turnDeg: number
  /** Best turns; a bow that is best to the left is as good to the right. */
  bestDeg: readonly number[]
  onTurn: (degrees: number) => void
}

const RING = 62
const WALL = 11
const MARK = 92
const ticks: readonly number[] = Array.from({ length: 24 }, (_, i) => i * 15)

/** The stick looked at from its end, down-string: a ring for its end, dashed the middle that the bow sets off, a hand where the ends point. */
export const BowDial = ({ turnDeg, bestDeg, onTurn }: BowDialProps): ReactNode => {
  const { local } = useWords()
  const dial = useRef<SVGSVGElement>(null)
  const isHeld = useRef(false)
  const turnTo = (event: PointerEvent): void => {
    const box = dial.current!.getBoundingClientRect()
    const [dxPx, dyPx] = [event.clientX - (box.left + box.width / 2), event.clientY - (box.top + box.height / 2)]
    // Too near the middle a finger's width is any turn.
    if (Math.hypot(dxPx, dyPx) > 12) onTurn(turnAtDeg(dxPx, dyPx))
  }
  const middle = onDial(turnDeg + 180, 20)
  const tip = onDial(turnDeg, MARK - 10)
  const letters = ([[0, text.up], [90, text.left], [-90, text.right]] as const).map(([degrees, word]) => ({ ...onDial(degrees, MARK + 20), word: local(word) }))
  return (
    <svg
      ref={dial} className="bow-dial" viewBox="-130 -130 260 260" role="slider" tabIndex={0}
      aria-label={local(text.dial)} aria-valuemin={-180} aria-valuemax={180} aria-valuenow={Math.round(turnDeg)} aria-valuetext={local(bowTurnWords(toRadians(turnDeg)))}
      onPointerDown={(event) => { isHeld.current = true; event.currentTarget.setPointerCapture(event.pointerId); turnTo(event) }}
      onPointerMove={(event) => { if (isHeld.current) turnTo(event) }}
      onPointerUp={() => { isHeld.current = false }} onPointerCancel={() => { isHeld.current = false }}
      onKeyDown={(event) => {
        const next = turnOfKey(event.key, turnDeg)
        if (next === null) return
        event.preventDefault()
        onTurn(next)
      }}
    >
      {ticks.map((degrees) => {
        const [from, to] = [onDial(degrees, MARK), onDial(degrees, degrees % 45 === 0 ? MARK - 9 : MARK - 5)]
        return <line key={degrees} x1={from.x} y1={from.y} x2={to.x} y2={to.y} className="bow-tick" />
      })}
      {letters.map(({ x, y, word }) => <text key={word} x={x} y={y + 5} className="bow-letter">{word}</text>)}
      <circle r={RING} cx={middle.x} cy={middle.y} className="bow-middle" />
      <circle r={RING} className="bow-ring" />
      <circle r={RING - WALL} className="bow-bore" />
      <line x1={0} y1={0} x2={tip.x} y2={tip.y} className="bow-hand" />
      <path d="M0 -9L8 7H-8Z" transform={`translate(${tip.x} ${tip.y}) rotate(${-turnDeg})`} className="bow-tip" />
      <circle r={4} className="bow-tip" />
      {bestDeg.map((degrees) => {
        const at = onDial(degrees, MARK + 5)
        return <path key={degrees} d="M0 0L7 -12H-7Z" transform={`translate(${at.x} ${at.y}) rotate(${-degrees})`} className="bow-best" />
      })}
    </svg>
  )
}
