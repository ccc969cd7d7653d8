/**
 * Random layouts to the edge of what a file may hold: every size of the tables and some that are in none, supports in one
 * place, figures far out, inputs missing, cases laid over the plan.
 */
import type { DeriveOptions } from '../../src/derive/whatIf.ts'
import { JOB_ID, type YardDocument, type YardRecord } from '../../src/scene/document.ts'
import { phases, type Figure, type HeightRule, type Place } from '../../src/scene/parts.ts'
import type { JobRecord, SetUpRecord } from '../../src/scene/records/frame.ts'
import { documentOf, item, layout, onItem, onRun, run, setUp } from './documents.ts'
import { randomLayout } from './randomLayout.ts'

type Random = () => number
const between = (random: Random, low: number, high: number): number => low + (high - low) * random()
const pick = <T>(random: Random, of: readonly T[]): T => of[Math.floor(random() * of.length)]!

/** Columns of shared/tables/pipe-sizes.json and metric-walls.json; the last of each is in none of them. */
const sizes = {
  IPS: ['2', '3', '4', '5', '6', '8', '10', '12', '14', '16', '18', '20', '22', '24', '26', '28', '30', '32', '34', '36', '42', '48', '54', '63', '65', '7'],
  DIPS: ['3', '4', '6', '8', '10', '12', '14', '16', '18', '20', '24', '30', '36', '42', '48', '2'],
  metric: ['63', '75', '90', '110', '125', '160', '200', '250', '315', '400', '500', '630', '800', '1000', '1200', '100'],
} as const
const ratios = [7, 7.3, 9, 11, 13.5, 17, 21, 26, 32.5, 41] as const

export interface VariedCase {
  document: YardDocument
  options: DeriveOptions
}

/** One layout and the case it is derived in. Valid as a file. */
export function variedCase(random: Random): VariedCase {
  let document = random() < 0.25 ? sensibleLayout(random) : randomLayout(random)
  for (const [chance, change] of changes) if (random() < chance) document = change(random, document)
  return { document, options: random() < 0.25 ? randomCase(random, document) : {} }
}

type Change = (random: Random, document: YardDocument) => YardDocument

const withRecords = (document: YardDocument, ...records: readonly YardRecord[]): YardDocument => ({ records: { ...document.records, ...Object.fromEntries(records.map((record) => [record.id, record])) } })
const withJob = (document: YardDocument, over: Partial<JobRecord>): YardDocument => withRecords(document, { ...(document.records[JOB_ID] as JobRecord), ...over })
const supportsIn = (document: YardDocument): YardRecord[] => Object.values(document.records).filter(({ kind }) => kind === 'stand' || kind === 'roller' || kind === 'rack')

const changes: readonly (readonly [number, Change])[] = [
  [0.8, anyPipe], [0.3, coincident], [0.25, farOut], [0.2, steep], [0.15, something(isLeftOut)], [0.3, finerJob], [0.15, limitsChanged], [0.15, measured], [0.1, zonesChanged], [0.12, longString],
  [0.06, onEachOther], [0.25, peopleGear], [0.05, twoSetUps], [0.06, pathOddly], [0.2, oneSurfaceMore],
  [0.25, storesAndPits], [0.15, severalStrings], [0.15, archAsked], [0.1, walks], [0.25, hours],
]

/** What the people checks look at: fuel, plate, generator and shelter near each other, lanes, two languages on the crew. */
function peopleGear(random: Random, document: YardDocument): YardDocument {
  const near = (): Place => onRun(between(random, -20, 40), { offsetM: between(random, -12, 12) })
  const line = (): { xM: number; yM: number }[] => [0, 1].map(() => ({ xM: between(random, -30, 60), yM: between(random, -15, 15) }))
  const unsaid = <T>(value: T): T | null => (random() < 0.3 ? null : value)
  return withRecords(
    document,
    item('fuel', 'fuel:people', near(), { amount: unsaid(pick(random, ['upTo5Gal', 'over5Gal'])) }),
    item('extinguisher', 'extinguisher:people', near(), { rating: unsaid(pick(random, ['10B', '20B', 'other'])) }),
    item('plateHolder', 'plateHolder:people', near()),
    item('generator', 'generator:people', near(), { isRunning: unsaid(true) }),
    item('shelter', 'shelter:people', near()),
    item('emergencyLane', 'emergencyLane:people', line(), { gapPlan: unsaid(random() < 0.5) }),
    item('trafficLane', 'trafficLane:people', line(), { closed: unsaid(true) }),
    item('crew', 'crew:people1', near(), { role: 'exitHand', phases: ['fuse'], language: 'en' }),
    item('crew', 'crew:people2', near(), { role: 'operator', phases: ['fuse'], language: 'es' }),
    item('muster', 'muster:people', near()),
  )
}

/** Stores, cuts, vents, pits: what the checks of the gear's own zones look at. */
function storesAndPits(random: Random, document: YardDocument): YardDocument {
  const near = (): Place => onRun(between(random, -20, 60), { offsetM: between(random, -14, 14) })
  const unsaid = <T>(value: T): T | null => (random() < 0.3 ? null : value)
  const stack = item('stack', 'stack:s', near(), { chocked: unsaid(random() < 0.5) }) as Extract<YardRecord, { kind: 'stack' }>
  const pit = item('trench', 'trench:pit', [{ xM: 0, yM: -9 }, { xM: between(random, 2, 40), yM: -9 }], { isPit: true }) as Extract<YardRecord, { kind: 'trench' }>
  return withRecords(
    document,
    { ...stack, figures: { ...stack.figures, rowCount: { value: unsaid(1 + Math.floor(random() * 9)), basis: 'measured' } } },
    { ...pit, figures: { ...pit.figures, depthM: { value: unsaid(between(random, 0.5, 5)), basis: 'measured' } } },
    item('trailer', 'trailer:s', near(), { isLoaded: unsaid(true) }),
    item('cuttingPlace', 'cuttingPlace:s', near(), { bothSidesHeld: unsaid(random() < 0.5) }),
    item('vent', 'vent:s', near(), { isClear: unsaid(true) }),
    item('redirectBlock', 'redirectBlock:s', near()),
    item('barrier', 'barrier:s', [{ xM: -20, yM: 12 }, { xM: 40, yM: 12 }], { stopsPipe: unsaid(true) }),
  )
}

/** Two to four strings of the first set-up, counted or not, parked or not. */
function severalStrings(random: Random, document: YardDocument): YardDocument {
  const setUpId = Object.values(document.records).find(({ kind }) => kind === 'setUp')?.id
  const runId = Object.values(document.records).find((record) => record.kind === 'run' && record.setUpId === setUpId)?.id
  if (setUpId === undefined || runId === undefined) return document
  const count = 2 + Math.floor(random() * 3)
  return withRecords(document, ...Array.from({ length: count }, (_, i): YardRecord => ({
    id: `string:v${i}`, kind: 'string', setUpId, runId, name: '', stickCount: random() < 0.5 ? null : 1 + Math.floor(random() * 12), parkingRow: pick(random, [null, 0, 1, 2]),
    parkingSide: pick(random, ['left', 'right'] as const), order: i, joinedToId: i === 0 ? null : `string:v${i - 1}`, note: null,
  })))
}

function archAsked(random: Random, document: YardDocument): YardDocument {
  const unsaid = (value: number): number | null => (random() < 0.3 ? null : value)
  return withJob(document, { arch: { entryAngleRad: unsaid(between(random, 0.02, 0.6)), radiusM: unsaid(between(random, 3, 80)), ownerTimesOd: unsaid(between(random, 20, 60)), rollerHeightM: unsaid(between(random, 0, 1)), supportSpacingM: unsaid(between(random, 2, 9)) } })
}

/** Working hours and breaks, some of them the wrong way round. */
function hours(random: Random, document: YardDocument): YardDocument {
  const at = (low: number, high: number): number | null => (random() < 0.25 ? null : Math.round(between(random, low, high)))
  return withJob(document, { clock: { startMin: at(240, 1000), endMin: at(600, 1440), breaks: random() < 0.5 ? [] : [{ atMin: 720, lengthMin: Math.round(between(random, 0, 120)) }] } })
}

function walks(_random: Random, document: YardDocument): YardDocument {
  return withJob(document, { method: 'walking' })
}

function anyPipe(random: Random, document: YardDocument): YardDocument {
  const system = pick(random, ['IPS', 'IPS', 'DIPS', 'metric'] as const)
  return withJob(document, { pipe: { system, size: pick<string>(random, sizes[system]), dr: pick(random, ratios), material: pick(random, system === 'metric' ? (['PE100', 'PE80'] as const) : (['PE4710', 'PE3608', 'PE2708'] as const)) } })
}

/** Supports set on, or a hair beside, others, at another height. */
function coincident(random: Random, document: YardDocument): YardDocument {
  const others = supportsIn(document)
  if (others.length === 0) return document
  const twins = Array.from({ length: 1 + Math.floor(random() * 3) }, (_, i): YardRecord => {
    const of = pick(random, others)
    const place = 'place' in of ? of.place : onRun(0)
    const aside = pick(random, [0, 1e-9, 1e-6, 1e-4, 0.01, 0.019, 0.021])
    const at: Place = place.at === 'onRun' ? { ...place, runningM: place.runningM + aside } : place
    const height = pick<HeightRule>(random, [{ rule: 'onAxis' }, { rule: 'aboveGround', saddleM: between(random, 0, 1.2) }, { rule: 'belowAxis', dropM: between(random, -0.02, 0.02) }])
    return item(pick(random, ['stand', 'roller'] as const), `stand:twin${i}`, at, { height })
  })
  return withRecords(document, ...twins)
}

/** Figures no plate ever showed: nothing, tiny, huge, below zero. */
function farOut(random: Random, document: YardDocument): YardDocument {
  const changed = Object.values(document.records).flatMap((record): YardRecord[] => {
    if (!('figures' in record) || random() < 0.6) return []
    const figures = Object.fromEntries(Object.entries(record.figures as Record<string, Figure>).map(([name, figure]) => [name, random() < 0.3 ? { ...figure, value: far(random, figure.value ?? 1) } : figure]))
    return [{ ...record, figures } as YardRecord]
  })
  return withRecords(document, ...changed)
}
const far = (random: Random, value: number): number => pick(random, [0, -value, value / 1000, value * 10, value * 1000, 1e-9, 1e6])

function steep(random: Random, document: YardDocument): YardDocument {
  const tilted = (record: SetUpRecord): SetUpRecord => ({ ...record, fallRatio: between(random, -0.7, 0.7), crossFallRatio: between(random, -0.5, 0.5), pitchRad: random() < 0.5 ? null : between(random, -0.4, 0.4), headingRad: between(random, -7, 7) })
  const levels = Array.from({ length: Math.floor(random() * 10) }, (_, i) => item('level', `level:steep${i}`, { at: 'free', xM: between(random, -30, 90), yM: between(random, -10, 10), headingRad: 0 }, { figures: { levelM: { value: between(random, -8, 8), basis: 'measured' } } }))
  return withRecords(document, ...Object.values(document.records).filter((record) => record.kind === 'setUp').map(tilted), ...levels)
}

function something(isGone: (random: Random, record: YardRecord) => boolean): Change {
  return (random, document) => documentOf(...Object.values(document.records).filter((record) => !isGone(random, record)))
}
function isLeftOut(random: Random, record: YardRecord): boolean {
  // A run without its set-up, or an item on a run that is gone, is no valid file: what is left out hangs nothing on it.
  return record.kind !== 'layout' && record.kind !== 'job' && record.kind !== 'setUp' && record.kind !== 'run' && random() < 0.3
}

const figure = (random: Random, low: number, high: number): Figure => {
  const value = random() < 0.3 ? null : between(random, low, high)
  return value === null || random() < 0.7 ? { value, basis: 'measured' } : { value, basis: 'measured', band: { low: value - Math.abs(value) / 4, likely: value, high: value + Math.abs(value) / 3 } }
}

function finerJob(random: Random, document: YardDocument): YardDocument {
  return withJob(document, {
    method: pick(random, ['stationary', 'walking'] as const), stickBowM: figure(random, -0.05, 0.4), stickBowTurnRad: random() < 0.5 ? null : between(random, -7, 7), slingHeightM: figure(random, 0, 3),
    pullEdition: pick(random, ['F1804', 'handbookCh12', 'ppi2015'] as const), pullDurationH: figure(random, 0, 30), wallTemperatureC: figure(random, -60, 90), temperatureSwingC: figure(random, 0, 90), jointLossM: figure(random, 0, 2),
    tailsM: random() < 0.5 ? 0 : between(random, 0, 20), firstStick: pick(random, ['setByLoader', 'fedThrough'] as const), noseHold: pick(random, ['slung', 'sled', 'lifted', 'free', null] as const),
    stickLengthM: pick(random, [null, 0.8, 3, 6, 12, 12.192, 15.24, 18.3, 24.4, 60]),
  })
}

const limitIds = ['jaw-effort', 'face-gap', 'offset-change', 'sag-span', 'nose-lead-in', 'hand-lift', 'stand-load', 'path-clearance', 'rack-load', 'bend-radius', 'pull-share', 'trench-edge', 'overhead', 'growth-gap', 'end-room', 'grip-firm'] as const
function limitsChanged(random: Random, document: YardDocument): YardDocument {
  const change = (i: number): YardRecord => ({ id: `limitChange:r${i}`, kind: 'limitChange', limitId: pick(random, limitIds), bound: pick(random, ['check', 'fix'] as const), value: pick(random, [0, -1, 1e-6, 0.3, 2, 50, 1e6]), reason: 'soak', who: 'crew', when: '2025-06-03T14:32:00.000Z' })
  return withRecords(document, ...Array.from({ length: 1 + Math.floor(random() * 4) }, (_, i) => change(i)))
}

/** Heights the crew measured, for the case as set. */
function measured(random: Random, document: YardDocument): YardDocument {
  return withRecords(document, ...supportsIn(document).filter(() => random() < 0.5).map((of, i): YardRecord => ({
    id: `asSet:m${i}`, kind: 'asSet', itemId: of.id, saddleM: random() < 0.8 ? between(random, 0, 1.3) : null, farSaddleM: of.kind !== 'rack' || random() < 0.5 ? null : between(random, 0, 1.3), isTicked: random() < 0.3, isFarTicked: random() < 0.2, offsetM: random() < 0.5 ? null : between(random, -0.2, 0.2), runningM: null, when: '2025-06-03T14:32:00.000Z',
  })))
}

function zonesChanged(random: Random, document: YardDocument): YardDocument {
  const owners = Object.keys(document.records)
  const change = (i: number): YardRecord => ({
    id: `zoneChange:r${i}`, kind: 'zoneChange', zoneKey: `Z-${String(1 + Math.floor(random() * 16)).padStart(2, '0')}@${pick(random, owners)}`, marginM: random() < 0.5 ? null : between(random, -1, 4),
    points: random() < 0.7 ? null : [{ xM: 0, yM: 0 }, { xM: 9, yM: 0 }, { xM: 9, yM: 9 }], zoneClass: pick(random, ['RED', 'AMBER', 'BLUE', null] as const), phases: random() < 0.5 ? null : phases.filter(() => random() < 0.5), reason: 'soak',
  })
  return withRecords(document, ...Array.from({ length: 3 }, (_, i) => change(i)))
}

/** A string of many sticks over a row of rollers; or one nobody could pull. */
function longString(random: Random, document: YardDocument): YardDocument {
  const sticks = random() < 0.9 ? between(random, 10, 50) : between(random, 100, 2000)
  const spacingM = between(random, 2, 12)
  const rollers = Array.from({ length: Math.floor(random() * 60) }, (_, i) => item('roller', `roller:long${i}`, onRun(20 + i * spacingM + between(random, -0.3, 0.3))))
  return withRecords(withJob(document, { neededLengthM: sticks * 12, stickLengthM: 12.192 }), ...rollers)
}

/** Items that hang on other items, and turn with them. */
function onEachOther(random: Random, document: YardDocument): YardDocument {
  const hosts = Object.values(document.records).filter((record) => record.kind === 'machine' || record.kind === 'rack' || record.kind === 'stand')
  if (hosts.length === 0) return document
  return withRecords(document, ...Array.from({ length: 4 }, (_, i) => item(pick(random, ['crew', 'stand', 'anchor', 'level'] as const), `crew:on${i}`, onItem(pick(random, hosts).id, between(random, -3, 3), between(random, -3, 3), between(random, -2, 2)))))
}

function twoSetUps(random: Random, document: YardDocument): YardDocument {
  const second = setUp({ id: 'setUp:2', name: 'second', datum: { xM: between(random, -50, 90), yM: between(random, -20, 20) }, headingRad: between(random, -3, 3), fallRatio: 0 })
  return withRecords(document, second, run({ id: 'run:2', setUpId: 'setUp:2' }), item('machine', 'machine:2', { at: 'onRun', runId: 'run:2', runningM: 0, offsetM: 0, turnRad: 0 }, { setUpId: 'setUp:2' }))
}

/** Paths that turn back, stand still, or bend on the spot. */
function pathOddly(random: Random, document: YardDocument): YardDocument {
  const vertex = { xM: between(random, -20, 60), yM: between(random, -20, 20), radiusM: pick(random, [null, 1e-6, 0.5, 20, 1e5]) }
  const vertices = pick(random, [[vertex, vertex], [vertex, { xM: 0, yM: 0, radiusM: 5 }], [{ ...vertex, xM: 0, yM: 0 }], [{ xM: -30, yM: 0, radiusM: 3 }, vertex], Array.from({ length: 12 }, (_, i) => ({ xM: 8 * i + 5, yM: (i % 2) * 6, radiusM: 3 }))])
  const record = document.records['run:1']
  return record?.kind === 'run' ? withRecords(document, { ...record, vertices }) : document
}

function oneSurfaceMore(random: Random, document: YardDocument): YardDocument {
  const record = document.records['run:1']
  return record?.kind === 'run' ? withRecords(document, { ...record, surfaces: [pick(random, ['gravel', 'grass', 'wetGrass', 'concrete', 'sand', 'mat', null] as const), pick(random, ['clay', 'asphalt', 'liner', null] as const)] }) : document
}

/** A yard as a good crew sets it, so that what is met comes up too. */
function sensibleLayout(random: Random): YardDocument {
  const stickM = pick(random, [12.192, 15.24])
  const sticks = 2 + Math.floor(random() * 14)
  const stands = [4, 8.5].map((at, i) => item('stand', `stand:e${i}`, onRun(at), { height: { rule: 'onAxis' }, figures: { ...standFigures, ratedLoadN: { value: 60_000, basis: 'plate' } } }))
  const spacingM = between(random, 1.5, 6)
  const rollers = Array.from({ length: Math.floor((sticks * stickM - 14) / spacingM) }, (_, i) => item('roller', `roller:g${i}`, onRun(13 + i * spacingM)))
  const crew = (['operator', 'infeedHand', 'exitHand', 'noseSpotter', 'pullerOperator'] as const).map((role, i) => item('crew', `crew:g${i}`, onRun(between(random, -8, 20), { offsetM: between(random, 2.5, 6) * (random() < 0.8 ? -1 : 1) }), { role, phases: phases.filter(() => random() < 0.6) }))
  const records = [
    item('machine', 'machine:g', onRun(0)), item('rack', 'rack:g', onRun(-stickM / 2 - 0.5), { stopsLeft: true, stopsRight: true, stickCount: 4, figures: { ...rackFigures, ratedLoadN: { value: 90_000, basis: 'plate' } } }), ...stands, ...rollers,
    item('puller', 'puller:g', onRun(sticks * stickM + 12), { guardedCab: true }), item('loader', 'loader:g', { at: 'free', xM: -8, yM: between(random, 9, 15), headingRad: 0 }),
    item('boundary', 'boundary:g', [{ xM: -60, yM: -40 }, { xM: sticks * stickM + 90, yM: -40 }, { xM: sticks * stickM + 90, yM: 40 }, { xM: -60, yM: 40 }]), ...crew,
    ...(random() < 0.5 ? [item('overheadLine', 'overheadLine:g', [{ xM: -50, yM: 25 }, { xM: 90, yM: 25 }], { figures: { voltageV: { value: 13_800, basis: 'measured' }, lowestHeightM: { value: 9, basis: 'measured' } } })] : []),
    ...(random() < 0.4 ? [item('trench', 'trench:g', [{ xM: -10, yM: -9 }, { xM: 80, yM: -9 }], { figures: { widthM: { value: 1.2, basis: 'measured' }, depthM: { value: 1.5, basis: 'measured' } } })] : []),
    ...(random() < 0.4 ? [item('anchor', 'anchor:g', onRun(9, { offsetM: 1 }), { figures: { ratedHoldN: { value: 80_000, basis: 'plate' }, tetherLengthM: { value: 6, basis: 'typical' } } })] : []),
  ] as YardRecord[]
  const job = randomLayout(random).records[JOB_ID] as JobRecord
  return documentOf(layout({ displayUnits: pick(random, ['feetInches', 'metric']) }), {
    ...job, stickLengthM: stickM, neededLengthM: sticks * stickM, wallTemperatureC: { value: between(random, 5, 30), basis: 'measured' }, temperatureSwingC: { value: between(random, 0, 20), basis: 'measured' },
  }, setUp({ fallRatio: random() < 0.5 ? 0 : between(random, -0.02, 0.02), crossFallRatio: 0 }), run({ surfaces: [pick(random, ['grass', 'gravel', 'sand'] as const)] }), ...records)
}
const standFigures = (item('stand', 'stand:x', onRun(0)) as { figures: Record<string, Figure> }).figures
const rackFigures = (item('rack', 'rack:x', onRun(0)) as { figures: Record<string, Figure> }).figures

function randomCase(random: Random, document: YardDocument): DeriveOptions {
  const items = supportsIn(document)
  const part = pick(random, ['low', 'likely', 'high', undefined] as const)
  return {
    variant: pick(random, ['planned', 'asSet'] as const),
    whatIf: {
      ...(random() < 0.5 ? { warmerC: between(random, -20, 25) } : {}), ...(random() < 0.3 && items.length > 0 ? { missing: [pick(random, items).id] } : {}), wetGrass: random() < 0.3,
      ...(random() < 0.3 ? { windMPerS: between(random, 0, 25) } : {}), ...(part === undefined ? {} : pick(random, [{ friction: part }, { modulus: part }, { temperature: part }])),
      ...(random() < 0.3 && items.length > 0 ? { sink: { itemId: pick(random, items).id, byM: between(random, -0.05, 0.1) } } : {}),
    },
  }
}
