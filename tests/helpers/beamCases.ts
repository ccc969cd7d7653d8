import type { ContactBeamInput, GroundProfile, PointSupport, SlopeClamp } from '../../src/engine/beam/types.ts'
import { seededRandom } from './seededRandom.ts'


type Random = () => number
const between = (random: Random, low: number, high: number): number => low + (high - low) * random()
const pick = <T>(random: Random, items: readonly T[]): T => items[Math.floor(random() * items.length)]!

/** Outside diameter (m) and diameter ratio of pipes from 2 in DR 11 to 65 in DR 21. */
const PIPES: readonly (readonly [number, number])[] = [
  [0.0603, 11],
  [0.1143, 11],
  [0.2191, 11],
  [0.3239, 17],
  [0.6096, 17],
  [0.9144, 17],
  [1.6, 21],
]

export function randomSection(random: Random): { bendingStiffnessNm2: number; lineLoadNPerM: number } {
  const [od, dr] = pick(random, PIPES)
  const wall = od / dr
  const inner = od - 2 * wall
  const modulusPa = between(random, 250e6, 1100e6)
  return {
    bendingStiffnessNm2: (modulusPa * Math.PI * (od ** 4 - inner ** 4)) / 64,
    lineLoadNPerM: (955 * 9.80665 * Math.PI * (od ** 2 - inner ** 2)) / 4,
  }
}

function roughGround(random: Random, lengthM: number, stepM: number, reliefM: number): GroundProfile {
  const xM: number[] = []
  const levelM: number[] = []
  let level = 0
  for (let x = -stepM * random(); x < lengthM + stepM; x += stepM * between(random, 0.3, 1.7)) {
    xM.push(x)
    levelM.push(level)
    level += between(random, -reliefM, reliefM)
  }
  if (xM.length === 0) return { xM: [0], levelM: [0] }
  return { xM, levelM }
}

function standsAt(random: Random, xs: readonly number[], levelM: number, scatterM: number): PointSupport[] {
  return xs.map((xM) => ({ xM, levelM: levelM + between(random, -scatterM, scatterM) }))
}

function rowOf(random: Random, lengthM: number, spacingM: number, jitter: number): number[] {
  const xs: number[] = []
  for (let x = spacingM * random(); x < lengthM; x += spacingM * (1 + between(random, -jitter, jitter))) xs.push(x)
  return xs
}

const flat = (levelM: number): GroundProfile => ({ xM: [0], levelM: [levelM] })

export type BeamFamily = (random: Random) => ContactBeamInput

/** The hard cases by kind; each has at least one of what is known to trouble such solvers. */
export const beamFamilies: Readonly<Record<string, BeamFamily>> = {
  'uneven stands': (random) => {
    const lengthM = between(random, 8, 80)
    const supports = standsAt(random, [0, lengthM, ...rowOf(random, lengthM, between(random, 2, 8), 0.4)], 0.8, between(random, 0, 0.1))
    return { lengthM, section: randomSection(random), supports }
  },
  'one stand a foot high': (random) => {
    const lengthM = between(random, 20, 60)
    const supports = standsAt(random, [0, lengthM, ...rowOf(random, lengthM, between(random, 3, 7), 0.2)], 0.8, 0.005)
    const high = Math.floor(random() * supports.length)
    supports[high] = { ...supports[high]!, levelM: supports[high]!.levelM + 0.3048 }
    return { lengthM, section: randomSection(random), supports, ground: random() < 0.5 ? flat(0) : null }
  },
  'dense rollers': (random) => {
    const lengthM = between(random, 5, 40)
    const supports = standsAt(random, [0, lengthM, ...rowOf(random, lengthM, 0.5, 0.1)], 0.15, between(random, 0.0005, 0.004))
    return { lengthM, section: randomSection(random), supports, ground: random() < 0.5 ? flat(0) : null }
  },
  'raised over flat ground': (random) => {
    const lengthM = between(random, 20, 150)
    const n = 1 + Math.floor(random() * 4)
    const supports = Array.from({ length: n }, () => ({ xM: between(random, 0, lengthM), levelM: between(random, 0.01, 1.2) }))
    return { lengthM, section: randomSection(random), supports, ground: flat(0) }
  },
  'rollers on rough ground': (random) => {
    const lengthM = between(random, 30, 120)
    const ground = roughGround(random, lengthM, between(random, 1, 4), between(random, 0.02, 0.15))
    const supports = rowOf(random, lengthM, between(random, 2, 6), 0.3).map((xM) => ({ xM, levelM: levelOn(ground, xM) + 0.15 }))
    return { lengthM, section: randomSection(random), supports, ground }
  },
  'jaws and lay-down': (random) => {
    const tailM = between(random, 0, 12)
    const lengthM = tailM + between(random, 10, 100)
    const h = between(random, 0.5, 1.2)
    const behind = rowOf(random, Math.max(tailM - 1, 0), 3, 0.3).map((d) => ({ xM: -1 - d, levelM: h + between(random, -0.02, 0.02) }))
    const ahead = Array.from({ length: Math.floor(random() * 4) }, (_, i) => ({ xM: (i + 1) * between(random, 2, 4), levelM: h * (1 - i * 0.1) }))
    const supports: PointSupport[] = [
      ...behind,
      { xM: 0.1, levelM: h, twoWay: true },
      { xM: 0.71, levelM: h + between(random, -0.003, 0.003), twoWay: true },
      ...ahead,
    ].filter((s) => s.xM >= -tailM && s.xM <= lengthM - tailM)
    return { lengthM, startM: -tailM, section: randomSection(random), supports, ground: random() < 0.8 ? flat(0) : roughGround(random, lengthM, 3, 0.05) }
  },
  'steps, ridges, hollows': (random) => {
    const lengthM = between(random, 15, 100)
    const xM: number[] = []
    const levelM: number[] = []
    let x = between(random, 0, 5)
    let level = 0
    while (x < lengthM) {
      xM.push(x)
      levelM.push(level)
      const isStep = random() < 0.4
      x += isStep ? 0.01 : between(random, 3, 20)
      level += isStep ? between(random, -0.4, 0.4) : between(random, -0.5, 0.5)
    }
    const supports = random() < 0.5 ? [] : [{ xM: between(random, 0, lengthM), levelM: between(random, 0, 1) }]
    return { lengthM, section: randomSection(random), supports, ground: xM.length ? { xM, levelM } : flat(0) }
  },
  'one clamp': (random) => {
    const lengthM = between(random, 3, 40)
    const clamps: SlopeClamp[] = [{ xM: pick(random, [0, lengthM, between(random, 0, lengthM)]), levelM: between(random, 0.3, 1), slopeRatio: between(random, -0.02, 0.02) }]
    const supports = standsAt(random, rowOf(random, lengthM, 5, 0.4), 0.6, 0.15).filter((s) => Math.abs(s.xM - clamps[0]!.xM) > 0.3)
    return { lengthM, section: randomSection(random), supports, clamps, ground: random() < 0.6 ? flat(0) : null }
  },
  'two clamps': (random) => {
    const lengthM = between(random, 6, 30)
    const first = between(random, 0, lengthM * 0.4)
    const second = between(random, lengthM * 0.6, lengthM)
    const clamps = [first, second].map((xM) => ({ xM, levelM: between(random, 0.4, 0.5), slopeRatio: between(random, -0.01, 0.01) }))
    const supports = standsAt(random, rowOf(random, lengthM, 4, 0.4), 0.42, 0.05).filter((s) => clamps.every((clamp) => Math.abs(s.xM - clamp.xM) > 0.3))
    return { lengthM, section: randomSection(random), supports, clamps, ground: random() < 0.5 ? flat(0) : null }
  },
  'bowed stick': (random) => {
    const lengthM = between(random, 6, 20)
    const bow = { curvaturePerM: between(random, 0, 0.03), angleRad: between(random, 0, 2 * Math.PI) }
    const supports = random() < 0.4 ? [] : standsAt(random, [between(random, 0, 0.4) * lengthM, between(random, 0.6, 1) * lengthM, between(random, 0, 1) * lengthM], 0.5, 0.03)
    return { lengthM, section: randomSection(random), supports, ground: supports.length === 0 || random() < 0.5 ? flat(0) : null, bow }
  },
  'lying on rough ground': (random) => {
    const lengthM = between(random, 10, 120)
    return { lengthM, section: randomSection(random), supports: [], ground: roughGround(random, lengthM, between(random, 0.5, 8), between(random, 0.005, 0.3)) }
  },
  'rolling ground': (random) => {
    const lengthM = between(random, 60, 300)
    const wave = between(random, 30, 120)
    const height = between(random, 0.1, 1.5)
    const xM = Array.from({ length: Math.ceil(lengthM / 7.62) + 1 }, (_, i) => i * 7.62)
    const ground = { xM, levelM: xM.map((x) => height * Math.sin((2 * Math.PI * x) / wave)) }
    const supports = random() < 0.5 ? [] : rowOf(random, lengthM, 9, 0.2).map((x) => ({ xM: x, levelM: levelOn(ground, x) + 0.15 }))
    return { lengthM, section: randomSection(random), supports, ground }
  },
  'coincident and buried': (random) => {
    const lengthM = between(random, 8, 40)
    const xs = [0, lengthM, ...rowOf(random, lengthM, 4, 0.3)]
    const supports = xs.flatMap((xM) => [
      { xM, levelM: between(random, -0.1, 0.4) },
      ...(random() < 0.4 ? [{ xM: Math.min(lengthM, xM + pick(random, [0, 1e-7, 5e-7])), levelM: between(random, -0.1, 0.4) }] : []),
    ])
    return { lengthM, section: randomSection(random), supports, ground: flat(0) }
  },
  'on a grid, full of ties': (random) => {
    const lengthM = 2 + Math.floor(random() * 40)
    const step = (unit: number, most: number): number => unit * Math.floor(random() * most)
    const supports = Array.from({ length: Math.floor(random() * 12) }, () => ({ xM: Math.min(lengthM, step(0.5, 2 * lengthM)), levelM: step(0.1, 4) }))
    const corners = [...new Set(Array.from({ length: 1 + Math.floor(random() * 10) }, () => step(0.5, 2 * lengthM)))].sort((a, b) => a - b)
    const bow = random() < 0.3 ? { curvaturePerM: step(0.005, 4), angleRad: (Math.PI / 2) * Math.floor(random() * 4) } : null
    return { lengthM, section: randomSection(random), supports, ground: { xM: corners, levelM: corners.map(() => step(0.1, 3)) }, bow }
  },
  'crowded and nearly straight': (random) => {
    const lengthM = between(random, 4, 40)
    const near = between(random, 0, lengthM)
    const supports = Array.from({ length: 2 + Math.floor(random() * 10) }, () => ({
      xM: Math.min(lengthM, Math.max(0, random() < 0.5 ? near + 10 ** between(random, -7, 0) : between(random, 0, lengthM))),
      levelM: 0.2 + 10 ** between(random, -9, -1),
    }))
    const xM: number[] = []
    const levelM: number[] = []
    for (let x = 0; x < lengthM; x += 10 ** between(random, -3, 1)) {
      xM.push(x)
      levelM.push(10 ** between(random, -12, -2))
    }
    return { lengthM, section: randomSection(random), supports: random() < 0.7 ? supports : [], ground: { xM, levelM } }
  },
  'one support': (random) => {
    const lengthM = between(random, 3, 40)
    return { lengthM, section: randomSection(random), supports: [{ xM: between(random, 0, lengthM), levelM: between(random, 0.05, 0.8) }], ground: flat(between(random, -0.2, 0)) }
  },
}

function levelOn(ground: GroundProfile, x: number): number {
  const { xM, levelM } = ground
  let i = 0
  while (i < xM.length && xM[i]! < x) i++
  if (i === 0) return levelM[0]!
  if (i === xM.length) return levelM[i - 1]!
  return levelM[i - 1]! + ((levelM[i]! - levelM[i - 1]!) * (x - xM[i - 1]!)) / (xM[i]! - xM[i - 1]!)
}

/** Case number `index` of a seed: family by turn, numbers by seed. */
export function beamCase(seed: number, index: number): { family: string; input: ContactBeamInput } {
  const names = Object.keys(beamFamilies)
  const family = names[index % names.length]!
  return { family, input: beamFamilies[family]!(seededRandom(seed * 1_000_003 + index)) }
}
