/**
 * Speed of the contact beam beside a textbook banded LDLᵀ solve of 4,000 unknowns in the same run.
 * Run: npx tsx tests/bench/beam.bench.ts [--json FILE]. Prints medians after warm-up, ratios and passes; asserts nothing.
 */
import { writeFileSync } from 'node:fs'
import { solveContactBeam } from '../../src/engine/beam/solveContactBeam.ts'
import type { ContactBeamInput } from '../../src/engine/beam/types.ts'
import { seededRandom } from '../helpers/seededRandom.ts'

const FT = 0.3048
// 12 in IPS DR 17: EI and weight, rounded (E 538 MPa, I 2.127e-4 m⁴, 12.36 lb/ft).
const section = { bendingStiffnessNm2: 1.144e5, lineLoadNPerM: 180.4 }

const BAND = 3
const UNKNOWNS = 4000

/** Matrix of a beam on springs, rows of diagonal and three sub-diagonals. */
function bandedMatrix(): { rows: Float64Array; rhs: Float64Array } {
  const random = seededRandom(11)
  const rows = new Float64Array(UNKNOWNS * (BAND + 1))
  const rhs = new Float64Array(UNKNOWNS)
  for (let i = 0; i < UNKNOWNS; i++) {
    rows[i * (BAND + 1)] = 10 + random()
    for (let k = 1; k <= BAND; k++) rows[i * (BAND + 1) + k] = -random()
    rhs[i] = random()
  }
  return { rows, rhs }
}

/** The loops of the textbook: factor in place column by column, then forward, diagonal, backward. */
function ldlSolve(a: Float64Array, b: Float64Array): void {
  const n = b.length
  const w = BAND + 1
  for (let j = 0; j < n; j++) {
    const first = Math.max(0, j - BAND)
    let d = a[j * w]!
    for (let k = first; k < j; k++) d -= a[j * w + (j - k)]! ** 2 * a[k * w]!
    a[j * w] = d
    const end = Math.min(n, j + w)
    for (let i = j + 1; i < end; i++) {
      let s = a[i * w + (i - j)]!
      for (let k = Math.max(0, i - BAND); k < j; k++) s -= a[i * w + (i - k)]! * a[j * w + (j - k)]! * a[k * w]!
      a[i * w + (i - j)] = s / d
    }
  }
  for (let i = 0; i < n; i++) for (let k = Math.max(0, i - BAND); k < i; k++) b[i]! -= a[i * w + (i - k)]! * b[k]!
  for (let i = 0; i < n; i++) b[i]! /= a[i * w]!
  for (let i = n - 1; i >= 0; i--) for (let k = i + 1; k < Math.min(n, i + w); k++) b[i]! -= a[k * w + (k - i)]! * b[k]!
}

function stickInJaws(): ContactBeamInput {
  const h = 30 * 0.0254
  return {
    lengthM: 40 * FT,
    section,
    supports: [
      { xM: (4 / 12) * FT, levelM: h, twoWay: true },
      { xM: (28 / 12) * FT, levelM: h, twoWay: true },
      { xM: 25 * FT, levelM: h },
      { xM: 35 * FT, levelM: h },
    ],
    ground: { xM: [0], levelM: [0] },
  }
}

/** A string on n rollers with uneven heights; with rough ground a corner every 5 ft or so. */
function stringOnRollers(lengthFt: number, rollers: number, seed: number, rough: boolean): ContactBeamInput {
  const random = seededRandom(seed)
  const lengthM = lengthFt * FT
  const xM: number[] = []
  const levelM: number[] = []
  let level = 0
  for (let x = 0; x < lengthM + 2; x += (rough ? 5 : 25) * FT * (0.6 + 0.8 * random())) {
    xM.push(x)
    levelM.push(level)
    level += (random() - 0.5) * (rough ? 0.12 : 0.06)
  }
  const at = (x: number): number => {
    let i = 1
    while (i < xM.length - 1 && xM[i]! < x) i++
    return levelM[i - 1]! + ((levelM[i]! - levelM[i - 1]!) * (x - xM[i - 1]!)) / (xM[i]! - xM[i - 1]!)
  }
  const spacing = lengthM / rollers
  const supports = Array.from({ length: rollers }, (_, i) => {
    const x = (i + 0.5) * spacing
    return { xM: x, levelM: at(x) + 6 * 0.0254 + (random() - 0.5) * (rough ? 0.02 : 0.05) }
  })
  return { lengthM, section, supports, ground: { xM, levelM } }
}

/** A string out of closed jaws, over a soft start and on to the bare ground. */
function layDown(lengthFt: number): ContactBeamInput {
  const row = [[-20, 30], [-10, 30], [12.5, 30], [25, 28.5], [35.7, 21.5], [46.4, 12.5], [57.1, 7.25]] as const
  return {
    startM: -30 * FT,
    lengthM: lengthFt * FT,
    section,
    supports: [
      ...row.map(([xFt, heightIn]) => ({ xM: xFt * FT, levelM: heightIn * 0.0254 })),
      { xM: 0, levelM: 0.762, twoWay: true },
      { xM: 2 * FT, levelM: 0.762, twoWay: true },
    ],
    ground: { xM: [0], levelM: [0] },
  }
}

/** Median of single timed runs of `once` after warm-up, in milliseconds. */
function median(once: () => unknown, budgetMs: number): number {
  const warmUntil = performance.now() + budgetMs / 2
  while (performance.now() < warmUntil) once()
  const times: number[] = []
  const until = performance.now() + budgetMs
  // Short runs are timed in batches so that the clock's step does not show.
  const t0 = performance.now()
  once()
  const batch = Math.max(1, Math.round(0.2 / Math.max(performance.now() - t0, 1e-3)))
  while (performance.now() < until || times.length < 5) {
    const start = performance.now()
    for (let i = 0; i < batch; i++) once()
    times.push((performance.now() - start) / batch)
  }
  times.sort((a, b) => a - b)
  return times[times.length >> 1]!
}

interface Row {
  name: string
  ms: number
  ratio: number
  limit: number | null
  passes: number
  status: string
}

const BUDGET_MS = Number(process.env['BENCH_MS'] ?? 700)
const { rows: matrix, rhs } = bandedMatrix()
const workMatrix = new Float64Array(matrix.length)
const workRhs = new Float64Array(rhs.length)
const ldlMs = median(() => {
  workMatrix.set(matrix)
  workRhs.set(rhs)
  ldlSolve(workMatrix, workRhs)
  return workRhs
}, BUDGET_MS)

const rows: Row[] = []
function measure(name: string, input: ContactBeamInput, limit: number | null): void {
  const result = solveContactBeam(input)
  const lifted = result.supports.filter((s) => s.lifted).length
  const ms = median(() => solveContactBeam(input), BUDGET_MS)
  rows.push({ name: `${name}${lifted > 0 ? ` (${lifted} lift)` : ''}`, ms, ratio: ms / ldlMs, limit, passes: result.passes, status: result.status })
}

/** Every support in turn is moved by half an inch and the case solved from the pattern before. */
function measureWarm(name: string, input: ContactBeamInput, limit: number): void {
  const before = solveContactBeam(input).pattern
  let turn = 0
  let passes = 0
  let status = 'ok'
  const ms = median(() => {
    const moved = (turn++ * 37) % input.supports.length
    const supports = input.supports.slice()
    supports[moved] = { ...supports[moved]!, levelM: supports[moved]!.levelM + (turn % 2 === 0 ? 0.0127 : -0.0127) }
    const result = solveContactBeam({ ...input, supports, warmStart: before })
    passes = Math.max(passes, result.passes)
    if (result.status !== 'ok') status = result.status
    return result
  }, BUDGET_MS)
  rows.push({ name, ms, ratio: ms / ldlMs, limit, passes, status })
}

measure('40 ft stick in the jaws', stickInJaws(), 0.2)
measure('1,000 ft out of the jaws, laid down on bare ground', layDown(1000), null)
measure('1,000 ft on 60 rollers', stringOnRollers(1000, 60, 5, false), 3)
const long = stringOnRollers(2000, 300, 7, true)
measure('2,000 ft over 300 rollers, rough ground, cold', long, 15)
measureWarm('2,000 ft over 300 rollers, rough ground, one stand moved', long, 4)
for (const lengthFt of [250, 500, 1000, 2000, 4000]) measure(`${lengthFt} ft, a roller every 16⅔ ft`, stringOnRollers(lengthFt, Math.round((lengthFt * 3) / 50), 5, false), null)

console.log(`Textbook banded LDLᵀ, ${UNKNOWNS} unknowns, half-bandwidth ${BAND}: ${ldlMs.toFixed(4)} ms (median)`)
console.log(`${'case'.padEnd(68)}${'ms'.padStart(9)}${'ratio'.padStart(9)}${'limit'.padStart(8)}${'passes'.padStart(8)}  status`)
for (const row of rows) {
  const limit = row.limit === null ? '' : String(row.limit)
  console.log(`${row.name.padEnd(68)}${row.ms.toFixed(4).padStart(9)}${row.ratio.toFixed(2).padStart(9)}${limit.padStart(8)}${String(row.passes).padStart(8)}  ${row.status}`)
}
const jsonAt = process.argv.indexOf('--json')
if (jsonAt >= 0) writeFileSync(process.argv[jsonAt + 1]!, JSON.stringify({ ldlMs, rows }, null, 2))
