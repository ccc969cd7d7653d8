import { useEffect, useState } from 'react'
import type { CheckRun, Finding } from '../../checks/finding.ts'
import { thePlan } from '../../derive/whatIf.ts'
import { recordsOf } from '../../scene/document.ts'
import { useResults, useSite, useUi, useView } from '../context.tsx'

/** The effort C at the side of the jaws that feels more, with its level. */
export interface JawState {
  effortRatio: number
  side: 'infeed' | 'exit'
  level: Finding['level']
}

/** The worse side of the jaws in a run of the checks; null where it is not known. */
export function jawsOf(run: CheckRun | null): JawState | null {
  const sides = (run?.findings ?? []).flatMap(({ checkId, key, measured, level }): JawState[] =>
    checkId === 'jaw-effort' && measured?.kind === 'ratio' && measured.value !== null ? [{ effortRatio: measured.value, side: key.endsWith('infeed') ? 'infeed' : 'exit', level }] : [])
  return sides.reduce<JawState | null>((worst, one) => (worst === null || one.effortRatio > worst.effortRatio ? one : worst), null)
}

export interface JawsAsSet {
  /** True while the answer belongs to older heights. */
  isWorking: boolean
  planned: JawState | null
  /** Null while nothing has been measured: the plan then holds. */
  asSet: JawState | null
  isMeasured: boolean
}

/** C of the plan and C with the heights the crew measured, asked of the worker whenever a height or the plan changes. */
export const useJaws = (): JawsAsSet => {
  const { app } = useUi()
  const stamp = useSite((state) => state.stamp)
  const isMeasured = useSite(({ site }) => recordsOf(site.document, 'asSet').some(({ saddleM, farSaddleM }) => saddleM !== null || farSaddleM !== null))
  const stringId = useView((view) => view.shownCase.stringId)
  const isSettled = useResults((state) => state.status === 'settled' && state.stamp === stamp)
  const [answer, setAnswer] = useState<{ stamp: string; planned: CheckRun | null; asSet: CheckRun | null } | null>(null)
  useEffect(() => {
    if (!isSettled) return
    let isWanted = true
    const of = (variant: 'planned' | 'asSet'): Promise<CheckRun | null> => app.ask({ name: 'findings', args: null }, { ...thePlan, variant, ...(stringId === undefined ? {} : { stringId }) })
    void Promise.all([of('planned'), isMeasured ? of('asSet') : Promise.resolve(null)]).then(([planned, asSet]) => {
      if (isWanted && planned !== null) setAnswer({ stamp, planned, asSet })
    })
    return () => { isWanted = false }
  }, [app, stamp, isSettled, isMeasured, stringId])
  return { isWorking: answer?.stamp !== stamp, planned: jawsOf(answer?.planned ?? null), asSet: jawsOf(answer?.asSet ?? null), isMeasured }
}
