import { z } from 'zod'
import { kinds, type PlacedRecord } from './kinds/index.ts'
import { assetSchema, asSetSchema, limitChangeSchema, releaseSchema, zoneChangeSchema, type AssetRecord, type AsSetRecord, type LimitChangeRecord, type ReleaseRecord, type ZoneChangeRecord } from './records/beside.ts'
import { jobSchema, layoutSchema, runSchema, setUpSchema, stringSchema, type JobRecord, type LayoutRecord, type RunRecord, type SetUpRecord, type StringRecord } from './records/frame.ts'

/** Version of the file. Goes up with every change of a schema, together with a migration and frozen files. */
export const FILE_VERSION = 2

export const LAYOUT_ID = 'layout:this'
export const JOB_ID = 'job:this'

export type YardRecord =
  | LayoutRecord | JobRecord | SetUpRecord | RunRecord | StringRecord
  | ZoneChangeRecord | LimitChangeRecord | AsSetRecord | ReleaseRecord | AssetRecord
  | PlacedRecord

/** Id → record. Order of insertion is the order of the file and of the item list. */
export type YardDocument = { readonly records: Readonly<Record<string, YardRecord>> }

const frameSchemas: Record<string, z.ZodType> = {
  layout: layoutSchema, job: jobSchema, setUp: setUpSchema, run: runSchema, string: stringSchema,
  zoneChange: zoneChangeSchema, limitChange: limitChangeSchema, asSet: asSetSchema, release: releaseSchema, asset: assetSchema,
}

/** Schema of a record by its kind, for placed and other records alike. */
export const schemaOf = (kind: string): z.ZodType | undefined => frameSchemas[kind] ?? kinds.find((definition) => definition.kind === kind)?.schema
export const recordKinds: readonly string[] = [...Object.keys(frameSchemas), ...kinds.map(({ kind }) => kind as string)]

export const layoutOf = (document: YardDocument): LayoutRecord => document.records[LAYOUT_ID] as LayoutRecord
export const jobOf = (document: YardDocument): JobRecord => document.records[JOB_ID] as JobRecord

/** Records by kind, sorted out once a document: a derive asks for them item by item. */
const kindsOf = new WeakMap<YardDocument, ReadonlyMap<string, readonly YardRecord[]>>()

const sortedByKind = (document: YardDocument): ReadonlyMap<string, readonly YardRecord[]> => {
  const known = kindsOf.get(document)
  if (known !== undefined) return known
  const lists = new Map<string, YardRecord[]>()
  for (const record of Object.values(document.records)) {
    const list = lists.get(record.kind)
    if (list === undefined) lists.set(record.kind, [record])
    else list.push(record)
  }
  kindsOf.set(document, lists)
  return lists
}

/** All records of one kind, in document order. */
export const recordsOf = <K extends YardRecord['kind']>(document: YardDocument, kind: K): readonly Extract<YardRecord, { kind: K }>[] =>
  (sortedByKind(document).get(kind) ?? []) as readonly Extract<YardRecord, { kind: K }>[]

export const setUpsOf = (document: YardDocument): readonly SetUpRecord[] => recordsOf(document, 'setUp')
export const runsOf = (document: YardDocument): readonly RunRecord[] => recordsOf(document, 'run')
const placedKinds: ReadonlySet<string> = new Set(kinds.map(({ kind }) => kind as string))
/** Records with a place or points on the plan, in document order. */
export const placedOf = (document: YardDocument): PlacedRecord[] => Object.values(document.records).filter((record): record is PlacedRecord => placedKinds.has(record.kind))
