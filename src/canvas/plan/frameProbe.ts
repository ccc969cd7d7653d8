/**
 * Read-only measure of drag and pan frames for the bench: from the entry of our pointer handler to the end of the last
 * draw of the plan in that frame, with one pixel read back so that a deferred raster counts too; beside it what each
 * band and React took of the frame, and the time to the end of everything that ran in it, layout and the browser's own
 * drawing of the canvases included. Off unless a bench turns it on.
 */
export interface ProbedFrame {
  /** To the end of the plan's draw. */
  ms: number
  /** To the end of the frame's work on the main thread; null while it runs. */
  wholeMs: number | null
  kind: 'drag' | 'view' | 'other'
  /** Layers of the plan drawn. */
  layers: string
  /** Handler alone: tool, command, derived site, bent pipe. */
  handlerMs: number
  planMs: number
  /** Rendering and committing of what React draws anew at once. */
  reactMs: number
  tapeMs: number
  sectionMs: number
  /** How often each band was painted in this frame, and how: `all`, `strips`, `none`. */
  painted: string[]
  /** Primitives painted by tape and side view. */
  primitives: number
}

export interface YardProbe {
  enabled: boolean
  frames: ProbedFrame[]
}

declare global {
  interface Window {
    __yardProbe?: YardProbe
  }
}

let entryMs: number | null = null
let now: ProbedFrame | null = null
let drawnMs = 0

export const installProbe = (): void => {
  window.__yardProbe ??= { enabled: false, frames: [] }
}

const isOn = (): boolean => typeof window !== 'undefined' && window.__yardProbe?.enabled === true

export const probeEntry = (): void => {
  if (!isOn() || entryMs !== null) return
  entryMs = performance.now()
  now = { ms: 0, wholeMs: null, kind: 'other', layers: '', handlerMs: 0, planMs: 0, reactMs: 0, tapeMs: 0, sectionMs: 0, painted: [], primitives: 0 }
}

/** End of the pointer handler: what is left of the frame is other people's work and our drawing. */
export const probeHandled = (): void => {
  const frame = now
  if (entryMs === null || frame === null || frame.handlerMs !== 0) return
  drawnMs = performance.now()
  frame.handlerMs = drawnMs - entryMs
  // React renders in a microtask it has queued before this one.
  queueMicrotask(() => {
    frame.reactMs = performance.now() - drawnMs
  })
}

/** End of the last draw of the plan in a frame; `moving` is the layer that what moves is drawn on. */
/** The clock of the probe. */
export const probeNowMs = (): number => performance.now()

export const probeFrame = (kind: ProbedFrame['kind'], layers: string, moving: CanvasRenderingContext2D | null, inHandler: boolean, startMs: number): void => {
  const frame = now
  if (!isOn() || entryMs === null || frame === null) return
  moving?.getImageData(0, 0, 1, 1)
  const enteredMs = entryMs
  const endMs = performance.now()
  if (inHandler) drawnMs = endMs
  Object.assign(frame, { ms: endMs - enteredMs, kind, layers, planMs: endMs - startMs })
  frame.painted.push('plan')
  window.__yardProbe?.frames.push(frame)
  entryMs = null
  // A task queued from the frame's callbacks runs when they, and what they put off to microtasks, are through.
  const afterFrame = (): void => {
    const { port1, port2 } = new MessageChannel()
    port1.onmessage = () => {
      frame.wholeMs = performance.now() - enteredMs
    }
    port2.postMessage(null)
  }
  if (inHandler) requestAnimationFrame(afterFrame)
  else afterFrame()
}

/** A band along the tape has been painted. */
export const probeBand = (name: 'tape' | 'section', ms: number, how: string, primitives: number): void => {
  if (!isOn() || now === null) return
  now[name === 'tape' ? 'tapeMs' : 'sectionMs'] += ms
  now.painted.push(`${name} ${how}`)
  now.primitives += primitives
}
