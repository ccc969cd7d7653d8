import { useEffect, useId, useRef, useState, type KeyboardEvent, type ReactNode } from 'react'
import { wetWords } from '../../messages/ui/wetWords.ts'
import { useWords } from '../context.tsx'
import '../styles/wet.css'

/** How long it is held before it counts, ms: longer than a drop of rain or a glove in passing. */
export const HOLD_MS = 800

/**
 * A button that counts only when held: finger, mouse, Enter or space for 0.8 s; let go before, nothing happens. A screen
 * reader's own press (a click that no pointer and no key made) counts at once: no drop of rain makes one.
 */
export const HoldButton = ({ children, label, className = '', onConfirm }: { children: ReactNode; label?: string; className?: string; onConfirm: () => void }): ReactNode => {
  const { local } = useWords()
  const [isHeld, setIsHeld] = useState(false)
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined)
  const aboutId = useId()
  const letGo = (): void => {
    clearTimeout(timer.current)
    timer.current = undefined
    setIsHeld(false)
  }
  const hold = (): void => {
    if (timer.current !== undefined) return
    setIsHeld(true)
    timer.current = setTimeout(() => {
      letGo()
      onConfirm()
    }, HOLD_MS)
  }
  useEffect(() => () => clearTimeout(timer.current), [])
  const isHoldKey = ({ key }: KeyboardEvent): boolean => key === 'Enter' || key === ' '
  return (
    <>
      <button
        type="button" className={`hold-button ${className}`} aria-label={label} aria-describedby={aboutId} data-held={isHeld}
        onPointerDown={(event) => { if (event.isPrimary && event.button === 0) hold() }}
        onPointerUp={letGo} onPointerCancel={letGo} onPointerLeave={letGo} onBlur={letGo}
        onContextMenu={(event) => event.preventDefault()}
        onKeyDown={(event) => {
          if (!isHoldKey(event)) return
          event.preventDefault()
          if (!event.repeat) hold()
        }}
        onKeyUp={(event) => { if (isHoldKey(event)) { event.preventDefault(); letGo() } }}
        onClick={(event) => { if (event.detail === 0 && event.nativeEvent instanceof PointerEvent && event.nativeEvent.pointerType === '') onConfirm() }}
      >
        <span>{children}</span>
      </button>
      <span className="visually-hidden" id={aboutId}>{local(wetWords.holdAbout)}</span>
    </>
  )
}
export default HoldButton
