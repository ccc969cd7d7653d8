import { useEffect, useState } from 'react'
import { useStore } from 'zustand'
import Konva from 'konva/lib/Core'
import { themes, type Theme } from '../drawing/theme.ts'
import type { App } from '../state/app.ts'

// More than two device pixels a pixel cost time and cannot be seen.
if (typeof window !== 'undefined') Konva.pixelRatio = Math.min(2, window.devicePixelRatio || 1)

const darkQuery = '(prefers-color-scheme: dark)'

/** Theme on screen: the one chosen, else day or night as the device says. */
export const useTheme = (app: App): Theme => {
  const chosen = useStore(app.view, (view) => view.theme)
  const [isDark, setDark] = useState(() => matchMedia(darkQuery).matches)
  useEffect(() => {
    const media = matchMedia(darkQuery)
    const follow = (): void => setDark(media.matches)
    media.addEventListener('change', follow)
    return () => media.removeEventListener('change', follow)
  }, [])
  return themes[chosen === 'auto' ? (isDark ? 'night' : 'day') : chosen]
}

/** Goes up once the face has loaded, so that lettering drawn before is drawn again. */
export const useFaceLoads = (): number => {
  const [loads, setLoads] = useState(0)
  useEffect(() => {
    let isGone = false
    void Promise.all(['400', '500', '600'].map((weight) => document.fonts.load(`${weight} 14px Stringyard`))).then(() => {
      if (!isGone) setLoads((count) => count + 1)
    }, () => undefined)
    return () => {
      isGone = true
    }
  }, [])
  return loads
}

/** True where fingers work the screen: lettering and flags are larger. */
export const useIsTouch = (app: App): boolean => useStore(app.view, ({ form }) => form !== 'desktop')
