import type { ContactBeamInput, PointSupport } from '../../src/engine/beam/types.ts'

/**
 * Independent slow answer to the contact beam: cubic elements on a fixed lattice, everything but the bounded levels
 * condensed out densely, and the bounded energy minimum found by Lemke's complementary pivoting. Contact is only seen at
 * lattice points, so ground touched between them is met to about c h⁴/384. Shares no code with the solver.
 */
export interface OracleAnswer {
  xM: number[]
  levelM: number[]
  /** In the order of the supports. */
  reactionsN: number[]
  clampForcesN: number[]
  groundTotalN: number
  /** Energy of bending and weight, J. */
  energyJ: number
  /** Largest lattice step. */
  stepM: number
}

function groundAt(input: ContactBeamInput, x: number): number {
  if (!input.ground) return -Infinity
  const { xM, levelM } = input.ground
  if (x <= xM[0]!) return levelM[0]!
  for (let i = 1; i < xM.length; i++) {
    if (x > xM[i]!) continue
    const share = (x - xM[i - 1]!) / (xM[i]! - xM[i - 1]!)
    return levelM[i - 1]! * (1 - share) + levelM[i]! * share
  }
  return levelM[levelM.length - 1]!
}

/** Places of the lattice: everything that can touch, and steps of maxStepM at most between. */
export function latticeOf(input: ContactBeamInput, maxStepM: number): number[] {
  const start = input.startM ?? 0
  const end = start + input.lengthM
  const marks = [
    start,
    end,
    ...input.supports.map((s) => s.xM),
    ...(input.clamps ?? []).map((c) => c.xM),
    ...(input.ground?.xM ?? []).filter((x) => x > start && x < end),
  ].sort((a, b) => a - b)
  const places: number[] = []
  for (const x of marks) if (places.length === 0 || x - places[places.length - 1]! > 1e-6) places.push(x)
  const lattice = [places[0]!]
  for (let i = 1; i < places.length; i++) {
    const a = places[i - 1]!
    const n = Math.max(1, Math.ceil((places[i]! - a) / maxStepM))
    for (let k = 1; k <= n; k++) lattice.push(a + ((places[i]! - a) * k) / n)
  }
  return lattice
}

/** A support at or below the ground carries nothing. */
function isOverGround(input: ContactBeamInput, s: PointSupport): boolean {
  return s.twoWay === true || s.levelM > groundAt(input, s.xM) + 1e-12
}

/** Solves A X = B in place by elimination with row exchange; B has several columns. */
function solveDense(a: Float64Array[], b: Float64Array[]): void {
  const n = a.length
  for (let k = 0; k < n; k++) {
    let best = k
    for (let i = k + 1; i < n; i++) if (Math.abs(a[i]![k]!) > Math.abs(a[best]![k]!)) best = i
    ;[a[k], a[best]] = [a[best]!, a[k]!]
    ;[b[k], b[best]] = [b[best]!, b[k]!]
    const pivot = a[k]![k]!
    for (let i = k + 1; i < n; i++) {
      const f = a[i]![k]! / pivot
      if (f === 0) continue
      for (let j = k; j < n; j++) a[i]![j]! -= f * a[k]![j]!
      for (let j = 0; j < b[i]!.length; j++) b[i]![j]! -= f * b[k]![j]!
    }
  }
  for (let k = n - 1; k >= 0; k--) {
    for (let j = 0; j < b[k]!.length; j++) {
      let s = b[k]![j]!
      for (let i = k + 1; i < n; i++) s -= a[k]![i]! * b[i]![j]!
      b[k]![j] = s / a[k]![k]!
    }
  }
}

/** Lemke: r = M z + v, z ≥ 0, r ≥ 0, r·z = 0. Returns z, or null where the ray ends it. */
function lemke(M: readonly Float64Array[], v: Float64Array): Float64Array | null {
  const n = v.length
  const z = new Float64Array(n)
  if (v.every((value) => value >= 0)) return z
  // Columns: r (0…n−1), z (n…2n−1), cover (2n), right side.
  const cover = 2 * n
  const rows = M.map((row, i) => {
    const t = new Float64Array(2 * n + 2)
    t[i] = 1
    for (let j = 0; j < n; j++) t[n + j] = -row[j]!
    t[cover] = -1
    t[2 * n + 1] = v[i]!
    return t
  })
  const basis = Int32Array.from({ length: n }, (_, i) => i)
  const pivotOn = (row: number, column: number): void => {
    const p = rows[row]!
    const inverse = 1 / p[column]!
    for (let j = 0; j < p.length; j++) p[j]! *= inverse
    for (let i = 0; i < n; i++) {
      if (i === row) continue
      const f = rows[i]![column]!
      if (f === 0) continue
      const t = rows[i]!
      for (let j = 0; j < t.length; j++) t[j]! -= f * p[j]!
    }
    basis[row] = column
  }
  let row = 0
  for (let i = 1; i < n; i++) if (v[i]! < v[row]!) row = i
  let entering = n + row
  pivotOn(row, cover)
  for (let step = 0; step < 50 * n; step++) {
    let best = -1
    let ratio = Infinity
    for (let i = 0; i < n; i++) {
      const a = rows[i]![entering]!
      if (!(a > 1e-11)) continue
      const candidate = rows[i]![2 * n + 1]! / a
      // The cover leaves on a tie; else the larger pivot.
      const isTie = best >= 0 && Math.abs(candidate - ratio) <= 1e-13 * (1 + Math.abs(ratio))
      if (candidate < ratio && !isTie) {
        ratio = candidate
        best = i
      } else if (isTie && (basis[i] === cover || (basis[best] !== cover && a > rows[best]![entering]!))) best = i
    }
    if (best < 0) return null
    const leaving = basis[best]!
    pivotOn(best, entering)
    if (leaving === cover) {
      for (let i = 0; i < n; i++) if (basis[i]! >= n && basis[i]! < cover) z[basis[i]! - n] = Math.max(0, rows[i]![2 * n + 1]!)
      return z
    }
    entering = leaving < n ? leaving + n : leaving - n
  }
  return null
}

/** The oracle's answer, or null where its pivoting ended in a ray (a body nothing holds). */
export function solveByLattice(input: ContactBeamInput, maxStepM: number): OracleAnswer | null {
  const { bendingStiffnessNm2: EI, lineLoadNPerM: q } = input.section
  const k0 = input.bow ? input.bow.curvaturePerM * Math.cos(input.bow.angleRad) : 0
  const xM = latticeOf(input, maxStepM)
  const n = xM.length
  const size = 2 * n
  // Unknowns: level and slope × 1 m at every lattice point, levels over those of the first support.
  const K = Array.from({ length: size }, () => new Float64Array(size))
  const f = new Float64Array(size)
  let stepM = 0
  for (let e = 0; e + 1 < n; e++) {
    const l = xM[e + 1]! - xM[e]!
    stepM = Math.max(stepM, l)
    const k = EI / l ** 3
    const block = [
      [12, 6 * l, -12, 6 * l],
      [6 * l, 4 * l * l, -6 * l, 2 * l * l],
      [-12, -6 * l, 12, -6 * l],
      [6 * l, 2 * l * l, -6 * l, 4 * l * l],
    ]
    const at = [2 * e, 2 * e + 1, 2 * e + 2, 2 * e + 3]
    block.forEach((line, i) => line.forEach((value, j) => (K[at[i]!]![at[j]!]! += k * value)))
    const load = [(-q * l) / 2, (-q * l * l) / 12, (-q * l) / 2, (q * l * l) / 12]
    at.forEach((dof, i) => (f[dof]! += load[i]!))
  }
  f[1]! -= EI * k0
  f[size - 1]! += EI * k0

  const near = (x: number): number => xM.reduce((best, value, i) => (Math.abs(value - x) < Math.abs(xM[best]! - x) ? i : best), 0)
  const bound = new Float64Array(n).fill(-Infinity)
  for (let i = 0; i < n; i++) bound[i] = groundAt(input, xM[i]!)
  const fixed = new Map<number, number>()
  const nodeOfSupport = input.supports.map((s) => near(s.xM))
  input.supports.forEach((s, i) => {
    const node = nodeOfSupport[i]!
    if (s.twoWay) fixed.set(2 * node, s.levelM)
    else bound[node] = Math.max(bound[node]!, s.levelM)
  })
  for (const clamp of input.clamps ?? []) {
    fixed.set(2 * near(clamp.xM), clamp.levelM)
    fixed.set(2 * near(clamp.xM) + 1, clamp.slopeRatio)
  }
  const bounded: number[] = []
  const free: number[] = []
  for (let dof = 0; dof < size; dof++) {
    if (fixed.has(dof)) continue
    if (dof % 2 === 0 && bound[dof / 2]! > -Infinity) bounded.push(dof)
    else free.push(dof)
  }
  // With z = level − bound: K z-part + … = f − K·known.
  const known = new Float64Array(size)
  for (const [dof, value] of fixed) known[dof] = value
  for (const dof of bounded) known[dof] = bound[dof / 2]!
  const rest = Float64Array.from(f, (value, i) => value - K[i]!.reduce((sum, k, j) => sum + k * known[j]!, 0))
  const A = free.map((i) => Float64Array.from(free, (j) => K[i]![j]!))
  const B = free.map((i) => Float64Array.from([...bounded.map((j) => K[i]![j]!), rest[i]!]))
  solveDense(A, B)
  const m = bounded.length
  const S = bounded.map((i) => Float64Array.from(bounded, (j, column) => K[i]![j]! - free.reduce((sum, k, row) => sum + K[i]![k]! * B[row]![column]!, 0)))
  const v = Float64Array.from(bounded, (i) => free.reduce((sum, k, row) => sum + K[i]![k]! * B[row]![m]!, 0) - rest[i]!)
  // Scaled so that pivots are near 1.
  const scale = bounded.map((_, i) => 1 / Math.sqrt(S[i]![i]!))
  const scaled = S.map((row, i) => row.map((value, j) => value * scale[i]! * scale[j]!))
  const zScaled = lemke(scaled, v.map((value, i) => value * scale[i]!))
  if (zScaled === null) return null
  const w = Float64Array.from(known)
  bounded.forEach((dof, i) => (w[dof]! += zScaled[i]! * scale[i]!))
  free.forEach((dof, row) => (w[dof] = B[row]![m]! - bounded.reduce((sum, _, column) => sum + B[row]![column]! * zScaled[column]! * scale[column]!, 0)))
  const force = K.map((row, i) => row.reduce((sum, k, j) => sum + k * w[j]!, 0) - f[i]!)
  const levelM = xM.map((_, i) => w[2 * i]!)

  const onSupport = new Set<number>()
  const reactionsN = input.supports.map((s, i) => {
    const node = nodeOfSupport[i]!
    const carries = isOverGround(input, s)
    const ruling = Math.max(...input.supports.filter((_, k) => nodeOfSupport[k] === node).map((other) => other.levelM))
    if (!carries || (!s.twoWay && ruling <= groundAt(input, s.xM))) return 0
    onSupport.add(node)
    return force[2 * node]! / input.supports.filter((other, k) => nodeOfSupport[k] === node && isOverGround(input, other)).length
  })
  const clampForcesN = (input.clamps ?? []).map((clamp) => {
    onSupport.add(near(clamp.xM))
    return force[2 * near(clamp.xM)]!
  })
  let groundTotalN = 0
  if (input.ground) for (let i = 0; i < n; i++) if (!onSupport.has(i)) groundTotalN += force[2 * i]!
  // What the cubic elements leave out: each sags by q x²(l−x)²/24EI between its ends.
  let energyJ = (EI * k0 * k0 * input.lengthM) / 2
  for (let e = 0; e + 1 < n; e++) energyJ -= (q * q * (xM[e + 1]! - xM[e]!) ** 5) / (1440 * EI)
  for (let i = 0; i < size; i++) energyJ += 0.5 * w[i]! * (force[i]! + f[i]!) - f[i]! * w[i]!
  return { xM, levelM, reactionsN, clampForcesN, groundTotalN, energyJ, stepM }
}
