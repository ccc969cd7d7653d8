/**
 * Read-only measure of drag and pan frames for the bench: from the entry of our pointer handler to the end of the last
 * draw of the plan in that frame, with one pixel read back so that a deferred raster counts too; and, beside it, to the
 * end of everything that ran in that frame (tape, side view, tags, notes). Off unless a bench turns it on.
 */
export interface YardProbe {
  enabled: boolean
  /** Per frame, in order: ms to the end of the plan's draw, wholeMs to the end of the frame's work on the main thread. */
  frames: { ms: number; wholeMs: number | null; kind: 'drag' | 'view' | 'other'; layers: string; handlerMs: number }[]
}

declare global {
  interface Window {
    __yardProbe?: YardProbe
  }
}

let entryMs: number | null = null
let handlerMs = 0

export const installProbe = (): void => {
  window.__yardProbe ??= { enabled: false, frames: [] }
}

export const probeEntry = (): void => {
  if (window.__yardProbe?.enabled === true && entryMs === null) entryMs = performance.now()
}

/** End of the pointer handler: what is left of the frame is other people's work and our drawing. */
export const probeHandled = (): void => {
  if (entryMs !== null && handlerMs === 0) handlerMs = performance.now() - entryMs
}

/** End of the last draw of a frame; `moving` is the layer that what moves is drawn on. */
export const probeFrame = (kind: 'drag' | 'view' | 'other', layers: string, moving: CanvasRenderingContext2D | null, inHandler: boolean): void => {
  const probe = window.__yardProbe
  if (probe?.enabled !== true || entryMs === null) return
  moving?.getImageData(0, 0, 1, 1)
  const startMs = entryMs
  const frame: YardProbe['frames'][number] = { ms: performance.now() - startMs, wholeMs: null, kind, layers, handlerMs }
  probe.frames.push(frame)
  entryMs = null
  handlerMs = 0
  // A task queued from the frame's callbacks runs when they, and what they put off to microtasks, are through.
  const afterFrame = (): void => {
    const { port1, port2 } = new MessageChannel()
    port1.onmessage = () => {
      frame.wholeMs = performance.now() - startMs
    }
    port2.postMessage(null)
  }
  if (inHandler) requestAnimationFrame(afterFrame)
  else afterFrame()
}
