import { useEffect, useRef, useState } from 'react'
import type { BowAt } from '../../derive/bow.ts'
import type { BowAnswer } from '../../derive/bowAnswer.ts'
import { useSite, useUi } from '../context.tsx'

export interface BowShown {
  /** The last answer, shown as old while `working`; null before the first. */
  answer: BowAnswer | null
  /** The turn asked for; at once where the curve has it, else once the worker has said. */
  at: BowAt | null
  status: 'working' | 'ready' | 'failed'
}

const SAME_TURN_RAD = 1e-6
const REST_MS = 60

/** Asks the worker about the bow at a turn; answers to older turns and older documents are passed over. */
export function useBow(turnRad: number): BowShown {
  const { app } = useUi()
  const stamp = useSite((state) => state.stamp)
  const [known, setKnown] = useState<{ stamp: string; turnRad: number; answer: BowAnswer } | null>(null)
  const [failedFor, setFailedFor] = useState<string | null>(null)
  const hasAsked = useRef(false)
  useEffect(() => {
    let isWanted = true
    // While the dial is dragged the curve says what is shown; the worker is asked where the hand rests.
    const timer = setTimeout(() => {
      void app.ask({ name: 'bow', args: { turnRad } }).then((answer) => {
        if (!isWanted) return
        if (answer === null) setFailedFor(stamp)
        else setKnown({ stamp, turnRad, answer })
      })
    }, hasAsked.current ? REST_MS : 0)
    hasAsked.current = true
    return () => { isWanted = false; clearTimeout(timer) }
  }, [app, stamp, turnRad])
  const hasFailed = failedFor === stamp && known?.stamp !== stamp
  if (known === null || hasFailed) return { answer: null, at: null, status: hasFailed ? 'failed' : 'working' }
  const { answer } = known
  const isOld = known.stamp !== stamp
  if (Math.abs(known.turnRad - turnRad) < SAME_TURN_RAD) return { answer, at: answer.at, status: isOld ? 'working' : 'ready' }
  // The same either way round but for the side the ends point to, which none of the figures shown says.
  return { answer, at: answer.sweep?.curve.find((one) => Math.abs(one.turnRad - Math.abs(turnRad)) < SAME_TURN_RAD) ?? null, status: 'working' }
}

/** Level of a gap by the bounds of its limit. */
export const gapLevel = (gapM: number, { checkM, fixM }: BowAnswer): 'FIX' | 'CHECK' | 'met' => (fixM !== null && gapM > fixM ? 'FIX' : checkM !== null && gapM > checkM ? 'CHECK' : 'met')
