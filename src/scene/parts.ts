import { z } from 'zod'

// No eval: the content policy of the app forbids it.
z.config({ jitless: true })

/** Ids are opaque: a short prefix for the reader of a file, a colon, then anything. Never reused. */
export const idSchema = z.string().min(3).max(80).regex(/^[a-zA-Z]+:[A-Za-z0-9_-]+$/, 'an id looks like stand:1a2b')
export const finite = z.number()
export const positive = z.number().positive()
export const notNegative = z.number().min(0)
export const shortText = z.string().max(200)
export const longText = z.string().max(2000)

export const pointSchema = z.strictObject({ xM: finite, yM: finite })
export type PointRecord = z.infer<typeof pointSchema>

/** Where a figure comes from. 'typical' is replaced by the plate; a house rule lives in limits, not here. */
export const basisSchema = z.enum(['typical', 'plate', 'measured', 'jobRule'])
export type Basis = z.infer<typeof basisSchema>

/**
 * A figure of the gear or of the site with its basis. `value` is SI; null = unknown (never 0, never a missing key).
 * `band` is an optional low, likely, high beside it.
 */
export const figureSchema = z.strictObject({
  value: z.number().nullable(),
  basis: basisSchema,
  note: shortText.optional(),
  band: z.strictObject({ low: finite, likely: finite, high: finite }).optional(),
})
export type Figure = z.infer<typeof figureSchema>

export const typical = (value: number | null): Figure => ({ value, basis: 'typical' })
export const unknownFigure = (): Figure => ({ value: null, basis: 'typical' })
/** Value of a figure that cannot be below zero. One that is was mistyped, so nobody knows it. */
export const valueFromZero = ({ value }: Figure): number | null => (value === null || value < 0 ? null : value)

/**
 * Place of an item. `free`: site frame (x right, y up, m), heading counter-clockwise from +x.
 * `onRun`: running distance from the datum along a run (exit > 0, infeed < 0), offset R (right looking down-string) +,
 * turn counter-clockwise from the run's direction. `onItem`: in the other item's local frame (x along its heading, y left).
 */
export const placeSchema = z.discriminatedUnion('at', [
  z.strictObject({ at: z.literal('free'), xM: finite, yM: finite, headingRad: finite }),
  z.strictObject({ at: z.literal('onRun'), runId: idSchema, runningM: finite, offsetM: finite, turnRad: finite }),
  z.strictObject({ at: z.literal('onItem'), itemId: idSchema, dxM: finite, dyM: finite, turnRad: finite }),
])
export type Place = z.infer<typeof placeSchema>

/**
 * Height is a rule: the bottom of pipe (BOP) at the item follows the jaw line, hangs a drop below it,
 * or stands a saddle height above the ground there; or nobody has said.
 */
export const heightSchema = z.discriminatedUnion('rule', [
  z.strictObject({ rule: z.literal('onAxis') }),
  z.strictObject({ rule: z.literal('belowAxis'), dropM: finite }),
  z.strictObject({ rule: z.literal('aboveGround'), saddleM: finite }),
  z.strictObject({ rule: z.literal('unknown') }),
])
export type HeightRule = z.infer<typeof heightSchema>

export const phaseSchema = z.enum(['setUp', 'offload', 'load', 'fuse', 'pull', 'move', 'rest', 'tieIn'])
export type Phase = z.infer<typeof phaseSchema>
export const phases: readonly Phase[] = phaseSchema.options
/** Whether the last joint is made by then: the whole string lies out. */
export const isAfterJoints = (phase: Phase): boolean => phase === 'move' || phase === 'rest' || phase === 'tieIn'

export const zoneClassSchema = z.enum(['RED', 'AMBER', 'BLUE'])
export type ZoneClass = z.infer<typeof zoneClassSchema>

export const landingAidSchema = z.enum(['none', 'liftByHand', 'liftByLoader', 'ramp'])
export const extrasSchema = z.record(z.string().max(60), z.string().max(500)).optional()

/** Fields every placed item has. */
export const itemBase = {
  id: idSchema,
  place: placeSchema,
  locked: z.boolean(),
  note: longText.nullable(),
  gearId: idSchema.nullable(),
  extras: extrasSchema,
}

/** Fields every feature drawn on the site has (site frame). */
export const featureBase = {
  id: idSchema,
  name: shortText,
  locked: z.boolean(),
  note: longText.nullable(),
  extras: extrasSchema,
}
export const pointsSchema = z.array(pointSchema).min(2).max(2000)
export const ringSchema = z.array(pointSchema).min(3).max(2000)
