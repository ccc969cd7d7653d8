import { useEffect, useLayoutEffect, useMemo, useRef, type KeyboardEvent, type PointerEvent as ReactPointerEvent } from 'react'
import { useStore } from 'zustand'
import { createStore } from 'zustand/vanilla'
import { zoomedAbout, type FrameView } from '../../state/frames.ts'
import type { App } from '../../state/app.ts'
import { probeEntry, probeHandled } from '../plan/frameProbe.ts'
import { runAndSelect, say } from '../run.ts'
import { draggedKey, flagIdle, stepFlag, type FlagContext, type FlagEffect, type FlagEvent, type FlagState } from '../tools/flagDrag.ts'
import { patchOf, type PointerKind } from '../tools/types.ts'

export interface FlagGestureParts {
  app: App
  frame: FrameView
  context: Omit<FlagContext, 'frozen' | 'selection' | 'snapping'>
  /** Flag under a place of the band, where the page has no element for it. */
  hit?: (xPx: number, yPx: number) => string | null
  /** The tape stands upright: along is down the screen. */
  isUpright: boolean
  /** Told when a drag of a flag or saddle starts and ends. */
  onDrag?: (isDragging: boolean) => void
}

/** Scale changes by this share per px of a wheel. */
const WHEEL_PER_PX = 0.0016

const kindOfPointer = (type: string): PointerKind => (type === 'touch' ? 'touch' : type === 'pen' ? 'pen' : 'mouse')

/**
 * Pointer events of a band → the state machine of flags → stores. Moves are taken once a frame. Two fingers zoom about
 * their middle; the wheel zooms about the pointer, sideways it scrolls.
 */
export const useFlagGestures = (element: HTMLDivElement | null, parts: FlagGestureParts) => {
  const latest = useRef(parts)
  useLayoutEffect(() => {
    latest.current = parts
  })
  // A store, as what it changes are stores: all of a move is drawn in one go.
  const shown = useMemo(() => createStore<{ state: FlagState }>()(() => ({ state: flagIdle })), [])
  const state = useStore(shown, (now) => now.state)
  const machine = useRef<FlagState>(flagIdle)
  const waiting = useRef<Extract<FlagEvent, { type: 'move' }> | null>(null)
  const frameId = useRef(0)
  const fingers = useRef(new Map<number, { xPx: number; yPx: number }>())

  const send = (event: FlagEvent, modifiers: { adds: boolean } = { adds: false }): void => {
    const { app, context } = latest.current
    const view = app.view.getState()
    const full: FlagContext = { ...context, frozen: view.holdStill || !app.documents.getState().writable, selection: view.selection, snapping: view.snapping }
    const wasDragging = draggedKey(machine.current) !== null
    const { state: next, effects } = stepFlag(machine.current, event, full)
    machine.current = next
    for (const effect of effects) {
      if (!carryOut(effect, latest.current, modifiers)) machine.current = flagIdle
    }
    const isDragging = draggedKey(machine.current) !== null
    if (isDragging !== wasDragging) latest.current.onDrag?.(isDragging)
    shown.setState({ state: machine.current })
  }
  const flush = (): void => {
    const event = waiting.current
    waiting.current = null
    if (event !== null) send(event)
  }
  // The first move of a frame is taken at once, so that all bands draw it in that frame; later ones wait for the next.
  const takeMove = (): void => {
    if (frameId.current !== 0) return
    frameId.current = requestAnimationFrame(() => {
      frameId.current = 0
      if (waiting.current !== null) takeMove()
    })
    flush()
  }
  const cancel = (): void => {
    waiting.current = null
    fingers.current.clear()
    if (machine.current.name !== 'idle') send({ type: 'cancel' })
  }
  const cancelLatest = useRef(cancel)
  useLayoutEffect(() => {
    cancelLatest.current = cancel
  })
  const facts = (event: ReactPointerEvent): { pointerId: number; pointer: PointerKind; alongPx: number; acrossPx: number } => {
    const { xPx, yPx } = placeIn(element, event)
    const [alongPx, acrossPx] = latest.current.isUpright ? [yPx, xPx] : [xPx, yPx]
    return { pointerId: event.pointerId, pointer: kindOfPointer(event.pointerType), alongPx, acrossPx }
  }

  useEffect(() => {
    if (element === null) return
    const onWheel = (event: WheelEvent): void => {
      event.preventDefault()
      const { app, frame, isUpright } = latest.current
      const { xPx, yPx } = placeIn(element, event)
      if (!event.ctrlKey && (event.shiftKey || Math.abs(event.deltaX) > Math.abs(event.deltaY))) {
        scrollBy(app, frame, -(event.deltaX || event.deltaY))
        return
      }
      const { plan } = frame.bandSizePx
      const factor = Math.exp(-event.deltaY * (event.ctrlKey ? WHEEL_PER_PX * 4 : WHEEL_PER_PX))
      app.view.setState(zoomedAbout(frame, factor, isUpright ? plan.widthPx / 2 : xPx, isUpright ? yPx : plan.heightPx / 2))
    }
    element.addEventListener('wheel', onWheel, { passive: false })
    const leave = (): void => cancelLatest.current()
    window.addEventListener('blur', leave)
    window.addEventListener('resize', leave)
    return () => {
      element.removeEventListener('wheel', onWheel)
      window.removeEventListener('blur', leave)
      window.removeEventListener('resize', leave)
      cancelAnimationFrame(frameId.current)
    }
    // The listeners read what is latest through refs.
  }, [element])

  const pinch = (pointerId: number, xPx: number, yPx: number): void => {
    const { app, frame, isUpright } = latest.current
    const before = fingers.current.get(pointerId)
    const other = [...fingers.current].find(([id]) => id !== pointerId)?.[1]
    fingers.current.set(pointerId, { xPx, yPx })
    if (before === undefined || other === undefined) return
    const apart = (finger: { xPx: number; yPx: number }): number => Math.max(20, Math.hypot(finger.xPx - other.xPx, finger.yPx - other.yPx))
    const [middleX, middleY] = [(xPx + other.xPx) / 2, (yPx + other.yPx) / 2]
    const { plan } = frame.bandSizePx
    app.view.setState(zoomedAbout(frame, apart({ xPx, yPx }) / apart(before), isUpright ? plan.widthPx / 2 : middleX, isUpright ? middleY : plan.heightPx / 2))
    scrollBy(app, { ...frame, ...app.view.getState(), bandSizePx: frame.bandSizePx }, (isUpright ? yPx - before.yPx : xPx - before.xPx) / 2)
  }

  const handlers = {
    onPointerDown: (event: ReactPointerEvent<HTMLDivElement>): void => {
      if (event.button !== 0) return
      const { xPx, yPx } = placeIn(element, event)
      event.currentTarget.setPointerCapture(event.pointerId)
      if (event.pointerType === 'touch') fingers.current.set(event.pointerId, { xPx, yPx })
      const target = event.target instanceof Element ? event.target.closest<HTMLElement>('[data-flag]') : null
      const key = target?.dataset['flag'] ?? latest.current.hit?.(xPx, yPx) ?? null
      send({ type: 'down', key, alt: event.altKey, ...facts(event) }, { adds: event.shiftKey || event.ctrlKey || event.metaKey })
    },
    onPointerMove: (event: ReactPointerEvent<HTMLDivElement>): void => {
      const { xPx, yPx } = placeIn(element, event)
      if (fingers.current.size >= 2) {
        pinch(event.pointerId, xPx, yPx)
        return
      }
      if (machine.current.name === 'idle') return
      probeEntry()
      waiting.current = { type: 'move', alt: event.altKey, ...facts(event) }
      takeMove()
      probeHandled()
    },
    onPointerUp: (event: ReactPointerEvent<HTMLDivElement>): void => {
      fingers.current.delete(event.pointerId)
      flush()
      send({ type: 'up', ...facts(event) }, { adds: event.shiftKey || event.ctrlKey || event.metaKey })
    },
    onPointerCancel: cancel,
    onLostPointerCapture: (event: ReactPointerEvent<HTMLDivElement>): void => {
      fingers.current.delete(event.pointerId)
    },
  }
  /** True where the key belonged to a running gesture. */
  const onGestureKey = (event: KeyboardEvent): boolean => {
    if (event.key !== 'Escape' || machine.current.name === 'idle') return false
    cancel()
    event.preventDefault()
    event.stopPropagation()
    return true
  }
  return { state, handlers, onGestureKey }
}

const placeIn = (element: HTMLDivElement | null, event: { clientX: number; clientY: number }): { xPx: number; yPx: number } => {
  const box = element?.getBoundingClientRect()
  return { xPx: event.clientX - (box?.left ?? 0), yPx: event.clientY - (box?.top ?? 0) }
}

/** Scrolls along the tape by px of screen: what is under the pointer follows it. */
const scrollBy = (app: App, frame: FrameView, alongPx: number): void => {
  const isAhead = frame.tapeVertical ? frame.turned : !frame.turned
  app.view.setState({ leftRunningM: frame.leftRunningM + ((isAhead ? -1 : 1) * alongPx) / frame.pxPerM })
}

/** False where the store refused: the gesture ends there. */
const carryOut = (effect: FlagEffect, { app, frame }: FlagGestureParts, { adds }: { adds: boolean }): boolean => {
  const documents = app.documents.getState()
  switch (effect.do) {
    case 'select': {
      const { selection } = app.view.getState()
      app.view.setState({ selection: adds ? [...new Set([...selection, ...effect.ids])] : effect.ids, openFindingKey: null })
      return true
    }
    case 'begin':
      documents.begin(effect.label)
      return true
    case 'preview':
      try {
        documents.showPreview(app.edit(effect.command, effect.args))
        return true
      } catch (error) {
        documents.cancelPreview()
        say(app, reasonOf(error))
        return false
      }
    case 'commit':
      documents.commitPreview()
      return true
    case 'cancelPreview':
      documents.cancelPreview()
      return true
    case 'scroll':
      scrollBy(app, { ...frame, leftRunningM: app.view.getState().leftRunningM }, effect.alongPx)
      return true
    case 'placeAt':
      placeAt(app, effect.runningM)
      return true
    case 'notice':
      say(app, effect.text, effect.undo)
      return true
  }
}

/** With a kind in hand a tap places it there; else the panel asks what goes there. */
const placeAt = (app: App, runningM: number): void => {
  const { tool } = app.view.getState()
  const runId = app.site.getState().site.run?.id
  if (tool?.name === 'place' && runId !== undefined) {
    runAndSelect(app, 'place', { kind: tool.kind, place: { at: 'onRun', runId, runningM, offsetM: 0, turnRad: 0 }, ...patchOf(tool) })
    app.view.setState({ tool: null })
    return
  }
  app.view.setState({ panel: 'placeAt', placeAtRunningM: runningM })
}

const reasonOf = (error: unknown): { en: string; es: string } => {
  const reason = typeof error === 'object' && error !== null && 'reason' in error ? error.reason : null
  if (typeof reason === 'object' && reason !== null && 'en' in reason && 'es' in reason) return { en: String(reason.en), es: String(reason.es) }
  return { en: error instanceof Error ? error.message : String(error), es: '' }
}
