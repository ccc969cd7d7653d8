import type { RunThroughClient, RunThroughPort, FromRunThrough } from '../state/runThroughClient.ts'

/** Port to the run-through's worker, which is started with the first message: most yards are drawn without one. */
export const openRunThroughPort = (client: () => RunThroughClient): RunThroughPort => {
  let worker: Worker | null = null
  const started = (): Worker => {
    if (worker !== null) return worker
    worker = new Worker(new URL('./runThroughWorker.ts', import.meta.url), { type: 'module' })
    worker.addEventListener('message', ({ data }: MessageEvent<FromRunThrough>) => client().receive(data))
    worker.addEventListener('error', (event) => client().crashed(event.message || 'the worker stopped'))
    return worker
  }
  return {
    post: (message) => {
      // Nothing to cancel where nothing runs.
      if (message.type === 'cancel' && worker === null) return
      started().postMessage(message)
    },
    stop: () => {
      worker?.terminate()
      worker = null
    },
  }
}
