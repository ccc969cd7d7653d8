import { useEffect } from 'react'
import { jobOf, layoutOf } from '../../scene/document.ts'
import { themes, type ThemeName } from '../../drawing/theme.ts'
import { uiText } from '../../messages/ui/text.ts'
import type { App } from '../../state/app.ts'
import type { ViewState } from '../../state/viewStore.ts'
import { useDocuments, useResults, useUi, useView, useWords } from '../context.tsx'
import { worstLevel } from '../findings/order.ts'
import { levelKey } from '../findings/words.ts'
import { cssVariables } from '../theme/cssVariables.ts'
import { formOf, isTapeVertical } from './arrangement.ts'

const isEditable = (element: Element | null): boolean =>
  element instanceof HTMLInputElement || element instanceof HTMLTextAreaElement || element instanceof HTMLSelectElement || (element instanceof HTMLElement && element.isContentEditable)

/** Follows the window: arrangement and lie of the tape. A keyboard that slides up changes the height, not the arrangement. */
export const useArrangement = (): void => {
  const { app } = useUi()
  useEffect(() => {
    let [widthPx, heightPx] = [0, 0]
    const read = (): void => {
      const { clientWidth, clientHeight } = document.documentElement
      if (clientWidth === widthPx && isEditable(document.activeElement)) return
      ;[widthPx, heightPx] = [clientWidth, clientHeight]
      arrange(app, widthPx, heightPx)
    }
    read()
    window.addEventListener('resize', read)
    const unsubscribe = app.view.subscribe((state, before) => { if (state.leaf !== before.leaf) arrange(app, widthPx, heightPx) })
    return () => {
      window.removeEventListener('resize', read)
      unsubscribe()
    }
  }, [app])
}

const arrange = (app: App, widthPx: number, heightPx: number): void => {
  const view = app.view.getState()
  const form = formOf(widthPx, heightPx)
  const tapeVertical = isTapeVertical(form, view.leaf, widthPx, heightPx)
  if (form !== view.form || tapeVertical !== view.tapeVertical) app.view.setState({ form, tapeVertical })
}

/** Height the on-screen keyboard covers where the browser does not shrink the page for it; docks and dialogs stand on it. */
export const useKeyboardHeight = (): void => {
  useEffect(() => {
    const viewport = window.visualViewport
    if (viewport === null) return
    const read = (): void => {
      const coveredPx = Math.max(0, document.documentElement.clientHeight - viewport.height - viewport.offsetTop)
      document.documentElement.style.setProperty('--keyboard', `${viewport.scale > 1.01 ? 0 : Math.round(coveredPx)}px`)
    }
    read()
    viewport.addEventListener('resize', read)
    return () => viewport.removeEventListener('resize', read)
  }, [])
  useEffect(() => {
    const bringUp = (event: FocusEvent): void => {
      const { target } = event
      if (target instanceof HTMLElement && isEditable(target)) setTimeout(() => target.scrollIntoView({ block: 'nearest' }), 250)
    }
    document.addEventListener('focusin', bringUp)
    return () => document.removeEventListener('focusin', bringUp)
  }, [])
}

export const resolvedTheme = (theme: ViewState['theme'], prefersDark: boolean): ThemeName => (theme === 'auto' ? (prefersDark ? 'night' : 'day') : theme)

/** Colours of the theme as custom properties on the root, from the drawing's own table. */
export const useTheme = (): void => {
  const theme = useView((view) => view.theme)
  useEffect(() => {
    const dark = matchMedia('(prefers-color-scheme: dark)')
    const apply = (): void => {
      const name = resolvedTheme(theme, dark.matches)
      const root = document.documentElement
      root.dataset['theme'] = name
      root.style.setProperty('color-scheme', name === 'night' ? 'dark' : 'light')
      for (const [property, value] of Object.entries(cssVariables(themes[name]))) root.style.setProperty(property, value)
      document.querySelector('meta[name="theme-color"]')?.setAttribute('content', themes[name].inks.paper)
    }
    apply()
    dark.addEventListener('change', apply)
    return () => dark.removeEventListener('change', apply)
  }, [theme])
}

/** Language of the page, and a tab title that says the worst level. */
export const usePageTitle = (): void => {
  const { options } = useWords()
  const screen = useView((view) => view.screen)
  const title = useDocuments((state) => layoutOf(state.document).title)
  const pipe = useDocuments((state) => jobOf(state.document).pipe)
  // Words and numbers, not the run itself: a new one with the same verdict draws nothing anew.
  const worst = useResults(({ run }) => worstLevel(run?.findings ?? []))
  const count = useResults(({ run }) => (run === null || worst === null ? null : run.counts[worst]))
  useEffect(() => {
    document.documentElement.lang = options.language
    const name = title === '' ? uiText('untitled', options) : title
    const mark = worst === null || count === null ? '' : `${uiText(levelKey(worst), options)} ${count} · `
    document.title = screen === 'start' ? 'Stringyard' : `${mark}${name} · Stringyard`
  }, [options, screen, title, pipe, worst, count])
}

/** Keys that act on the whole sheet: undo and redo, and the keyboard map where the drawing has the focus. */
export const useSheetKeys = (): void => {
  const { app } = useUi()
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent): void => {
      if (event.defaultPrevented || isEditable(event.target as Element | null) || app.view.getState().screen !== 'yard' || document.querySelector('dialog[open]') !== null) return
      const key = event.key.toLowerCase()
      const isCommand = event.ctrlKey || event.metaKey
      if (isCommand && key === 'z') {
        event.preventDefault()
        if (event.shiftKey) app.documents.getState().redo()
        else app.documents.getState().undo()
      } else if (isCommand && key === 'y') {
        event.preventDefault()
        app.documents.getState().redo()
      } else if (event.key === '?' && event.target instanceof Element && event.target.closest('.band') !== null) {
        event.preventDefault()
        app.view.setState({ panel: 'keys' })
      }
    }
    document.addEventListener('keydown', onKeyDown)
    return () => document.removeEventListener('keydown', onKeyDown)
  }, [app])
}
