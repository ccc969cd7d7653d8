import { createStore } from 'zustand/vanilla'
import type { CheckRun } from '../../checks/finding.ts'
import { profileAt } from '../../derive/profile.ts'
import { deriveSite } from '../../derive/site.ts'
import type { SectionProfile, SiteModel } from '../../derive/types.ts'
import { isPlan, thePlan } from '../../derive/whatIf.ts'
import { zonesAt } from '../../derive/zones.ts'
import { uiText } from '../../messages/ui/text.ts'
import { drawImagePage } from '../../sheet/imagePage.ts'
import { pagePx } from '../../sheet/page.ts'
import type { App, SiteState } from '../../state/app.ts'
import type { ResultsState } from '../../state/resultsStore.ts'
import { pagePainters } from './painters.ts'

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

interface Shown {
  site: SiteModel
  profile: SectionProfile
  run: CheckRun | null
  isSettled: boolean
}

/** What goes on the page: the plan as checked, whatever case is on the screen. */
const planOf = async (app: App): Promise<Shown> => {
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

/** The page as PNG. Null where the device cannot make a canvas of that size: it then answers without an error. */
export const imageBlob = async (app: App, scale: 1 | 2 | 4): Promise<Blob | null> => {
  const { site, profile, run, isSettled } = await planOf(app)
  await document.fonts.ready
  const canvas = document.createElement('canvas')
  canvas.width = pagePx.widthPx * scale
  canvas.height = pagePx.heightPx * scale
  const context = canvas.getContext('2d')
  if (context === null) return null
  context.scale(scale, scale)
  // The painters of the screen read stores; these hold what goes on the page and nothing else.
  const paper: App = { ...app, site: createStore<SiteState>()(() => ({ stamp: 'page', site, profile })), results: createStore<ResultsState>()(() => ({ stamp: 'page', run, status: 'settled', failure: null })) }
  const { language, phase, joint } = app.view.getState()
  const { layout, sticks } = site
  const when = new Intl.DateTimeFormat(language === 'es' ? 'es' : 'en-US', { dateStyle: 'medium', timeStyle: 'short' }).format(new Date())
  const joints = Math.max(1, sticks.stickCount - 1)
  const stage = uiText(`phase_${phase}`, { language, system: layout.displayUnits })
  const ofJoints = language === 'es' ? `junta ${joint} de ${joints}` : `joint ${joint} of ${joints}`
  drawImagePage(context, {
    site, profile, run, isSettled, zones: zonesAt(site, { phase, joint }),
    stageWords: phase === 'load' || phase === 'fuse' || phase === 'pull' ? `${stage}, ${ofJoints}` : stage,
    language, system: layout.displayUnits, when, ...pagePainters(paper, scale),
  })
  return new Promise((resolve) => canvas.toBlob((blob) => resolve(blob !== null && blob.size > 2000 ? blob : null), 'image/png'))
}
