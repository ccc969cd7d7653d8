import { memo, type ReactNode, type RefObject } from 'react'

/** What pointing at a flag and pressing it do; held in a ref so that a flag that stays as it is is not drawn again. */
export interface FlagTouch {
  onPoint: (key: string) => void
  onPress: (key: string) => void
}

interface FlagTargetProps {
  id: string
  flagKey: string
  /** What a screen reader says of it. */
  name: string
  isChosen: boolean
  /** Stands for something that can be chosen and dragged. */
  isItem: boolean
  count: number
  /** Place among all flags, from 1. */
  at: number
  left: number
  top: number
  width: number
  height: number
  zIndex: number
  touch: RefObject<FlagTouch>
}

/** The part of a flag a finger hits and a screen reader reads; the flag itself is on the canvas beneath. */
export const FlagTarget = memo(({ id, flagKey, name, isChosen, isItem, count, at, left, top, width, height, zIndex, touch }: FlagTargetProps): ReactNode => (
  <div
    id={id} role="option" data-flag={flagKey} aria-selected={isChosen} aria-label={name} aria-disabled={!isItem || undefined} aria-setsize={count} aria-posinset={at}
    onPointerEnter={() => touch.current.onPoint(flagKey)} onPointerDown={() => touch.current.onPress(flagKey)}
    style={{ position: 'absolute', left, top, width, height, zIndex, cursor: isItem ? 'grab' : 'default' }}
  />
))
FlagTarget.displayName = 'FlagTarget'
