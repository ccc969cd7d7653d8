import { createStore } from 'zustand/vanilla'
import type { CheckRun } from '../../checks/finding.ts'
import { profileAt } from '../../derive/profile.ts'
import { deriveSite } from '../../derive/site.ts'
import type { SectionProfile, SiteModel } from '../../derive/types.ts'
import { isPlan, thePlan } from '../../derive/whatIf.ts'
import type { App, SiteState } from '../../state/app.ts'
import type { ResultsState } from '../../state/resultsStore.ts'

/** What the checks may still take before the page says 'not settled'. */
const SETTLE_MS = 4000

const settled = (app: App): Promise<boolean> => {
  const isNow = (): boolean => app.results.getState().status === 'settled' && app.results.getState().stamp === app.site.getState().stamp
  if (isNow()) return Promise.resolve(true)
  return new Promise((resolve) => {
    const timer = setTimeout(() => done(false), SETTLE_MS)
    const stop = app.results.subscribe(() => { if (isNow()) done(true) })
    const done = (is: boolean): void => {
      clearTimeout(timer)
      stop()
      resolve(is)
    }
  })
}

/** The plan with its findings; `run` null and `isSettled` false where the checks did not come in time. */
export interface CheckedPlan {
  site: SiteModel
  profile: SectionProfile
  run: CheckRun | null
  isSettled: boolean
}

/** What leaves the app: the plan as checked, whatever case is on the screen. */
export const planOf = async (app: App): Promise<CheckedPlan> => {
  const { phase, joint, shownCase } = app.view.getState()
  if (isPlan(shownCase)) {
    const isSettled = await settled(app)
    const { site, profile } = app.site.getState()
    return { site, profile, run: app.results.getState().run, isSettled }
  }
  const site = deriveSite(app.documents.getState().document)
  const run = await app.ask({ name: 'findings', args: null }, thePlan)
  return { site, profile: profileAt(site, { phase, joint }), run, isSettled: run !== null }
}

/** The app as if the plan alone were on the screen, for painters that read its stores. Read only. */
export const appOfPlan = (app: App, { site, profile, run }: CheckedPlan): App => ({
  ...app,
  site: createStore<SiteState>()(() => ({ stamp: 'plan', site, profile })),
  results: createStore<ResultsState>()(() => ({ stamp: 'plan', run, status: 'settled', failure: null })),
})
