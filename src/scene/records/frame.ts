import { z } from 'zod'
import { extrasSchema, figureSchema, finite, idSchema, longText, notNegative, pointSchema, positive, shortText, unknownFigure } from '../parts.ts'

/** The layout itself: one a document, fixed id `layout`. layoutId is constant for life and names the stored work. */
export const layoutSchema = z.strictObject({
  id: z.literal('layout:this'),
  kind: z.literal('layout'),
  layoutId: z.string().min(4).max(80),
  title: shortText,
  displayUnits: z.enum(['feetInches', 'metric']),
  /** Per quantity override of the display system, e.g. { pressure: 'metric' }. */
  unitOverrides: z.record(z.string().max(40), z.enum(['feetInches', 'metric'])),
  profile: z.enum(['US', 'metric-generic']),
  /** Direction of north in the site frame, counter-clockwise from +x; null: not said. */
  northRad: finite.nullable(),
  /** Large map coordinates keep their origin here; the site frame stays near zero. */
  mapOrigin: z.strictObject({ eastM: finite, northM: finite }).nullable(),
  revision: z.string().min(1).max(4),
  note: longText.nullable(),
  extras: extrasSchema,
})
export type LayoutRecord = z.infer<typeof layoutSchema>

export const materials = ['PE4710', 'PE3608', 'PE2708', 'PE100', 'PE80'] as const
export const pullEditions = ['F1804', 'handbookCh12', 'ppi2015'] as const
const minuteOfDay = z.number().min(0).max(1440)
export const noseHolds = ['slung', 'sled', 'lifted', 'free'] as const

/** The job: one a document, fixed id. Unknown is null, shown as CHECK with what is missing. */
export const jobSchema = z.strictObject({
  id: z.literal('job:this'),
  kind: z.literal('job'),
  pipe: z.strictObject({ system: z.enum(['IPS', 'DIPS', 'metric']), size: z.string().min(1).max(10), dr: positive, material: z.enum(materials) }).nullable(),
  stickLengthM: positive.nullable(),
  otherStickLengthM: positive.nullable(),
  neededLengthM: positive.nullable(),
  tailsM: notNegative,
  /** Length lost at each joint; null value: the house table by size. */
  jointLossM: figureSchema,
  wallTemperatureC: figureSchema,
  /** Lowest and highest wall temperature expected, for growth. */
  temperatureSwingC: figureSchema,
  /** How the first stick comes to the exit side. */
  firstStick: z.enum(['setByLoader', 'fedThrough']),
  /** How the nose is held while pulled; null counts as slung with a CHECK. */
  noseHold: z.enum(noseHolds).nullable(),
  /** The machine stands and the string is pulled out, or it travels along sticks strung on the right-of-way. */
  method: z.enum(['stationary', 'walking']),
  /** Bow of a stick as it comes: height of its arc over the chord between its ends. */
  stickBowM: figureSchema,
  /** How the sticks are turned about their own axis: 0 = ends up (middle down), counter-clockwise seen looking down-string; null: nobody turns them. */
  stickBowTurnRad: finite.nullable(),
  /** Height of the bottom of a slung nose above the ground. */
  slingHeightM: figureSchema,
  /** Which published rule gives the allowable tensile load, and how long a pull takes, stops included (null value: under an hour). */
  pullEdition: z.enum(pullEditions),
  pullDurationH: figureSchema,
  /** Arch over which the string enters a bore, on level ground; null: none planned. Unknown parts are null. */
  arch: z.strictObject({
    /** Pipe below the level where it enters. */
    entryAngleRad: z.number().positive().max(Math.PI / 2).nullable(),
    /** Radius it is lifted to; null: the least by DR or by the owner, whichever is more. */
    radiusM: positive.nullable(),
    /** Least radius the owner asks for, in OD; null: nothing asked beyond the table. */
    ownerTimesOd: positive.nullable(),
    /** Bottom of the pipe above the ground on the rollers behind the arch; null: the height of the last roller. */
    rollerHeightM: notNegative.nullable(),
    /** Distance of slings or rollers along the arch. */
    supportSpacingM: positive.nullable(),
  }).nullable(),
  /** Working hours in minutes after midnight, and breaks; null: not said. */
  clock: z.strictObject({
    startMin: minuteOfDay.nullable(),
    endMin: minuteOfDay.nullable(),
    breaks: z.array(z.strictObject({ atMin: minuteOfDay, lengthMin: z.number().min(0).max(600) })).max(8),
  }),
  /** The operator's own qualified procedure in place of the published tables; null: the tables. */
  procedure: z.strictObject({
    name: shortText,
    heaterC: figureSchema,
    soakS: figureSchema,
    openCloseS: figureSchema,
    coolS: figureSchema,
    holdBeforePullS: figureSchema,
    interfacialPressurePa: figureSchema,
    beadM: figureSchema,
  }).nullable(),
  /** What is said on the phone when somebody is hurt: where, where to meet, who calls (a role). */
  dispatch: z.strictObject({ address: shortText.nullable(), muster: shortText.nullable(), caller: shortText.nullable() }),
  /** How the finished line is tested here at the tie-in; null: nobody has said. Air is not a choice. */
  test: z.enum(['none', 'water']).nullable(),
  /** How far the engineer keeps everybody from the line under test. */
  testStandOffM: figureSchema,
  note: longText.nullable(),
  extras: extrasSchema,
})
export type JobRecord = z.infer<typeof jobSchema>

/** The part of a job that a new yard says nothing about. */
export const jobUnsaid = (): Pick<JobRecord, 'method' | 'stickBowM' | 'stickBowTurnRad' | 'slingHeightM' | 'pullEdition' | 'pullDurationH' | 'arch' | 'clock' | 'procedure' | 'dispatch' | 'test' | 'testStandOffM'> => ({
  method: 'stationary', stickBowM: unknownFigure(), stickBowTurnRad: null, slingHeightM: unknownFigure(), pullEdition: 'F1804', pullDurationH: unknownFigure(),
  arch: null, clock: { startMin: null, endMin: null, breaks: [] }, procedure: null, dispatch: { address: null, muster: null, caller: null }, test: null, testStandOffM: unknownFigure(),
})

/** A set-up: the datum nail, the axis through it and the pitch of the machine. The axis is this line, not an object. */
export const setUpSchema = z.strictObject({
  id: idSchema,
  kind: z.literal('setUp'),
  name: shortText,
  datum: pointSchema,
  /** Direction of exit, counter-clockwise from +x of the site. */
  headingRad: finite,
  /** Pitch of the machine: rise per run down-string, as an angle; null: follows the fall of the ground under the axis. */
  pitchRad: finite.nullable(),
  /** Fall of the ground along the axis where no levels say better: drop per length down-string, positive = falls to the exit; null: unknown. */
  fallRatio: finite.nullable(),
  /** The same across the axis, positive = falls to the right looking down-string; null: unknown. */
  crossFallRatio: finite.nullable(),
  /** Ground level at the datum in the site's level book; null: the datum is zero. */
  groundLevelM: finite.nullable(),
  note: longText.nullable(),
  extras: extrasSchema,
})
export type SetUpRecord = z.infer<typeof setUpSchema>

export const surfaces = ['gravel', 'grass', 'wetGrass', 'asphalt', 'concrete', 'clay', 'sand', 'mat', 'liner'] as const
export type Surface = (typeof surfaces)[number]

/** The pull path: starts at the set-up's datum along the axis; vertices lie beyond the exit, each rounded by its radius. */
export const runSchema = z.strictObject({
  id: idSchema,
  kind: z.literal('run'),
  setUpId: idSchema,
  name: shortText,
  /** Vertices after the first straight leg, site frame. */
  vertices: z.array(z.strictObject({ xM: finite, yM: finite, radiusM: positive.nullable() })).max(200),
  /** Surface by leg; leg 0 is the axis. Missing legs repeat the last one; null: unknown. */
  surfaces: z.array(z.enum(surfaces).nullable()).max(201),
  targetId: idSchema.nullable(),
  note: longText.nullable(),
  extras: extrasSchema,
})
export type RunRecord = z.infer<typeof runSchema>

/** A string. An empty list of strings means one, derived from the job. */
export const stringSchema = z.strictObject({
  id: idSchema,
  kind: z.literal('string'),
  setUpId: idSchema,
  runId: idSchema,
  name: shortText,
  /** null: work it out. */
  stickCount: z.number().int().min(1).max(2000).nullable(),
  /** Row it is parked in beside the line once it is made, 1 next to the line; null: not said, 0: it stays on the line. */
  parkingRow: z.number().int().min(0).max(50).nullable(),
  /** Side of the row, looking down-string. */
  parkingSide: z.enum(['left', 'right']),
  order: z.number().int().min(0).max(200),
  joinedToId: idSchema.nullable(),
  note: longText.nullable(),
  extras: extrasSchema,
})
export type StringRecord = z.infer<typeof stringSchema>
