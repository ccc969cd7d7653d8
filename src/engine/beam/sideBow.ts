/** A bent pipe between guides in plan: what its bow does sideways, where nothing loads it (docs/formulas/bow.md). */

export interface SideBowInput {
  startM: number
  endM: number
  /** Places held to the line both ways, any order; those nearer to each other than 20 mm count as one. */
  holdsM: readonly number[]
  /** Natural curvature in plan, positive where the ends lie to the right of the middle. */
  curvaturePerM: number
  /** EI, > 0. */
  bendingStiffnessNm2: number
}

export interface SideBowResult {
  /** Places that count, from left to right, and the force of each on the pipe, right positive. */
  holdsM: readonly number[]
  forcesN: readonly number[]
  /** Offset from the line, right positive, and slope there. */
  at: (xM: number) => { offsetM: number; slopeRatio: number }
}

/** Holds nearer to each other than this count as one, as in the beam upright. */
const SAME_PLACE_M = 0.02

/**
 * Forces and shape of a bowed pipe held to a straight line in plan.
 *
 * Model:  Euler–Bernoulli, small slope, EI·w″ = M + EI·k, no load between the holds, no friction, free ends. Three-moment
 *         equation L₁M₀ + 2(L₁ + L₂)M₁ + L₂M₂ = −3·EI·k·(L₁ + L₂) with no moment at the outermost holds.
 * Output: exact; null where fewer than two places hold, so that nothing keeps the pipe in line. Linear in the curvature.
 * Source: Clapeyron's three-moment equation with the curvature as a load, as for a heated beam; derived in docs/formulas/bow.md.
 */
export function solveSideBow({ startM, endM, holdsM, curvaturePerM: k, bendingStiffnessNm2: EI }: SideBowInput): SideBowResult | null {
  const xs = holdsM.filter((x) => x >= startM - SAME_PLACE_M && x <= endM + SAME_PLACE_M).toSorted((a, b) => a - b).filter((x, i, all) => i === 0 || x - all[i - 1]! > SAME_PLACE_M)
  if (xs.length < 2) return null
  const spans = xs.slice(1).map((x, i) => x - xs[i]!)
  const moments = momentsOf(spans, -3 * EI * k)
  const shears = spans.map((spanM, i) => (moments[i + 1]! - moments[i]!) / spanM)
  const forcesN = xs.map((_, i) => (shears[i] ?? 0) - (shears[i - 1] ?? 0))
  const firstSlope = (i: number): number => -(spans[i]! * (2 * moments[i]! + moments[i + 1]!)) / (6 * EI) - (k * spans[i]!) / 2
  const lastSlope = (i: number): number => (spans[i]! * (moments[i]! + 2 * moments[i + 1]!)) / (6 * EI) + (k * spans[i]!) / 2
  const free = (slopeRatio: number, s: number): { offsetM: number; slopeRatio: number } => ({ offsetM: slopeRatio * s + (k * s * s) / 2, slopeRatio: slopeRatio + k * s })
  return {
    holdsM: xs,
    forcesN,
    at: (xM) => {
      if (xM <= xs[0]!) return free(firstSlope(0), xM - xs[0]!)
      if (xM >= xs.at(-1)!) return free(lastSlope(spans.length - 1), xM - xs.at(-1)!)
      const i = Math.max(0, xs.findLastIndex((x) => x <= xM))
      const s = xM - xs[i]!
      const [a, rise] = [moments[i]! / EI + k, shears[i]! / EI]
      return { offsetM: firstSlope(i) * s + (a * s * s) / 2 + (rise * s ** 3) / 6, slopeRatio: firstSlope(i) + a * s + (rise * s * s) / 2 }
    },
  }
}

/** Moments at all holds, 0 at the first and last; the right side of row i is `loadPerM` × both its spans. Thomas algorithm. */
function momentsOf(spans: readonly number[], loadPerM: number): number[] {
  const inner = spans.length - 1
  const moments = new Array<number>(spans.length + 1).fill(0)
  const upper = new Array<number>(inner).fill(0)
  const right = new Array<number>(inner).fill(0)
  for (let row = 0; row < inner; row += 1) {
    const [leftM, rightM] = [spans[row]!, spans[row + 1]!]
    const pivot = 2 * (leftM + rightM) - leftM * (upper[row - 1] ?? 0)
    upper[row] = rightM / pivot
    right[row] = (loadPerM * (leftM + rightM) - leftM * (right[row - 1] ?? 0)) / pivot
  }
  for (let row = inner - 1; row >= 0; row -= 1) moments[row + 1] = right[row]! - upper[row]! * moments[row + 2]!
  return moments
}
