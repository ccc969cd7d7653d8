import { z } from 'zod'
import { extrasSchema, finite, idSchema, longText, phaseSchema, positive, ringSchema, shortText, zoneClassSchema } from '../parts.ts'

/** What was changed on a derived zone. Derived zones themselves are never stored. Key as `Z-02@rack:…`. */
export const zoneChangeSchema = z.strictObject({
  id: idSchema,
  kind: z.literal('zoneChange'),
  zoneKey: z.string().min(3).max(120),
  marginM: finite.nullable(),
  points: ringSchema.nullable(),
  zoneClass: zoneClassSchema.nullable(),
  phases: z.array(phaseSchema).max(8).nullable(),
  reason: longText,
  extras: extrasSchema,
})
export type ZoneChangeRecord = z.infer<typeof zoneChangeSchema>

/** A limit of shared/tables/limits.json replaced by the owner's or the crew's figure. */
export const limitChangeSchema = z.strictObject({
  id: idSchema,
  kind: z.literal('limitChange'),
  limitId: z.string().min(2).max(60),
  /** Which of the limit's figures: the bound of CHECK or of FIX. */
  bound: z.enum(['check', 'fix']),
  value: finite,
  reason: longText,
  who: shortText,
  when: z.string().max(40),
  extras: extrasSchema,
})
export type LimitChangeRecord = z.infer<typeof limitChangeSchema>

/** What the crew measured after setting an item; beside the plan, never overwriting it. */
export const asSetSchema = z.strictObject({
  id: idSchema,
  kind: z.literal('asSet'),
  itemId: idSchema,
  /** Bottom of the pipe above the ground there: of a stand or roller, of a rack's beam next to the jaws, of the machine in its jaws. */
  saddleM: finite.nullable(),
  /** The same on a rack's far beam. */
  farSaddleM: finite.nullable(),
  /** Ticked as standing where the plan has it; of a rack, its beam next to the jaws and its far one. */
  isTicked: z.boolean(),
  isFarTicked: z.boolean(),
  offsetM: finite.nullable(),
  runningM: finite.nullable(),
  when: z.string().max(40),
  extras: extrasSchema,
})
export type AsSetRecord = z.infer<typeof asSetSchema>

/** Release log: revisions, talks, sign-offs. Append-only and not undone. */
export const releaseSchema = z.strictObject({
  id: idSchema,
  kind: z.literal('release'),
  letter: z.string().min(1).max(4),
  what: z.enum(['printed', 'shared', 'talk', 'signOff']),
  when: z.string().max(40),
  contentHash: z.string().max(80),
  replaces: z.string().max(4).nullable(),
  text: longText.nullable(),
  /** Of a talk: the stage it was held for, its language, and who signed, as they wrote it. */
  stageId: shortText.nullable(),
  language: z.enum(['en', 'es', 'both']).nullable(),
  people: z.array(shortText).max(60),
  extras: extrasSchema,
})
export type ReleaseRecord = z.infer<typeof releaseSchema>

/** Bytes live in their own store; the record holds their hash. */
export const assetSchema = z.strictObject({
  id: idSchema,
  kind: z.literal('asset'),
  sha256: z.string().regex(/^[0-9a-f]{64}$/, 'a sha-256 is 64 hex digits'),
  mime: z.enum(['image/png', 'image/jpeg', 'image/webp']),
  bytes: z.number().int().min(1).max(20_000_000),
  widthM: positive.nullable(),
  extras: extrasSchema,
})
export type AssetRecord = z.infer<typeof assetSchema>
