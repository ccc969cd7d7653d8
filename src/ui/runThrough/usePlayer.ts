import { useCallback, useEffect, useMemo, useRef, useState } from 'react'
import { stagesOf } from '../../derive/stages/stagesOf.ts'
import { useUi } from '../context.tsx'
import type { Run } from './useRun.ts'

/** A stage without a moving nose stands for this long; a pull takes that. */
const STANDS_MS = 900
const PULL_MS = 2600

export interface Player {
  isPlaying: boolean
  toggle: () => void
  stop: () => void
}

/**
 * Plays the job from the stage shown on: stages stand a while, in a pull the nose goes its way. Where the reader wants less
 * motion, nothing moves by itself but from stage to stage. At the end it stops; playing again there starts from the front.
 */
export const usePlayer = (run: Run | null): Player => {
  const { app } = useUi()
  const [isPlaying, setIsPlaying] = useState(false)
  const shown = useRef(run)
  useEffect(() => { shown.current = run })
  const stop = useCallback(() => setIsPlaying(false), [])
  const toggle = useCallback(() => {
    const now = shown.current
    if (now === null) return
    if (!isPlaying && now.stage.index === now.stages.length - 1) now.go(0)
    setIsPlaying(!isPlaying)
  }, [isPlaying])
  useEffect(() => {
    if (!isPlaying) return
    const isStill = matchMedia('(prefers-reduced-motion: reduce)').matches
    let frame = 0
    let sinceMs = performance.now()
    let ofIndex = shown.current?.stage.index ?? -1
    let fromM = shown.current?.onWayM ?? null
    const tick = (nowMs: number): void => {
      frame = requestAnimationFrame(tick)
      const now = shown.current
      if (now === null) return
      const { stage } = now
      if (stage.index !== ofIndex) [sinceMs, ofIndex, fromM] = [nowMs, stage.index, null]
      const isPull = stage.phase === 'pull' && stage.noseM !== null && !isStill
      const share = (nowMs - sinceMs) / (isPull ? PULL_MS : STANDS_MS)
      if (share >= 1) {
        const count = stagesOf(app.site.getState().site).length
        if (stage.index >= count - 1) return setIsPlaying(false)
        const next = now.stages[stage.index + 1]!
        now.go(next.index)
        // A pull begins where the stage before left the nose, not at its end.
        if (!isStill && next.phase === 'pull' && next.noseM !== null) now.goNose(next.noseM.from + 0.001)
        ;[sinceMs, ofIndex, fromM] = [nowMs, next.index, null]
        return
      }
      if (isPull) {
        fromM ??= stage.noseM!.from
        now.goNose(Math.max(stage.noseM!.from + 0.001, fromM + (stage.noseM!.to - fromM) * share), false)
      }
    }
    frame = requestAnimationFrame(tick)
    return () => cancelAnimationFrame(frame)
  }, [app, isPlaying])
  return useMemo(() => ({ isPlaying, toggle, stop }), [isPlaying, toggle, stop])
}
