import type { CheckClient, CheckPort, FromWorker } from '../state/checkClient.ts'

/**
 * Port to the check worker. `?slowWorker=ms` on the page's address holds every answer back, for the test that a late
 * worker never shows an old number as current.
 */
export const openCheckPort = (client: () => CheckClient): CheckPort => {
  const holdMs = Number(new URLSearchParams(location.search).get('slowWorker') ?? 0)
  let worker: Worker
  const start = (): void => {
    worker = new Worker(new URL('./checkWorker.ts', import.meta.url), { type: 'module' })
    worker.addEventListener('message', ({ data }: MessageEvent<FromWorker>) => {
      if (holdMs > 0) setTimeout(() => client().receive(data), Math.min(holdMs, 10_000))
      else client().receive(data)
    })
    worker.addEventListener('error', (event) => client().crashed(event.message || 'the worker stopped'))
  }
  start()
  return {
    post: (message) => worker.postMessage(message),
    restart: () => {
      worker.terminate()
      start()
    },
  }
}
