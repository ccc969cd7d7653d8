import { z } from 'zod'
import { pathParts } from './commands/fields.ts'
import { placedOf, type YardDocument, type YardRecord } from './document.ts'
import { issuesOf, type Issue } from './issues.ts'
import { kindOf, type PlacedKind, type PlacedRecord } from './kinds/index.ts'
import { figureSchema, idSchema, shortText } from './parts.ts'

/**
 * The crew's own gear: one entry for each sort they own, with how many and what its plate says. It lives on the device,
 * apart from layouts; items on a plan copy its figures and keep its id as a hint only.
 */
const entrySchema = z.strictObject({
  id: idSchema,
  kind: z.string().max(40),
  name: shortText,
  /** null: not counted. */
  count: z.number().int().min(0).max(10_000).nullable(),
  /** Fields that tell it from others of its kind, by path: { roller: 'V' }. */
  choices: z.record(z.string().max(60), z.union([z.string().max(60), z.number(), z.boolean(), z.null()])),
  /** Figures by their name in the record: { ratedLoadN: { value, basis } }. */
  figures: z.record(z.string().max(60), figureSchema),
})

type Entry = z.infer<typeof entrySchema>
export interface GearItem extends Entry {
  kind: PlacedKind
}

const anywhere = { place: { at: 'free', xM: 0, yM: 0, headingRad: 0 }, setUpId: 'setUp:any', runId: 'run:any' } as const

/** An item of the kind with the entry's choices and figures, unchecked; null where the kind is not gear. */
function sampleOf(entry: Entry): { record: unknown; schema: z.ZodType } | null {
  const definition = kindOf(entry.kind)
  if (definition === undefined || definition.placing !== 'item' || definition.gear === 'site' || definition.gear === 'people') return null
  const record = definition.create('gear:any', anywhere)
  return 'figures' in record ? { record: { ...record, ...entry.choices, figures: { ...record.figures, ...entry.figures } }, schema: definition.schema } : null
}

/** One entry; its choices and figures must be fields of its kind. */
export const gearItemSchema = entrySchema.transform((entry, context): GearItem => {
  const sample = sampleOf(entry)
  const own = ['id', 'kind', 'place', 'locked', 'note', 'gearId'].find((field) => Object.hasOwn(entry.choices, field))
  const report = (path: PropertyKey[], en: string, es: string): void => context.addIssue({ code: 'custom', path, message: en, params: { es } })
  if (sample === null) report(['kind'], `${entry.kind} is not gear a crew owns`, `${entry.kind} no es equipo de una cuadrilla`)
  else if (own !== undefined) report(['choices', own], 'is not a choice of gear', 'no es una opción del equipo')
  else {
    const parsed = sample.schema.safeParse(sample.record)
    for (const { path, message } of parsed.success ? [] : issuesOf(parsed.error, sample.record)) report(path.startsWith('figures') ? pathParts(path) : ['choices', ...pathParts(path)], message.en, message.es)
  }
  return entry as GearItem
})

export const GEAR_FORMAT = 'stringyard-gear'
export const GEAR_FILE_VERSION = 1

const gearFileSchema = z.strictObject({
  format: z.literal(GEAR_FORMAT),
  fileVersion: z.literal(GEAR_FILE_VERSION),
  gear: z.array(gearItemSchema).max(500),
})

export type GearReadResult = { ok: true; gear: readonly GearItem[] } | { ok: false; issues: readonly Issue[] }

/** Text of a gear list file. */
export const writeGear = (gear: readonly GearItem[]): string => `${JSON.stringify({ format: GEAR_FORMAT, fileVersion: GEAR_FILE_VERSION, gear }, null, 2)}\n`

/** Reads a gear list file; refused by field and reason, never half-read, never throws. */
export function readGear(text: string): GearReadResult {
  if (text.length > 2_000_000) return { ok: false, issues: [{ path: '', message: { en: 'the file is too large for a gear list', es: 'el archivo es demasiado grande para una lista de equipo' } }] }
  let json: unknown
  try {
    json = JSON.parse(text)
  } catch {
    return { ok: false, issues: [{ path: '', message: { en: 'the file is not JSON text', es: 'el archivo no es texto JSON' } }] }
  }
  const parsed = gearFileSchema.safeParse(json)
  if (!parsed.success) return { ok: false, issues: issuesOf(parsed.error, json) }
  const ids = parsed.data.gear.map(({ id }) => id)
  const twice = ids.findIndex((id, i) => ids.indexOf(id) !== i)
  if (twice >= 0) return { ok: false, issues: [{ path: `gear[${twice}].id`, message: { en: `${ids[twice]} is there twice`, es: `${ids[twice]} está dos veces` } }] }
  return { ok: true, gear: parsed.data.gear }
}

/** The item with choices and figures of a piece of the crew's gear, and its id as a hint. */
export function withGear(record: PlacedRecord, gear: GearItem): YardRecord {
  if (!('figures' in record) || !('gearId' in record)) return record
  return { ...record, ...gear.choices, gearId: gear.id, figures: { ...record.figures, ...gear.figures } } as YardRecord
}

const fits = (record: PlacedRecord, { kind, choices }: GearItem): boolean => kind === record.kind && Object.entries(choices).every(([field, value]) => (record as unknown as Record<string, unknown>)[field] === value)

/** The sort a placed item counts against: the one it names, else the first of its kind and variety; undefined where none is listed. */
export const gearOf = (record: PlacedRecord, gear: readonly GearItem[]): GearItem | undefined => {
  const named = 'gearId' in record && record.gearId !== null ? gear.find(({ id, kind }) => id === record.gearId && kind === record.kind) : undefined
  return named ?? gear.find((item) => fits(record, item))
}

/** Placed items by the id of the sort they count against, in the order of the document. */
export function placedByGear(document: YardDocument, gear: readonly GearItem[]): ReadonlyMap<string, readonly PlacedRecord[]> {
  const placed = new Map<string, PlacedRecord[]>()
  for (const record of placedOf(document)) {
    const own = gearOf(record, gear)
    if (own !== undefined) {
      const items = placed.get(own.id)
      if (items === undefined) placed.set(own.id, [record])
      else items.push(record)
    }
  }
  return placed
}
