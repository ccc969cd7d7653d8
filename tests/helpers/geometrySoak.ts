/** Seeded scenes: our distances and areas against an independent library, and against their own laws. */
import { overlapAreaM2 } from '../../src/geometry/buffer.ts'
import { type Shape, distanceBetween } from '../../src/geometry/distance.ts'
import { distanceM, type Vec } from '../../src/geometry/vector.ts'
import { oracleDistanceM, oracleOverlapM2 } from './jstsOracle.ts'
import { seededRandom } from './seededRandom.ts'

export interface GeometrySoakResult {
  readonly scenes: number
  /** How many scenes of each class were made. */
  readonly classes: Readonly<Record<string, number>>
  readonly worstDistanceM: number
  readonly worstAreaRatio: number
  /** Areas the library called invalid or failed on; they are counted, not compared. */
  readonly areasNotCompared: number
  readonly areasCompared: number
  /** One line for each scene that broke a rule: seed, class, what. */
  readonly failures: readonly string[]
}

interface Scene {
  readonly name: string
  readonly a: Shape
  readonly b: Shape
}

type Maker = (random: () => number) => Omit<Scene, 'name'>

const at = (xM: number, yM: number): Vec => ({ xM, yM })
const between = (random: () => number, low: number, high: number): number => low + random() * (high - low)
const whole = (random: () => number, low: number, high: number): number => Math.floor(between(random, low, high + 1))
const cloud = (random: () => number, count: number, sizeM: number): Vec[] =>
  Array.from({ length: count }, () => at(between(random, -sizeM, sizeM), between(random, -sizeM, sizeM)))
const gridCloud = (random: () => number, count: number): Vec[] => Array.from({ length: count }, () => at(whole(random, -4, 4), whole(random, -4, 4)))

/** A ring round a centre with its corners in order, so that it does not cross itself. */
function star(random: () => number, centre: Vec, count: number, sizeM: number): Vec[] {
  return Array.from({ length: count }, (_, i) => {
    const angleRad = (2 * Math.PI * (i + 0.8 * random())) / count
    const radiusM = between(random, 0.3, 1) * sizeM
    return at(centre.xM + radiusM * Math.cos(angleRad), centre.yM + radiusM * Math.sin(angleRad))
  })
}

function anyShape(random: () => number, points: readonly Vec[]): Shape {
  const first = points[0] as Vec
  const pick = random()
  if (pick < 0.2) return { kind: 'point', point: first }
  return { kind: pick < 0.6 ? 'polyline' : 'polygon', points }
}

const CLASSES: Readonly<Record<string, Maker>> = {
  apart: (r) => ({ a: anyShape(r, star(r, at(0, 0), whole(r, 3, 9), 10)), b: anyShape(r, star(r, at(30, 5), whole(r, 3, 9), 8)) }),
  overlapping: (r) => ({ a: anyShape(r, star(r, at(0, 0), whole(r, 3, 9), 10)), b: anyShape(r, star(r, at(6, 0), whole(r, 3, 9), 8)) }),
  contained: (r) => ({ a: { kind: 'polygon', points: star(r, at(0, 0), 12, 50) }, b: anyShape(r, star(r, at(0, 0), whole(r, 3, 6), 4)) }),
  selfCrossing: (r) => ({ a: anyShape(r, cloud(r, whole(r, 4, 8), 10)), b: anyShape(r, cloud(r, whole(r, 4, 8), 10)) }),
  grid: (r) => ({ a: anyShape(r, gridCloud(r, whole(r, 1, 6))), b: anyShape(r, gridCloud(r, whole(r, 1, 6))) }),
  collinear: (r) => ({
    a: anyShape(r, Array.from({ length: whole(r, 2, 5) }, () => at(whole(r, -6, 6), 0))),
    b: anyShape(r, Array.from({ length: whole(r, 2, 5) }, () => at(whole(r, -6, 6), r() < 0.5 ? 0 : 1))),
  }),
  zeroLength: (r) => ({ a: anyShape(r, Array.from({ length: 3 }, () => at(1, 2))), b: anyShape(r, star(r, at(whole(r, -5, 5), 2), 5, 4)) }),
  touching: (r) => {
    const points = star(r, at(0, 0), 6, 10)
    const corner = points[whole(r, 0, 5)] as Vec
    return { a: { kind: 'polygon', points }, b: anyShape(r, [corner, at(corner.xM * 3, corner.yM * 3), at(corner.xM * 3 + 1, corner.yM * 3)]) }
  },
  sharedEdge: (r) => {
    const points = star(r, at(0, 0), 6, 10)
    const [p, q] = [points[0] as Vec, points[1] as Vec]
    const far = at((p.xM + q.xM) * 2, (p.yM + q.yM) * 2)
    return { a: { kind: 'polygon', points }, b: { kind: r() < 0.5 ? 'polygon' : 'polyline', points: [q, p, far] } }
  },
  identical: (r) => {
    const points = star(r, at(0, 0), whole(r, 3, 8), 10)
    return { a: { kind: 'polygon', points }, b: anyShape(r, points.toReversed()) }
  },
  sliver: (r) => {
    const [x, y] = [between(r, -5, 5), between(r, -5, 5)]
    return { a: { kind: 'polygon', points: [at(-10, 0), at(10, 0), at(10, 1e-10)] }, b: anyShape(r, [at(x, y), at(x + 1, y), at(x, y + 1)]) }
  },
  farFromOrigin: (r) => {
    const shift = ({ xM, yM }: Vec): Vec => at(xM + 500_000, yM + 4_000_000)
    return { a: anyShape(r, star(r, at(0, 0), 7, 10).map(shift)), b: anyShape(r, star(r, at(12, 3), 7, 10).map(shift)) }
  },
  nearlyCoincident: (r) => {
    const points = star(r, at(0, 0), 6, 10)
    const turned = points.map(({ xM, yM }) => at(xM - 1e-9 * yM, yM + 1e-9 * xM))
    return { a: { kind: 'polygon', points }, b: { kind: r() < 0.5 ? 'polygon' : 'polyline', points: turned } }
  },
  long: (r) => ({ a: { kind: 'polyline', points: cloud(r, 60, 100) }, b: anyShape(r, star(r, at(120, 0), 50, 18)) }),
}

/** Double precision at map coordinates: a few units in the last place of 4,000,000 m. */
const DISTANCE_TOLERANCE_M = 1e-8
/** JTS flattens arcs to 64 pieces a quarter (area short by 1e-4 of the rounded parts), we to 2e-5. */
const AREA_TOLERANCE_RATIO = 3e-4

/** Runs `count` scenes, the classes by turns; scene i has the seed `seed + i`, so one can be run alone. */
export function runGeometrySoak({ seed, count }: { seed: number; count: number }): GeometrySoakResult {
  const names = Object.keys(CLASSES)
  const classes: Record<string, number> = {}
  const failures: string[] = []
  let [worstDistanceM, worstAreaRatio, areasNotCompared, areasCompared] = [0, 0, 0, 0]
  for (let i = 0; i < count; i++) {
    const name = names[(seed + i) % names.length] as string
    const random = seededRandom(seed + i)
    const { a, b } = (CLASSES[name] as Maker)(random)
    classes[name] = (classes[name] ?? 0) + 1
    const complain = (what: string): number => failures.push(`seed ${seed + i} ${name}: ${what}`)
    const ours = distanceBetween(a, b)
    const theirs = oracleDistanceM(a, b)
    const differenceM = Math.abs(ours.distanceM - theirs)
    worstDistanceM = Math.max(worstDistanceM, differenceM)
    if (!(differenceM <= DISTANCE_TOLERANCE_M)) complain(`distance ${ours.distanceM}, the library says ${theirs}`)
    if (theirs === 0 && ours.distanceM !== 0) complain(`meets, but we say ${ours.distanceM}`)
    if (!(Math.abs(distanceM(ours.from, ours.to) - ours.distanceM) <= DISTANCE_TOLERANCE_M)) complain('the two nearest places are not that far apart')
    for (const [shape, place] of [[a, ours.from], [b, ours.to]] as const) {
      const off = distanceBetween(shape, { kind: 'point', point: place }).distanceM
      if (!(off <= DISTANCE_TOLERANCE_M)) complain(`nearest place is ${off} m off its figure`)
    }
    const back = distanceBetween(b, a).distanceM
    if (!(Math.abs(back - ours.distanceM) <= DISTANCE_TOLERANCE_M)) complain(`the other way round it is ${back}`)
    const ratio = areaDifference(a, b, between(random, 0.5, 6), complain)
    if (ratio === 'none') continue
    if (ratio === 'invalid') areasNotCompared += 1
    else {
      areasCompared += 1
      worstAreaRatio = Math.max(worstAreaRatio, ratio)
    }
  }
  return { scenes: count, classes, worstDistanceM, worstAreaRatio, areasNotCompared, areasCompared, failures }
}

function areaDifference(a: Shape, b: Shape, widthM: number, complain: (what: string) => number): number | 'none' | 'invalid' {
  if (a.kind !== 'polygon') return 'none'
  const line = b.kind === 'point' ? [b.point] : b.points
  const ours = overlapAreaM2(a.points, line, widthM)
  if (!Number.isFinite(ours) || ours < 0) complain(`overlap is ${ours}`)
  let theirs: number | null
  try {
    theirs = oracleOverlapM2(a.points, line, widthM)
  } catch {
    return 'invalid'
  }
  if (theirs === null) return 'invalid'
  // Against the strip itself: a thin overlap has the error of the arcs that bound it, not of its own small area.
  const ratio = Math.abs(ours - theirs) / Math.max(theirs, (Math.PI * widthM * widthM) / 4)
  if (!(ratio <= AREA_TOLERANCE_RATIO)) complain(`overlap ${ours} m², the library says ${theirs}`)
  return ratio
}
