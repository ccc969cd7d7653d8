import type { StartSearch } from '../../state/proposalDesk.ts'
import type { FromProposalWorker, ToProposalWorker } from '../proposalWorker.ts'

/** Searches in a worker of their own, started with the first; cancelling ends the worker, the next search starts another. */
export const searchInWorker = (): StartSearch => {
  let worker: Worker | null = null
  let requestId = 0
  return (request, on) => {
    worker ??= new Worker(new URL('../proposalWorker.ts', import.meta.url), { type: 'module' })
    const mine = worker
    const id = (requestId += 1)
    const end = (): void => {
      mine.terminate()
      if (worker === mine) worker = null
    }
    mine.onmessage = ({ data }: MessageEvent<FromProposalWorker>) => {
      if (data.requestId !== id) return
      if (data.type === 'progress') on.progress(data.share)
      else if (data.type === 'done') on.done(data.result)
      else on.failed(data.message)
    }
    mine.onerror = ({ message }) => {
      end()
      on.failed(message || 'the worker stopped')
    }
    const message: ToProposalWorker = { requestId: id, request }
    mine.postMessage(message)
    return { cancel: end }
  }
}
