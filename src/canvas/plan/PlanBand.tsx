import { memo, useCallback, useEffect, useLayoutEffect, useMemo, useRef, useSyncExternalStore, type ReactNode } from 'react'
import type Konva from 'konva/lib/Core'
import { Layer, Shape, Stage } from 'react-konva/es/ReactKonvaCore'
import { useStore } from 'zustand'
import type { App } from '../../state/app.ts'
import { formatRunning } from '../../units/format.ts'
import { textIn } from '../../messages/localized.ts'
import { kindOf } from '../../scene/kinds/index.ts'
import { FoldStrip } from '../FoldStrip.tsx'
import { PlanController } from './planController.ts'
import { layerNames, PlanPainter, type LayerName } from './planPainter.ts'
import { installProbe, probeFrame, probeNowMs } from './frameProbe.ts'
import { lengthSystem } from './toolContext.ts'

export interface PlanBandProps {
  app: App
  widthPx: number
  heightPx: number
  /** Numbers of findings on the plan: only where the margin does not draw them with its leaders. */
  showsMarks?: boolean
}

/** A view that has not moved for this long rests, ms. */
const REST_MS = 140
/** A canvas larger than twice the screen's px buys nothing and costs tablets their memory. */
const MOST_RATIO = 2

const words = {
  name: { en: 'Plan of the yard', es: 'Plano del patio' },
  keys: { en: 'Press ? for the keys, full stop and comma to step from item to item.', es: 'Pulse ? para ver las teclas, punto y coma para pasar de un elemento a otro.' },
} as const

/** The plan: four layers under one surface that takes all pointers and keys. Drawn from the stores, outside React. */
export const PlanBand = memo(({ app, widthPx, heightPx, showsMarks = false }: PlanBandProps): ReactNode => {
  const element = useRef<HTMLDivElement>(null)
  const layers = useRef<Partial<Record<LayerName, Konva.Layer | null>>>({})
  const painter = useMemo(() => new PlanPainter(app), [app])
  const language = useSyncExternalStore(app.view.subscribe, () => app.view.getState().language)
  const frame = useRef<{ id: number; force: boolean; kind: 'drag' | 'view' | 'other' }>({ id: 0, force: true, kind: 'other' })

  const rest = useRef<ReturnType<typeof setTimeout> | undefined>(undefined)
  const drawn = useRef(false)

  const { schedule, drawNow } = useMemo(() => {
    const draw = (inHandler: boolean): void => {
      const { force, kind } = frame.current
      if (frame.current.id !== 0) cancelAnimationFrame(frame.current.id)
      frame.current = { id: 0, force: false, kind: 'other' }
      painter.isMoving = kind === 'view'
      const startMs = probeNowMs()
      const dirty = painter.prepare(force)
      for (const name of dirty) layers.current[name]?.drawScene()
      probeFrame(kind, dirty.join('+'), layers.current.active?.getNativeCanvasElement().getContext('2d') ?? null, inHandler, startMs)
      if (!painter.wantsRest()) return
      clearTimeout(rest.current)
      rest.current = setTimeout(() => again('other', true), REST_MS)
    }
    const again = (kind: 'drag' | 'view' | 'other', force = false): void => {
      const now = frame.current
      frame.current = { id: now.id === 0 ? requestAnimationFrame(() => draw(false)) : now.id, force: now.force || force, kind: kind === 'other' ? now.kind : kind }
    }
    /** Draws at once what was put off to the next frame, but only once a frame: browsers may send several moves for one. */
    const now = (): void => {
      if (drawn.current || frame.current.id === 0) return
      drawn.current = true
      requestAnimationFrame(() => {
        drawn.current = false
      })
      draw(true)
    }
    return { schedule: again, drawNow: now }
  }, [painter])

  useLayoutEffect(() => {
    const { plan } = app.view.getState().bandSizePx
    if (plan.widthPx !== widthPx || plan.heightPx !== heightPx) app.view.setState({ bandSizePx: { ...app.view.getState().bandSizePx, plan: { widthPx, heightPx } } })
    painter.showsMarks = showsMarks
    schedule('other', true)
  }, [app, painter, schedule, widthPx, heightPx, showsMarks])

  useEffect(() => {
    const host = element.current
    if (host === null) return undefined
    installProbe()
    const controller = new PlanController(app, {
      schedule,
      drawNow,
      spots: () => painter.tapSpots(),
      showsMarks: () => painter.showsMarks,
      overlayChanged: (overlay) => {
        painter.overlay = overlay
      },
    })
    const detach = controller.attach(host)
    const dark = matchMedia('(prefers-color-scheme: dark)')
    const coarse = matchMedia('(pointer: coarse)')
    const look = (): void => {
      painter.prefersDark = dark.matches
      painter.isTouch = coarse.matches || app.view.getState().form === 'phone' || app.view.getState().form === 'tabletPortrait' || app.view.getState().form === 'tabletLandscape'
      schedule('other', true)
    }
    look()
    dark.addEventListener('change', look)
    coarse.addEventListener('change', look)
    const stopForm = app.view.subscribe((view, before) => {
      if (view.form !== before.form) look()
    })
    // Drawn on the canvas: an outline of the element lies under its canvases.
    const focus = (): void => {
      painter.hasFocusRing = host.matches(':focus-visible')
      schedule('other')
    }
    host.addEventListener('focus', focus)
    host.addEventListener('blur', focus)
    const fonts = (): void => {
      painter.fontsChanged()
      schedule('other', true)
    }
    document.fonts?.addEventListener('loadingdone', fonts)
    return () => {
      detach()
      dark.removeEventListener('change', look)
      coarse.removeEventListener('change', look)
      document.fonts?.removeEventListener('loadingdone', fonts)
      stopForm()
      host.removeEventListener('focus', focus)
      host.removeEventListener('blur', focus)
      cancelAnimationFrame(frame.current.id)
      clearTimeout(rest.current)
      frame.current = { id: 0, force: true, kind: 'other' }
    }
  }, [app, painter, schedule, drawNow])

  // The same functions at every render: a shape given another one is drawn again by the canvas library.
  const { paints, hold } = useMemo(() => {
    const paint = (name: LayerName) => (context: Konva.Context): void => {
      const native = context._context
      // What the loupe enlarges: all that is drawn so far, its own layer included.
      const canvases = layerNames.slice(0, layerNames.indexOf(name) + 1).flatMap((below) => layers.current[below]?.getNativeCanvasElement() ?? [])
      native.save()
      painter.paint(name, native, ratioOf(layers.current[name]), canvases)
      native.restore()
    }
    const keep = (name: LayerName) => (layer: Konva.Layer | null): void => {
      layers.current[name] = layer
      if (layer !== null) layer.getCanvas().setPixelRatio(Math.min(MOST_RATIO, devicePixelRatio))
    }
    const ofAll = <T,>(make: (name: LayerName) => T): Record<LayerName, T> => ({ ground: make('ground'), items: make('items'), notes: make('notes'), active: make('active') })
    return { paints: ofAll(paint), hold: ofAll(keep) }
  }, [painter])

  return (
    <div ref={element} className="plan-band" data-band="plan" role="application" aria-label={textIn(words.name, language)} aria-describedby="plan-keys" tabIndex={0} style={{ width: widthPx, height: heightPx, touchAction: 'none', position: 'relative', overflow: 'hidden', userSelect: 'none', outline: 'none' }}>
      <Stage width={widthPx} height={heightPx} listening={false} style={{ pointerEvents: 'none' }}>
        {layerNames.map((name) => (
          <Layer key={name} listening={false} ref={hold[name]}>
            <Shape listening={false} perfectDrawEnabled={false} sceneFunc={paints[name]} />
          </Layer>
        ))}
      </Stage>
      <PlanFold app={app} heightPx={heightPx} />
      <p id="plan-keys" hidden>{textIn(words.keys, language)}</p>
      <Spoken app={app} />
    </div>
  )
})
PlanBand.displayName = 'PlanBand'

const PlanFold = ({ app, heightPx }: { app: App; heightPx: number }): ReactNode => {
  const hasFold = useStore(app.view, (view) => view.fold !== null)
  return hasFold ? <OpenFold app={app} heightPx={heightPx} /> : null
}

const OpenFold = ({ app, heightPx }: { app: App; heightPx: number }): ReactNode => {
  const view = useStore(app.view)
  return <FoldStrip app={app} frame={view} heightPx={heightPx} band="plan" />
}

const ratioOf = (layer: Konva.Layer | null | undefined): number => layer?.getCanvas().getPixelRatio() ?? 1

/** What is chosen and where it stands, in words. */
const spokenText = (app: App): string => {
  const { selection, language } = app.view.getState()
  const { site } = app.site.getState()
  const [first] = selection
  const item = first === undefined ? undefined : site.placed.get(first)
  if (item === undefined) return ''
  if (selection.length > 1) return language === 'es' ? `${selection.length} elementos elegidos` : `${selection.length} items chosen`
  const kind = textIn(kindOf(item.kind)?.name ?? { en: item.kind, es: item.kind }, language)
  const place = item.runningM === null ? '' : `, ${formatRunning(item.runningM, { system: lengthSystem(site), language })}`
  return `${item.label === '' ? kind : `${item.label}, ${kind}`}${place}`
}

/** Says it for who cannot see the canvas: at each settled step, not at every frame of a drag. */
const Spoken = ({ app }: { app: App }): ReactNode => {
  const last = useRef('')
  const subscribe = useCallback((changed: () => void) => {
    const stops = [app.view.subscribe(changed), app.site.subscribe(changed)]
    return () => stops.forEach((stop) => stop())
  }, [app])
  const text = useSyncExternalStore(subscribe, () => {
    if (app.documents.getState().preview === null) last.current = spokenText(app)
    return last.current
  })
  return <p aria-live="polite" style={{ position: 'absolute', width: 1, height: 1, margin: -1, overflow: 'hidden', clipPath: 'inset(50%)' }}>{text}</p>
}
