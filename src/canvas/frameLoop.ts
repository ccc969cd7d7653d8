/** What the bands draw in the next frame: one callback of the browser for all of them, each drawn once however often it was asked for. */
const waiting = new Set<() => void>()
let frameId = 0

const run = (): void => {
  frameId = 0
  const now = [...waiting]
  waiting.clear()
  for (const draw of now) draw()
}

/** Draws in the next frame; `wanted` false takes it back. */
export const onNextFrame = (draw: () => void, wanted = true): void => {
  if (!wanted) {
    waiting.delete(draw)
    return
  }
  waiting.add(draw)
  if (frameId === 0) frameId = requestAnimationFrame(run)
}
