import { propose } from '../../../src/checks/proposals/propose.ts'
import type { ProposalKind, ProposalResult } from '../../../src/checks/proposals/types.ts'
import { runChecks } from '../../../src/checks/runner.ts'
import type { Finding } from '../../../src/checks/finding.ts'
import { deriveSite } from '../../../src/derive/site.ts'
import type { SiteModel } from '../../../src/derive/types.ts'
import { commandOf } from '../../../src/scene/commands/index.ts'
import type { YardDocument } from '../../../src/scene/document.ts'
import { applyEdit, type Env } from '../../../src/scene/edit.ts'
import type { GearItem } from '../../../src/scene/gear.ts'

export type Found = Extract<ProposalResult, { status: 'found' }>

const plate = (value: number): { value: number; basis: 'plate' } => ({ value, basis: 'plate' })

export const ownedStands = (count: number | null, lowestM: number, highestM: number, ratedLoadN = 20_000): GearItem =>
  ({ id: 'gear:stands', kind: 'stand', name: 'stands', count, choices: {}, figures: { lowestSaddleM: plate(lowestM), highestSaddleM: plate(highestM), ratedLoadN: plate(ratedLoadN) } }) as GearItem
export const ownedRollers = (count: number | null, ratedLoadN = 20_000): GearItem => ({ id: 'gear:rollers', kind: 'roller', name: 'rollers', count, choices: {}, figures: { ratedLoadN: plate(ratedLoadN) } }) as GearItem

/** Ids that no yard of the tests has: those of `testEnv` begin anew with each. */
const freshEnv = (): Env => {
  let count = 0
  return { newId: (prefix) => `${prefix}:accepted${(count += 1)}`, now: () => '2025-06-03T14:00:00.000Z' }
}

/** The document after the proposal is accepted. */
export const accepted = (document: YardDocument, { command }: Found): YardDocument => applyEdit(document, commandOf(command.command)!.run(document, command.args, freshEnv()))

export const proposeFor = (document: YardDocument, kind: ProposalKind = 'stands', owned: readonly GearItem[] | null = null): ProposalResult => propose({ kind, document, owned })

export function foundFor(document: YardDocument, kind: ProposalKind = 'stands', owned: readonly GearItem[] | null = null): Found {
  const result = proposeFor(document, kind, owned)
  if (result.status !== 'found') throw new Error(`${result.status}: ${JSON.stringify(result)}`)
  return result
}

/** Facts about plates and levels nobody has read: no arrangement answers them. */
const ofInput = new Set(['missing-inputs', 'typical-figures', 'ground-guessed'])
const rank = { STOP: 0, FIX: 1, CHECK: 2, NOTE: 3, met: 4 } as const
const judged = (document: YardDocument, owned: readonly GearItem[] | null): readonly Finding[] => runChecks(document, { owned }).findings.filter(({ level, checkId, isUnknown }) => rank[level] <= 2 && !isUnknown && !ofInput.has(checkId))

/** By key, worked out here from the whole of both documents and not taken from the proposal. */
export function changeOf(before: YardDocument, after: YardDocument, owned: readonly GearItem[] | null = null): { raised: string[]; cleared: string[] } {
  const [was, is] = [judged(before, owned), judged(after, owned)]
  const worseThan = (one: Finding, other: readonly Finding[]): boolean => !other.some(({ key, level }) => key === one.key && rank[level] <= rank[one.level])
  return { raised: is.filter((one) => worseThan(one, was)).map(({ level, key }) => `${level} ${key}`), cleared: was.filter((one) => worseThan(one, is)).map(({ level, checkId }) => `${level} ${checkId}`) }
}

export const supportsOf = (document: YardDocument): SiteModel['supports'] => deriveSite(document).supports
/** Stands and rollers; a rack counts as none. */
export const supportCount = (document: YardDocument): number => supportsOf(document).filter(({ kind }) => kind !== 'rack').length
