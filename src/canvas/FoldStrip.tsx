import { useMemo, type CSSProperties, type PointerEvent, type ReactNode } from 'react'
import { useStore } from 'zustand'
import { guessedWidthPx } from '../drawing/fractionText.ts'
import { foldWords } from '../state/fold.ts'
import { foldOf, foldPx, type FrameView } from '../state/frames.ts'
import type { App } from '../state/app.ts'
import { runAction } from './actions.ts'
import { useIsTouch, useTheme } from './theme.ts'

export interface FoldStripProps {
  app: App
  /** View of the band the strip stands in. */
  frame: FrameView
  heightPx: number
  /** The plan names what is folded away, the side view how the ground goes on; the tape is too low for words. */
  band: 'plan' | 'tape' | 'section'
}

/** Shade that falls towards the fold, and light on the sheet beyond it, px. */
const SHADE_PX = 26
const LIGHT_PX = 20
const TOUCH_PX = 48
/** Room at both ends of the words. */
const WORD_ROOM_PX = 36
const openWords = { en: 'open the fold', es: 'abrir el pliegue' } as const

/** Keeps a press on the fold from reaching the gestures of the band beneath. */
const own = (event: PointerEvent): void => event.stopPropagation()
const ownNative = (element: HTMLElement | null): (() => void) | undefined => {
  if (element === null) return undefined
  const stop = (event: Event): void => event.stopPropagation()
  const stopKey = (event: KeyboardEvent): void => {
    if (event.key === 'Enter' || event.key === ' ') event.stopPropagation()
  }
  // The plan listens on its own element, beneath React.
  element.addEventListener('pointerdown', stop)
  element.addEventListener('pointerup', stop)
  element.addEventListener('keydown', stopKey)
  return () => {
    element.removeEventListener('pointerdown', stop)
    element.removeEventListener('pointerup', stop)
    element.removeEventListener('keydown', stopKey)
  }
}

/** The fold of the sheet in one band: two creases, a broken line, what it hides in words. A tap opens it. */
export const FoldStrip = ({ app, frame, heightPx, band }: FoldStripProps): ReactNode => {
  const { site } = useStore(app.site)
  const language = useStore(app.view, (view) => view.language)
  const theme = useTheme(app)
  const touch = useIsTouch(app)
  const fold = foldOf(frame)
  const words = useMemo(() => (fold === null || site.setUp === null ? null : foldWords(site, fold, { language })), [site, fold, language])
  const at = foldPx(frame)
  const { widthPx } = frame.bandSizePx.plan
  if (at === null || words === null || at.x1 < -LIGHT_PX || at.x0 > widthPx + SHADE_PX) return null
  const { inks, name } = theme
  const isNight = name === 'night'
  const [shade, light] = isNight ? ['rgba(0,0,0,.3)', 'rgba(159,178,189,.22)'] : ['rgba(58,45,16,.26)', 'rgba(255,255,255,.5)']
  const ground = isNight ? `linear-gradient(rgba(0,0,0,.2),rgba(0,0,0,.2)) ${inks.paper}` : inks.way
  const sizePx = touch ? 14 : 13
  const reachPx = touch ? (TOUCH_PX - (at.x1 - at.x0)) / 2 : 0
  // Where the plan is too low for all of it, what lies beside the line is named in the side view.
  const fits = guessedWidthPx(words.along, sizePx) < frame.bandSizePx.plan.heightPx - WORD_ROOM_PX
  const text = band === 'plan' ? (fits ? words.along : words.short) : band === 'section' ? [words.ground, ...(fits ? [] : [words.beside])].filter((part) => part !== '').join('; ') : ''
  const layer: CSSProperties = { position: 'absolute', top: 0, height: heightPx, pointerEvents: 'none' }
  return (
    <div data-fold={band} style={{ ...layer, left: 0, width: widthPx, overflow: 'hidden' }}>
      <div style={{ ...layer, left: at.x0 - SHADE_PX, width: SHADE_PX, background: `linear-gradient(to right, transparent, ${shade})` }} />
      <div style={{ ...layer, left: at.x1, width: LIGHT_PX, background: `linear-gradient(to right, ${light}, transparent)` }} />
      <svg width={widthPx} height={heightPx} style={{ ...layer, left: 0 }} aria-hidden>
        <g transform={`translate(${at.x0} 0)`}>
          <rect x={0} y={0} width={at.x1 - at.x0} height={heightPx} style={{ fill: isNight ? inks.paper : inks.way }} />
          {isNight ? <rect x={0} y={0} width={at.x1 - at.x0} height={heightPx} fill="#000000" fillOpacity={0.2} /> : null}
          <path d={`M0 0V${heightPx}M${at.x1 - at.x0} 0V${heightPx}`} stroke={inks.ink2} strokeWidth={1} />
          <path d={`M${(at.x1 - at.x0) / 2} 0V${heightPx}`} stroke={inks.buildingHatch} strokeWidth={1} strokeDasharray="7 5" />
        </g>
      </svg>
      {text === '' ? null : (
        <div style={{ ...layer, left: at.x0, width: at.x1 - at.x0, display: 'flex', alignItems: 'center', justifyContent: 'center' }}>
          <span style={{ writingMode: 'vertical-rl', textOrientation: 'sideways', transform: 'rotate(180deg)', maxHeight: heightPx - 24, overflow: 'hidden', textOverflow: 'ellipsis', padding: '6px 0', background: ground, color: band === 'plan' ? inks.ink : inks.ink2, fontSize: sizePx, lineHeight: 1.2, whiteSpace: 'nowrap' }}>{text}</span>
        </div>
      )}
      {band === 'plan' ? (
        <button
          type="button" ref={ownNative} aria-label={`${words.along}: ${openWords[language]}`} onClick={() => runAction(app, 'fold')}
          style={{ ...layer, left: at.x0 - reachPx, width: at.x1 - at.x0 + 2 * reachPx, minWidth: 0, padding: 0, border: 0, background: 'none', pointerEvents: 'auto', cursor: 'pointer' }}
        />
      ) : (
        <div onPointerDown={own} onClick={() => runAction(app, 'fold')} style={{ ...layer, left: at.x0 - reachPx, width: at.x1 - at.x0 + 2 * reachPx, pointerEvents: 'auto', cursor: 'pointer' }} />
      )}
    </div>
  )
}
