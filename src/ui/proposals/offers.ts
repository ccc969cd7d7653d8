import type { ProposalKind } from '../../checks/proposals/types.ts'

/** Notes that a layout of the supports answers, and which proposal does. */
export const offerOf: Readonly<Partial<Record<string, ProposalKind>>> = {
  'nose-landing': 'stands', 'exit-stands': 'stands', 'jaw-effort': 'stands', 'lifts-out': 'stands', 'face-gap': 'stands', 'offset-change': 'stands', sag: 'stands', balance: 'stands', 'stand-load': 'stands', 'saddle-height': 'stands',
  'surface-scuff': 'rollers',
}
