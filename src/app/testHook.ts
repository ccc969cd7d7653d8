import { alongToPx, planToPx } from '../state/frames.ts'
import type { Finding } from '../checks/finding.ts'
import type { YardDocument } from '../scene/document.ts'
import type { ViewState } from '../state/viewStore.ts'
import type { App } from '../state/app.ts'

/**
 * Read-only view of the app for the browser tests: where things are on the page and what is settled.
 * It changes nothing; tests act through mouse, touch and keyboard as a person does.
 */
export interface TestHook {
  /** Page position of a site point on the plan. */
  worldToPage: (xM: number, yM: number) => { x: number; y: number }
  /** Page position of a running distance on the tape. */
  runningToPage: (runningM: number) => { x: number; y: number }
  /** Page position of an item on the plan by its label (E2, G4) or id. */
  itemToPage: (labelOrId: string) => { x: number; y: number } | null
  labels: () => readonly string[]
  document: () => YardDocument
  findings: () => readonly Finding[]
  view: () => ViewState
  stamp: () => string
  isSettled: () => boolean
}

/** The bands come in a part of their own: on the yard they are up and the view knows their size. */
const areBandsUp = (app: App): boolean => {
  const { screen, bandSizePx } = app.view.getState()
  if (screen !== 'yard') return true
  const plan = document.querySelector('[data-band="plan"]')
  if (plan === null) return document.querySelector('[data-band]') !== null
  return Math.abs(plan.getBoundingClientRect().width - bandSizePx.plan.widthPx) < 1
}

export const makeTestHook = (app: App): TestHook => {
  const origin = (name: string): { left: number; top: number } => document.querySelector(`[data-band="${name}"]`)?.getBoundingClientRect() ?? { left: 0, top: 0 }
  const worldToPage: TestHook['worldToPage'] = (xM, yM) => {
    const { left, top } = origin('plan')
    const { xPx, yPx } = planToPx(app.view.getState(), app.site.getState().site.setUp, xM, yM)
    return { x: left + xPx, y: top + yPx }
  }
  return {
    worldToPage,
    runningToPage: (runningM) => {
      const box = document.querySelector('[data-band="tape"]')?.getBoundingClientRect()
      const px = alongToPx(app.view.getState(), runningM)
      if (box === undefined) return { x: 0, y: 0 }
      return app.view.getState().tapeVertical ? { x: box.left + box.width / 2, y: box.top + px } : { x: box.left + px, y: box.top + box.height / 2 }
    },
    itemToPage: (labelOrId) => {
      for (const item of app.site.getState().site.placed.values()) if (item.label === labelOrId || item.id === labelOrId) return worldToPage(item.xM, item.yM)
      return null
    },
    labels: () => [...app.site.getState().site.placed.values()].map(({ label }) => label),
    document: () => app.documents.getState().document,
    findings: () => app.results.getState().run?.findings ?? [],
    view: () => app.view.getState(),
    stamp: () => app.site.getState().stamp,
    isSettled: () => app.results.getState().status === 'settled' && app.results.getState().stamp === app.site.getState().stamp && areBandsUp(app),
  }
}

