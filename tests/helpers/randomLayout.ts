import type { YardDocument, YardRecord } from '../../src/scene/document.ts'
import type { PlacedKind } from '../../src/scene/kinds/index.ts'
import type { HeightRule, Place } from '../../src/scene/parts.ts'
import { surfaces } from '../../src/scene/records/frame.ts'
import { documentOf, free, item, job, layout, onRun, run, setUp } from './documents.ts'

type Random = () => number
const between = (random: Random, low: number, high: number): number => low + (high - low) * random()
const pick = <T>(random: Random, of: readonly T[]): T => of[Math.floor(random() * of.length)]!
const maybe = <T>(random: Random, chance: number, value: T): T | null => (random() < chance ? value : null)

/** A random layout, over what a person can do with the app, sense or not: gear out of line, at odd heights, on odd ground. */
export function randomLayout(random: Random): YardDocument {
  const records: YardRecord[] = []
  let count = 0
  const stickM = pick(random, [6, 12, 12.192, 13.5, 15.24])
  const reachM = between(random, 1, 9) * stickM
  const put = (kind: PlacedKind, at: Place | { xM: number; yM: number }[], over: Record<string, unknown> = {}): void => {
    count += 1
    records.push(item(kind, `${kind}:r${count}`, at, over) as YardRecord)
  }
  const place = (lowM: number, highM: number): Place =>
    random() < 0.15
      ? free(between(random, lowM, highM), between(random, -12, 12), between(random, -Math.PI, Math.PI))
      : onRun(between(random, lowM, highM), { offsetM: random() < 0.8 ? 0 : between(random, -1, 1), turnRad: random() < 0.9 ? 0 : between(random, -0.3, 0.3) })
  const height = (): HeightRule => pick<HeightRule>(random, [{ rule: 'onAxis' }, { rule: 'onAxis' }, { rule: 'belowAxis', dropM: between(random, -0.3, 0.9) }, { rule: 'aboveGround', saddleM: between(random, 0, 1.4) }, { rule: 'unknown' }])
  const line = (points: number): { xM: number; yM: number }[] => {
    const start = { xM: between(random, -30, reachM), yM: between(random, -30, 30) }
    return Array.from({ length: points }, (_, i) => ({ xM: start.xM + i * between(random, -20, 20), yM: start.yM + i * between(random, -20, 20) }))
  }

  if (random() < 0.95) put('machine', onRun(random() < 0.9 ? 0 : between(random, -1, 1)), { carriageSide: pick(random, ['infeed', 'exit']) })
  if (random() < 0.8) put('rack', place(-30, -2), { height: height(), stopsLeft: pick(random, [true, false, null]), stopsRight: pick(random, [true, false, null]), stickCount: Math.floor(between(random, 0, 9)), openSide: pick(random, ['L', 'R']) })
  for (let i = Math.floor(random() * 8); i > 0; i -= 1) put('stand', place(-30, reachM), { height: height(), roller: pick(random, ['flat', 'V', 'cradle']), landingAid: pick(random, ['none', 'none', 'liftByHand', 'liftByLoader', 'ramp']) })
  const spacingM = between(random, 1, 9)
  for (let at = between(random, 5, 40); at < reachM && random() < 0.97; at += spacingM) put('roller', onRun(at), random() < 0.9 ? {} : { height: height() })
  if (random() < 0.7) put('puller', place(5, reachM + 20), { pullerKind: pick(random, ['tractor', 'loader', 'winch']), guardedCab: pick(random, [true, false, null]) })
  if (random() < 0.4) put('anchor', place(-10, 5))
  if (random() < 0.6) put('loader', free(between(random, -25, 10), between(random, -15, 15), between(random, -3, 3)))
  if (random() < 0.3) put('offload', free(between(random, -40, 10), between(random, -25, 25), between(random, -3, 3)))
  for (let i = Math.floor(random() * 8); i > 0; i -= 1) put('level', free(between(random, -30, reachM), between(random, -15, 15)), { figures: { levelM: { value: maybe(random, 0.9, between(random, -1.5, 1)), basis: 'measured' } } })
  for (let i = Math.floor(random() * 5); i > 0; i -= 1) put('crew', place(-20, reachM), { role: pick(random, ['operator', 'infeedHand', 'exitHand', 'noseSpotter', 'pullerOperator', 'loaderOperator', 'other']) })
  if (random() < 0.6) put('boundary', [{ xM: -40, yM: -20 }, { xM: reachM + between(random, -20, 40), yM: -20 }, { xM: reachM + 10, yM: 20 }, { xM: -40, yM: 20 }])
  for (const kind of ['building', 'water', 'zone'] as const) if (random() < 0.3) put(kind, line(3 + Math.floor(random() * 4)))
  for (const kind of ['fence', 'road', 'walkway', 'trench', 'overheadLine', 'lane'] as const) if (random() < 0.3) put(kind, line(2 + Math.floor(random() * 3)))
  for (let i = Math.floor(random() * 3); i > 0; i -= 1) put('tree', free(between(random, -30, reachM), between(random, -20, 20)))
  // Figures of the gear: some typed, some unknown.
  const typed = records.map((record) => withRandomFigures(random, record))
  return documentOf(randomLayoutRecord(random), randomJob(random, stickM), randomSetUp(random), randomRun(random, reachM), ...typed)
}

const randomLayoutRecord = (random: Random): YardRecord => layout({ displayUnits: pick(random, ['feetInches', 'metric']) })

function randomJob(random: Random, stickM: number): YardRecord {
  const pipe = random() < 0.5
    ? { system: 'IPS' as const, size: pick(random, ['2', '4', '6', '8', '10', '12', '18', '24', '36', '54', '65']), dr: pick(random, [7, 9, 11, 13.5, 17, 21, 26, 32.5]), material: pick(random, ['PE4710', 'PE3608', 'PE2708'] as const) }
    : { system: 'metric' as const, size: pick(random, ['63', '110', '160', '315', '450', '630', '1000', '1200']), dr: pick(random, [11, 17, 21, 26]), material: pick(random, ['PE100', 'PE80'] as const) }
  return job({
    pipe: maybe(random, 0.95, pipe),
    stickLengthM: maybe(random, 0.95, stickM),
    otherStickLengthM: maybe(random, 0.3, 15.24),
    neededLengthM: maybe(random, 0.85, between(random, 1, 12) * stickM),
    jointLossM: { value: maybe(random, 0.5, between(random, 0, 0.06)), basis: 'measured' },
    wallTemperatureC: { value: maybe(random, 0.7, between(random, -35, 65)), basis: 'measured' },
    temperatureSwingC: { value: maybe(random, 0.5, between(random, 0, 50)), basis: 'measured' },
    firstStick: pick(random, ['setByLoader', 'fedThrough'] as const),
    noseHold: pick(random, ['slung', 'sled', 'lifted', 'free', null] as const),
  })
}

const randomSetUp = (random: Random): YardRecord => setUp({
  datum: { xM: 0, yM: 0 }, headingRad: random() < 0.6 ? 0 : between(random, -3, 3), pitchRad: maybe(random, 0.3, between(random, -0.06, 0.06)),
  fallRatio: maybe(random, 0.7, random() < 0.5 ? 0 : between(random, -0.12, 0.12)), crossFallRatio: maybe(random, 0.5, between(random, -0.08, 0.08)), groundLevelM: maybe(random, 0.2, between(random, -1, 1)),
})

const randomRun = (random: Random, reachM: number): YardRecord => run({
  vertices: random() < 0.7 ? [] : Array.from({ length: 1 + Math.floor(random() * 3) }, (_, i) => ({ xM: (reachM * (i + 1)) / 3, yM: between(random, -25, 25), radiusM: maybe(random, 0.8, between(random, 1, 60)) })),
  surfaces: random() < 0.2 ? [] : Array.from({ length: 1 + Math.floor(random() * 2) }, () => maybe(random, 0.8, pick(random, surfaces))),
})

function withRandomFigures(random: Random, record: YardRecord): YardRecord {
  if (!('figures' in record)) return record
  const figures = Object.fromEntries(Object.entries(record.figures as Record<string, { value: number | null; basis: string }>).map(([name, figure]) => {
    if (record.kind === 'level') return [name, figure]
    if (random() < 0.08) return [name, { ...figure, value: null }]
    if (figure.value === null) return [name, { ...figure, value: maybe(random, 0.4, name.endsWith('N') ? between(random, 500, 60_000) : between(random, 0.3, 9)), basis: 'plate' }]
    return [name, random() < 0.8 ? figure : { ...figure, value: figure.value * between(random, 0.6, 1.6) }]
  }))
  return { ...record, figures } as YardRecord
}
