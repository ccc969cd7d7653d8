import { useCallback, useEffect, useMemo, useRef, useState } from 'react'
import { useStore } from 'zustand'
import { levelsByStage, type StageFindings } from '../../checks/stageLevels.ts'
import { stagesOf } from '../../derive/stages/stagesOf.ts'
import type { JobStage, StageResult } from '../../derive/stages/types.ts'
import { intoSight, shownIndex, toNose, toStage } from '../../state/runThroughView.ts'
import type { App } from '../../state/app.ts'
import { createRunThroughStore, type RunThroughState } from '../../state/runThroughStore.ts'
import { useLaggingRun, useSite, useUi, useView } from '../context.tsx'
import type { RunThroughDesk } from '../../state/runThroughDesk.ts'

/** What the parts of the run-through share. */
export interface Run {
  stages: readonly JobStage[]
  /** The stage shown. */
  stage: JobStage
  /** Its result; undefined until it has come. */
  result: StageResult | undefined
  results: RunThroughState
  /** What has come belongs to an older document. */
  isOld: boolean
  byStage: ReadonlyMap<string, StageFindings>
  /** Where the nose of what is shown is; null before there is pipe. */
  noseM: number | null
  /** The same while it is on its way in a pull, else null. */
  onWayM: number | null
  go: (index: number) => void
  /** The nose to a place of the run. `isHeld`: a hand drags it. */
  goNose: (noseM: number, isHeld?: boolean) => void
  stop: () => void
  goOn: () => void
}

/** Nothing has come yet. */
const none = createRunThroughStore()

/** Shows a stage at its end, its nose in sight. */
export const showStage = (app: App, stage: JobStage): void => {
  const patch = toStage(app.site.getState().site, stage)
  const view = app.view.getState()
  app.view.setState({ ...patch, ...(stage.noseM === null ? {} : intoSight(view, stage.noseM.to)) })
}

/** Stages of what is shown, their results as they come, findings by stage, and how to go to another. */
export const useRun = (): Run | null => {
  const { app, services } = useUi()
  const site = useSite((state) => state.site)
  const stamp = useSite((state) => state.stamp)
  const tipM = useSite((state) => state.profile.tipM)
  const phase = useView((view) => view.phase)
  const joint = useView((view) => view.joint)
  const onWayM = useView((view) => (view.phase === 'pull' ? view.noseM : null))
  const [desk, setDesk] = useState<RunThroughDesk | null>(null)
  const stopLooking = useRef<(() => void) | null>(null)
  const results = useStore(desk?.results ?? none)
  const { run } = useLaggingRun()
  const stages = stagesOf(site)
  const index = shownIndex(stages, { phase, joint })
  const firstIndex = useRef(index)

  useEffect(() => {
    let isShown = true
    void services.runThrough().then((made) => {
      if (!isShown) return
      setDesk(made)
      stopLooking.current = made.look(firstIndex.current)
    })
    return () => {
      isShown = false
      stopLooking.current?.()
      stopLooking.current = null
    }
  }, [services])

  const byStage = useMemo(() => levelsByStage(stages, (run?.findings ?? []).filter(({ isUnknown, level }) => !isUnknown && level !== 'met')), [stages, run])
  const go = useCallback((to: number): void => {
    const all = stagesOf(app.site.getState().site)
    const stage = all[Math.min(Math.max(0, to), all.length - 1)]
    if (stage !== undefined) showStage(app, stage)
  }, [app])
  const goNose = useCallback((noseM: number, isHeld = false): void => {
    const patch = toNose(stagesOf(app.site.getState().site), noseM)
    if (patch !== null) app.view.setState({ ...patch, ...intoSight(app.view.getState(), patch.noseM ?? noseM, isHeld) })
  }, [app])
  const stop = useCallback((): void => {
    stopLooking.current?.()
    stopLooking.current = null
  }, [])
  const goOn = useCallback((): void => {
    if (desk !== null && stopLooking.current === null) stopLooking.current = desk.look(shownIndex(stagesOf(app.site.getState().site), app.view.getState()))
  }, [app, desk])

  const stage = stages[index]
  if (stage === undefined) return null
  return {
    stages, stage, results, byStage, onWayM, go, goNose, stop, goOn,
    result: results.stages[stage.index]?.stage.id === stage.id ? results.stages[stage.index] : undefined,
    isOld: results.stamp !== null && results.stamp !== stamp,
    noseM: stage.noseM === null ? null : (onWayM ?? (stage.phase === 'pull' ? stage.noseM.to : (tipM ?? stage.noseM.to))),
  }
}
