import { lazy, Suspense, useState, type ReactNode } from 'react'
import { useStore } from 'zustand'
import type { App } from '../../state/app.ts'
import { Notice } from '../common/Bars.tsx'
import { Region } from '../common/Region.tsx'
import { UiProvider, useUi, useView, useWords } from '../context.tsx'
import type { Services } from '../services.ts'
import { StartPage } from '../start/StartPage.tsx'
import { BlockedStoragePage, missingNeeds, OldBrowserPage } from '../pages/PlainPages.tsx'
import { Panels } from './Panels.tsx'
import { useFirstFinding } from './useFirstFinding.ts'
import { useArrangement, useKeyboardHeight, usePageTitle, useSheetKeys, useTheme } from './useWindow.ts'
import type { Bands } from './Yard.tsx'
import '../styles/ui.css'

/** Asked for at once, beside the start page and not before it. */
const yard = import('./Yard.tsx')
const Yard = lazy(() => yard)

export interface ShellProps extends Bands {
  app: App
  services: Services
}

/** The whole screen: start page or yard, in the arrangement the window has room for. */
export const Shell = ({ app, services, plan, tape, section }: ShellProps): ReactNode => (
  <UiProvider app={app} services={services}>
    <Screen plan={plan} tape={tape} section={section} />
  </UiProvider>
)

/** True once the person has chosen to go on where nothing can be kept. */
const useBlocked = (): [boolean, () => void] => {
  const { services } = useUi()
  const isBlocked = useStore(services.storage, (state) => state.saved === 'blocked')
  const [goesOn, setGoesOn] = useState(false)
  return [isBlocked && !goesOn, () => setGoesOn(true)]
}

const missing = missingNeeds()

const Screen = (bands: Bands): ReactNode => {
  useArrangement()
  useKeyboardHeight()
  useTheme()
  usePageTitle()
  useSheetKeys()
  const { say } = useWords()
  const screen = useView((view) => view.screen)
  const language = useView((view) => view.language)
  const [isBlocked, goOn] = useBlocked()
  useFirstFinding()
  if (missing.length > 0) return <OldBrowserPage language={language} missing={missing} />
  if (isBlocked) return <BlockedStoragePage language={language} onGoOn={goOn} />
  return (
    <>
      {screen === 'start' ? <Region name={say('startPage')}><StartPage /><Notice /></Region> : <Suspense><Yard {...bands} /></Suspense>}
      <Panels />
    </>
  )
}
