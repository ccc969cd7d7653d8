/// <reference lib="webworker" />
import { propose } from '../checks/proposals/propose.ts'
import type { ProposalRequest, ProposalResult } from '../checks/proposals/types.ts'

export interface ToProposalWorker {
  requestId: number
  request: ProposalRequest
}
export type FromProposalWorker =
  | { type: 'progress'; requestId: number; share: number }
  | { type: 'done'; requestId: number; result: ProposalResult }
  | { type: 'failed'; requestId: number; message: string }

const answer = (message: FromProposalWorker): void => {
  postMessage(message)
}

addEventListener('message', ({ data: { requestId, request } }: MessageEvent<ToProposalWorker>) => {
  try {
    answer({ type: 'done', requestId, result: propose(request, (share) => answer({ type: 'progress', requestId, share })) })
  } catch (error) {
    answer({ type: 'failed', requestId, message: error instanceof Error ? error.message : String(error) })
  }
})
