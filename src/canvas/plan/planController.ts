import type { App } from '../../state/app.ts'
import type { SetUpRecord } from '../../scene/records/frame.ts'
import { layoutOf, setUpsOf } from '../../scene/document.ts'
import { planPart, pxToPlan, type PlanPart } from '../../state/frames.ts'
import { comparisonOf } from '../../state/comparison.ts'
import type { ViewState } from '../../state/viewStore.ts'
import { runAction } from '../actions.ts'
import { actionOfKey, isTypingIn } from '../keys.ts'
import { edgePush, pinchOf, pinchStep, wheelFactor, type PinchStart } from '../tools/pan.ts'
import { isBusy, pushesEdge, startTool, stepTool, toolOverlay, type ToolState } from '../tools/tool.ts'
import { emptyOverlay, type PointerFacts, type PointerKind, type ToolContext, type ToolEvent, type ToolOverlay } from '../tools/types.ts'
import { keepFold } from '../foldKeeper.ts'
import { anchored, panned, withThis, zoomedAbout } from '../viewMoves.ts'
import { runEffect } from './effects.ts'
import { probeEntry, probeHandled } from './frameProbe.ts'
import { frameSetUp, toolContextOf } from './toolContext.ts'

const HOLD_MS = 500
/** Wheel turns and pans nearer together than this are one move of the view, ms. */
const VIEW_BURST_MS = 800

interface Surface {
  /** Draws at the next frame. */
  schedule: (kind: 'drag' | 'view' | 'other') => void
  /** Draws what is scheduled at once, before others get their turn in this frame. */
  drawNow: () => void
  spots: () => ToolContext['spots']
  /** Numbers of findings stand on the plan; else the margin's leaders show them, and new findings change nothing here. */
  showsMarks: () => boolean
  overlayChanged: (overlay: ToolOverlay) => void
}

/** Keys of the view that change what the plan shows. */
const drawnKeys: readonly (keyof ViewState)[] = [
  'pxPerM', 'leftRunningM', 'midOffsetM', 'fold', 'orientation', 'turned', 'selection', 'tool', 'phase', 'joint', 'noseM', 'runThrough', 'holdStill', 'hiddenKinds', 'tapeVertical', 'theme', 'language', 'leftHanded', 'proposal', 'measure', 'rollOff', 'bandSizePx', 'form', 'snapping',
]

/** Gestures that hold something by the place it was taken at: the pointer keeps to that part of a folded sheet. */
const keepsPart: ReadonlySet<string> = new Set(['pressed', 'moving', 'turning', 'reshaping'])

/**
 * Brings pointers, wheel and keys of the plan to the tool in hand and carries out what it answers. One gesture at a
 * time; a second finger, Esc, blur, rotation and a lost pointer end it without leaving anything half done.
 */
export class PlanController {
  private readonly app: App
  private readonly surface: Surface
  private element: HTMLElement | null = null
  private state: ToolState
  private toolInHand: ViewState['tool']
  private touches = new Map<number, { xPx: number; yPx: number }>()
  private pinch: PinchStart | null = null
  private holdTimer: ReturnType<typeof setTimeout> | undefined
  private lastMove: PointerEvent | null = null
  private edgeFrame = 0
  private viewBurstMs = -Infinity
  private isStepping = false
  /** Part of a folded sheet the press was in: what is dragged stays in it. */
  private pressPart: PlanPart = 'before'

  constructor(app: App, surface: Surface) {
    this.app = app
    this.surface = surface
    this.toolInHand = app.view.getState().tool
    this.state = startTool(this.context())
  }

  /** Binds to the element of the band; the answer unbinds. */
  attach(element: HTMLElement): () => void {
    this.element = element
    const passive = { passive: false } as const
    const on = <K extends keyof HTMLElementEventMap>(name: K, handler: (event: HTMLElementEventMap[K]) => void): [K, (event: HTMLElementEventMap[K]) => void] => {
      element.addEventListener(name, handler as EventListener, passive)
      return [name, handler]
    }
    const bound = [
      on('pointerdown', this.onDown), on('pointermove', this.onMove), on('pointerup', this.onUp), on('pointercancel', this.onLost), on('lostpointercapture', this.onLost),
      on('pointerleave', this.onLeave), on('wheel', this.onWheel), on('contextmenu', (event) => event.preventDefault()), on('keydown', this.onKey), on('blur', this.cancel),
    ]
    // A page put away or a turned device never leaves a gesture running.
    addEventListener('blur', this.cancel)
    addEventListener('visibilitychange', this.cancel)
    const unsubscribe = [keepFold(this.app), this.app.view.subscribe(this.viewChanged), this.app.documents.subscribe(this.documentChanged), this.app.critical.store.subscribe(() => this.surface.schedule('other')), comparisonOf(this.app).subscribe(() => this.surface.schedule('other')), this.app.site.subscribe(() => this.surface.schedule(isBusy(this.state) || this.app.documents.getState().preview !== null ? 'drag' : 'other')), this.app.results.subscribe(() => { if (this.surface.showsMarks()) this.surface.schedule('other') })]
    return () => {
      this.cancel()
      for (const [name, handler] of bound) element.removeEventListener(name, handler as EventListener)
      removeEventListener('blur', this.cancel)
      removeEventListener('visibilitychange', this.cancel)
      for (const stop of unsubscribe) stop()
      this.element = null
    }
  }

  private context(): ToolContext {
    return toolContextOf(this.app, this.surface.spots())
  }

  /** Ends whatever runs as if it had never begun; corners tapped so far stay. */
  cancel = (): void => {
    clearTimeout(this.holdTimer)
    this.pinch = null
    this.stopEdge()
    if (isBusy(this.state) || this.app.documents.getState().pending !== null) this.step({ type: 'cancel' })
  }

  private step(event: ToolEvent): void {
    const context = this.context()
    const before = this.state
    const { state, effects } = stepTool(this.state, event, context)
    this.state = state
    this.isStepping = true
    try {
      for (const effect of effects) {
        if (effect.do === 'pan') this.rememberView()
        runEffect(this.app, effect)
      }
    } finally {
      this.isStepping = false
    }
    this.takeTool()
    if (state !== before || effects.length > 0) {
      this.surface.overlayChanged(toolOverlay(this.state, this.context()))
      this.surface.schedule(pushesEdge(this.state) ? 'drag' : 'other')
    }
    this.showCursor()
  }

  /** Takes up the tool the view names, putting the old one down. */
  private takeTool(): void {
    const { tool } = this.app.view.getState()
    if (tool === this.toolInHand) return
    this.toolInHand = tool
    if (this.app.documents.getState().pending !== null) this.app.documents.getState().cancelPreview()
    this.state = startTool(this.context())
    this.surface.overlayChanged(emptyOverlay)
  }

  private showCursor(): void {
    if (this.element === null) return
    const { tool, hoverId } = this.app.view.getState()
    this.element.style.cursor = this.state.name === 'panning' ? 'grabbing' : tool !== null ? 'crosshair' : this.state.name === 'moving' ? 'move' : hoverId !== null ? 'pointer' : 'default'
  }

  private facts(event: PointerEvent, at = this.position(event)): PointerFacts {
    const part = keepsPart.has(this.state.name) ? this.pressPart : undefined
    const site = pxToPlan(this.app.view.getState(), frameSetUp(this.app), at.xPx, at.yPx, part)
    const pointer: PointerKind = event.pointerType === 'touch' ? 'touch' : event.pointerType === 'pen' ? 'pen' : 'mouse'
    return { pointerId: event.pointerId, pointer, ...at, ...site, shift: event.shiftKey, alt: event.altKey, mod: event.ctrlKey || event.metaKey, button: event.button, timeMs: event.timeStamp }
  }

  private position(event: { clientX: number; clientY: number }): { xPx: number; yPx: number } {
    const box = this.element?.getBoundingClientRect()
    return { xPx: event.clientX - (box?.left ?? 0), yPx: event.clientY - (box?.top ?? 0) }
  }

  private onDown = (event: PointerEvent): void => {
    const element = this.element
    if (element === null) return
    element.focus({ preventScroll: true })
    if (event.pointerType === 'touch') {
      this.touches.set(event.pointerId, this.position(event))
      if (this.touches.size === 2) {
        this.cancel()
        const [one, other] = [...this.touches.values()]
        this.pinch = pinchOf(one!, other!)
        this.rememberView()
      }
      if (this.touches.size > 1) return
    }
    try {
      element.setPointerCapture(event.pointerId)
    } catch {
      // A pointer that is already gone again: its release comes as a cancel.
    }
    const facts = this.facts(event)
    this.pressPart = planPart(this.app.view.getState(), facts.xPx)
    clearTimeout(this.holdTimer)
    this.step({ type: 'down', ...facts })
    if (event.pointerType !== 'mouse') this.holdTimer = setTimeout(() => this.step({ type: 'hold', ...facts }), HOLD_MS)
  }

  private onMove = (event: PointerEvent): void => {
    probeEntry()
    if (this.touches.has(event.pointerId)) this.touches.set(event.pointerId, this.position(event))
    if (this.pinch !== null) {
      if (this.touches.size >= 2) this.pinchTo()
      probeHandled()
      this.surface.drawNow()
      return
    }
    this.lastMove = event
    const facts = this.facts(event)
    this.step({ type: 'move', ...facts })
    if (this.state.name !== 'pressed') clearTimeout(this.holdTimer)
    this.pushEdge()
    probeHandled()
    this.surface.drawNow()
  }

  private pinchTo(): void {
    const [one, other] = [...this.touches.values()]
    const now = pinchOf(one!, other!)
    const { dxPx, dyPx, factor, xPx, yPx } = pinchStep(this.pinch!, now)
    this.pinch = now
    const setUp = frameSetUp(this.app)
    const view = this.app.view.getState()
    const shifted = { ...view, ...panned(view, setUp, dxPx, dyPx) }
    this.app.view.setState(zoomedAbout(shifted, setUp, factor, xPx, yPx))
  }

  private onUp = (event: PointerEvent): void => {
    clearTimeout(this.holdTimer)
    this.stopEdge()
    const wasPinch = this.pinch !== null
    this.touches.delete(event.pointerId)
    if (wasPinch) {
      // The finger left over does nothing until it is lifted too.
      if (this.touches.size === 0) this.pinch = null
      return
    }
    this.step({ type: 'up', ...this.facts(event) })
    this.lastMove = null
  }

  private onLost = (event: PointerEvent): void => {
    const wasDown = this.touches.delete(event.pointerId)
    if (this.touches.size === 0) this.pinch = null
    // The release has been handled by now; only a pointer taken away leaves something running.
    if (event.type === 'pointercancel' || (wasDown && isBusy(this.state) && this.state.name !== 'drawing')) this.cancel()
  }

  private onLeave = (event: PointerEvent): void => {
    // Nothing hangs on where a hovering pointer was last seen.
    if (event.buttons === 0) {
      runEffect(this.app, { do: 'hover', id: null })
      if (this.state.name === 'placing') this.step({ type: 'cancel' })
    }
  }

  private onWheel = (event: WheelEvent): void => {
    event.preventDefault()
    probeEntry()
    this.rememberView()
    const { xPx, yPx } = this.position(event)
    const setUp = frameSetUp(this.app)
    const view = this.app.view.getState()
    const isSideways = event.shiftKey || (!event.ctrlKey && Math.abs(event.deltaX) > Math.abs(event.deltaY))
    if (isSideways) this.app.view.setState(panned(view, setUp, -(event.deltaX === 0 ? event.deltaY : event.deltaX), 0))
    else this.app.view.setState(zoomedAbout(view, setUp, wheelFactor(event.deltaY, event.deltaMode, event.ctrlKey), xPx, yPx))
    probeHandled()
    this.surface.drawNow()
  }

  /** Keeps the view from before a burst of panning or zooming, for 'previous view'. */
  private rememberView(): void {
    const nowMs = performance.now()
    if (nowMs - this.viewBurstMs > VIEW_BURST_MS) {
      this.app.view.setState({ previousViews: withThis(this.app.view.getState()) })
    }
    this.viewBurstMs = nowMs
  }

  private onKey = (event: KeyboardEvent): void => {
    if (isTypingIn(event.target)) return
    if (event.key === 'Alt' && isBusy(this.state)) event.preventDefault()
    const isToolKey = isBusy(this.state) || this.toolInHand !== null
    if (isToolKey && !event.ctrlKey && !event.metaKey) {
      const before = this.state
      const toolBefore = this.toolInHand
      this.step({ type: 'key', key: event.key, shift: event.shiftKey, alt: event.altKey, mod: false })
      if (this.state !== before || this.toolInHand !== toolBefore) {
        event.preventDefault()
        return
      }
    }
    // While the pointer holds something, shortcuts would pull the layout away from under it.
    if (this.app.documents.getState().pending !== null) return
    const action = actionOfKey(event)
    if (action === null) return
    event.preventDefault()
    event.stopPropagation()
    runAction(this.app, action)
  }

  private pushEdge(): void {
    const { xPx, yPx } = this.lastMove === null ? { xPx: 0, yPx: 0 } : this.position(this.lastMove)
    const { widthPx, heightPx } = this.app.view.getState().bandSizePx.plan
    const dx = edgePush(xPx, widthPx)
    const dy = edgePush(yPx, heightPx)
    if (this.lastMove === null || !pushesEdge(this.state) || (dx === 0 && dy === 0)) {
      this.stopEdge()
      return
    }
    if (this.edgeFrame === 0) this.edgeFrame = requestAnimationFrame(this.edgeTick)
  }

  private edgeTick = (): void => {
    this.edgeFrame = 0
    const event = this.lastMove
    if (event === null || !pushesEdge(this.state)) return
    const { widthPx, heightPx } = this.app.view.getState().bandSizePx.plan
    const { xPx, yPx } = this.position(event)
    this.rememberView()
    this.app.view.setState(panned(this.app.view.getState(), frameSetUp(this.app), edgePush(xPx, widthPx), edgePush(yPx, heightPx)))
    this.step({ type: 'move', ...this.facts(event) })
    this.pushEdge()
  }

  private stopEdge(): void {
    if (this.edgeFrame !== 0) cancelAnimationFrame(this.edgeFrame)
    this.edgeFrame = 0
  }

  private viewChanged = (view: ViewState, before: ViewState): void => {
    if (view.tool !== before.tool && !this.isStepping) {
      this.takeTool()
      this.showCursor()
    }
    // A turned device or a band of another size: where the pointer was means nothing now.
    if (view.bandSizePx.plan.widthPx !== before.bandSizePx.plan.widthPx || view.bandSizePx.plan.heightPx !== before.bandSizePx.plan.heightPx || view.tapeVertical !== before.tapeVertical) this.cancel()
    if (drawnKeys.some((key) => view[key] !== before[key])) this.surface.schedule(view.pxPerM !== before.pxPerM || view.leftRunningM !== before.leftRunningM || view.midOffsetM !== before.midOffsetM ? 'view' : 'other')
  }

  /** When a step moves datum or axis of the same layout, the sheet stays under the site instead of jumping with them. */
  private documentChanged = (state: ReturnType<App['documents']['getState']>, before: ReturnType<App['documents']['getState']>): void => {
    if (state.document === before.document) return
    const isSameLayout = layoutOf(state.document).layoutId === layoutOf(before.document).layoutId
    const [after, was] = [this.shownSetUp(state.document), this.shownSetUp(before.document)]
    if (!isSameLayout || after === null || was === null || after.id !== was.id) return
    if (after.datum.xM !== was.datum.xM || after.datum.yM !== was.datum.yM || after.headingRad !== was.headingRad) {
      this.app.view.setState(anchored(this.app.view.getState(), was, after))
    }
  }

  private shownSetUp(document: Parameters<typeof setUpsOf>[0]): SetUpRecord | null {
    const shown = this.app.site.getState().site.setUp
    const list = setUpsOf(document)
    return list.find(({ id }) => id === shown?.id) ?? list[0] ?? null
  }
}
