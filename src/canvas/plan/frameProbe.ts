/**
 * Read-only measure of drag and pan frames for the bench: from the entry of our pointer handler to the end of the last
 * draw of that frame, with one pixel read back so that a deferred raster counts too. Off unless a bench turns it on.
 */
export interface YardProbe {
  enabled: boolean
  /** ms per frame, in order. */
  frames: { ms: number; kind: 'drag' | 'view' | 'other'; layers: string; handlerMs: number }[]
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
export const probeFrame = (kind: 'drag' | 'view' | 'other', layers: string, moving: CanvasRenderingContext2D | null): void => {
  const probe = window.__yardProbe
  if (probe?.enabled !== true || entryMs === null) return
  moving?.getImageData(0, 0, 1, 1)
  probe.frames.push({ ms: performance.now() - entryMs, kind, layers, handlerMs })
  entryMs = null
  handlerMs = 0
}
