/// <reference lib="webworker" />
import type { ToRunThrough } from '../state/runThroughClient.ts'
import { createRehearsal } from './rehearsal.ts'

/** A message to oneself is not held back as a timer is. */
const breath = (): Promise<void> => new Promise((resolve) => {
  const { port1, port2 } = new MessageChannel()
  port1.onmessage = () => {
    port1.close()
    resolve()
  }
  port2.postMessage(null)
})

const take = createRehearsal({ answer: (message) => postMessage(message), breath, nowMs: () => performance.now() })

addEventListener('message', ({ data }: MessageEvent<ToRunThrough>) => void take(data))
