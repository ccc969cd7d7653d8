import type { Finding } from '../../../src/checks/finding.ts'
import { runChecks } from '../../../src/checks/runner.ts'
import { deriveSite } from '../../../src/derive/site.ts'
import { commandOf } from '../../../src/scene/commands/index.ts'
import type { YardDocument } from '../../../src/scene/document.ts'
import { applyEdit } from '../../../src/scene/edit.ts'
import { testEnv } from '../../helpers/documents.ts'
import { examples } from '../../helpers/makeExamples.ts'

/** An example yard of the app. */
export const yardNamed = (name: string): YardDocument => examples[name]!()

/** The document after commands of the app, one after the other; ids go on counting. */
export function edited(document: YardDocument, ...commands: readonly (readonly [name: string, args: unknown])[]): YardDocument {
  const env = testEnv()
  return commands.reduce((before, [name, args]) => applyEdit(before, commandOf(name)!.run(before, args, env)), document)
}

const answers = new WeakMap<YardDocument, readonly Finding[]>()

/** All findings of a document, worked out once. */
export function allOf(document: YardDocument): readonly Finding[] {
  const known = answers.get(document)
  if (known !== undefined) return known
  const { findings } = runChecks(deriveSite(document))
  answers.set(document, findings)
  return findings
}

/** Findings of one check. */
export const raised = (document: YardDocument, checkId: string): readonly Finding[] => allOf(document).filter((one) => one.checkId === checkId)
export const levels = (document: YardDocument, checkId: string): string[] => raised(document, checkId).map(({ level, isUnknown }) => (isUnknown ? `${level}?` : level))
/** The finding of a check at a level that names an item, by id. */
export const about = (document: YardDocument, checkId: string, level: Finding['level'], itemId?: string): Finding | undefined => raised(document, checkId).find((one) => one.level === level && (itemId === undefined || one.itemIds.includes(itemId)))
/** What a good plan must be free of. */
export const alarms = (document: YardDocument): string[] => allOf(document).filter(({ level, isUnknown }) => level === 'STOP' || level === 'FIX' || isUnknown).map(({ level, key }) => `${level} ${key}`)
/** Id of the only or first record of a kind. */
export const firstId = (document: YardDocument, kind: string): string => Object.values(document.records).find((record) => record.kind === kind)!.id
