import type { ReactNode } from 'react'
import { t } from '../../messages/ui/text.ts'
import type { Language } from '../../messages/localized.ts'

/** What the app cannot do without, by the name a person could look up, and whether this browser has it. */
const needs: readonly (readonly [name: string, isThere: () => boolean])[] = [
  ['dialog', () => typeof HTMLDialogElement === 'function' && 'showModal' in HTMLDialogElement.prototype],
  ['ResizeObserver', () => typeof ResizeObserver === 'function'],
  ['structuredClone', () => typeof structuredClone === 'function'],
  ['Worker', () => typeof Worker === 'function'],
  ['CSS color-mix', () => typeof CSS === 'object' && CSS.supports('color', 'color-mix(in srgb, red 50%, blue)')],
]

export const missingNeeds = (): readonly string[] => needs.filter(([, isThere]) => !isThere()).map(([name]) => name)

/** Plain page in place of the app, where the browser is too old for it. */
export const OldBrowserPage = ({ language, missing }: { language: Language; missing: readonly string[] }): ReactNode => (
  <main className="page-alone"><div><h1>{t(language, 'oldBrowserTitle')}</h1><p>{t(language, 'oldBrowser', { missing: missing.join(', ') })}</p></div></main>
)

/** Plain page before the app, where nothing can be kept; one may go on knowing it. */
export const BlockedStoragePage = ({ language, onGoOn }: { language: Language; onGoOn: () => void }): ReactNode => (
  <main className="page-alone"><div><h1>{t(language, 'blockedTitle')}</h1><p>{t(language, 'blocked')}</p><p><button type="button" className="primary" onClick={onGoOn}>{t(language, 'goOn')}</button></p></div></main>
)
