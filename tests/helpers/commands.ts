import type { YardDocument } from '../../src/scene/document.ts'
import { commandOf } from '../../src/scene/commands/index.ts'
import { applyEdit, type Env } from '../../src/scene/edit.ts'
import type { PlacedRecord } from '../../src/scene/kinds/index.ts'
import { resolvePlace, type ResolvedPlace } from '../../src/scene/resolve.ts'
import { testEnv } from './documents.ts'

/** The document after a command of the registry. */
export const after = (document: YardDocument, name: string, args: unknown, env: Env = testEnv()): YardDocument => {
  const command = commandOf(name)
  if (command === undefined) throw new Error(`no command ${name}`)
  return applyEdit(document, command.run(document, args, env))
}

/** Any record, its type opened for a test to look into. */
export const recordOf = (document: YardDocument, id: string): Record<string, unknown> => document.records[id] as unknown as Record<string, unknown>

export const whereIs = (document: YardDocument, id: string): ResolvedPlace => resolvePlace(document, document.records[id] as PlacedRecord)

/** Ids that `after` has and `before` has not. */
export const added = (before: YardDocument, now: YardDocument): string[] => Object.keys(now.records).filter((id) => before.records[id] === undefined)

export const deepFrozen = <T>(value: T): T => {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) Object.values(Object.freeze(value)).forEach(deepFrozen)
  return value
}
