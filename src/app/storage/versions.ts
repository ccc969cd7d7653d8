import type { Localized } from '../../messages/localized.ts'
import { FILE_VERSION, type YardDocument } from '../../scene/document.ts'
import { formOfRecords, sections, type Section } from '../../scene/fileForm.ts'
import { readForm, type ReadOptions } from '../../scene/readFile.ts'

/** What stored records say of themselves, so that a later version of the app can bring them up by the migrations of the file. */
export interface VersionStamp {
  fileVersion: number
  /** The lists of a file of that version: which kinds each holds. */
  sections: readonly Section[]
}

export const stampOfToday: VersionStamp = { fileVersion: FILE_VERSION, sections }

export type BroughtUp =
  | { ok: true; document: YardDocument; /** False: records were changed, so old undo steps no longer fit. */ isSame: boolean; notes: readonly Localized[] }
  | { ok: false; reason: Localized }

/**
 * Stored records as a document of today. Records of this version are taken as they are (the journal is checked by its
 * checksums); older ones go through the migrations and the reader of files; newer ones are refused and left untouched.
 * Records without a stamp are those of version 1.
 */
export function broughtUp(document: YardDocument, stamp: VersionStamp | undefined, options: ReadOptions = {}): BroughtUp {
  const { fileVersion, sections: lists } = stamp ?? { fileVersion: 1, sections }
  if (fileVersion === (options.currentVersion ?? FILE_VERSION)) return { ok: true, document, isSame: true, notes: [] }
  const read = readForm(formOfRecords(document.records, fileVersion, lists), options)
  if (read.ok) return { ok: true, document: inOrderOf(document, read.document), isSame: false, notes: read.notes }
  const [first] = read.issues
  return { ok: false, reason: { en: `${first?.path ?? ''} ${first?.message.en ?? 'could not be read'}`.trim(), es: `${first?.path ?? ''} ${first?.message.es ?? 'no se pudo leer'}`.trim() } }
}

/** The records in the order they had, new ones at the end: the item list must not jump with an update of the app. */
function inOrderOf(before: YardDocument, after: YardDocument): YardDocument {
  const kept = Object.keys(before.records).filter((id) => after.records[id] !== undefined)
  const order = [...kept, ...Object.keys(after.records).filter((id) => before.records[id] === undefined)]
  return { records: Object.fromEntries(order.map((id) => [id, after.records[id]!])) }
}
