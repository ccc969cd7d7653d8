/**
 * A bowed pipe held to a line in plan by the three-moment equation: another method than the product's, for its tests.
 * L₁M₀ + 2(L₁ + L₂)M₁ + L₂M₂ = −3·EI·k·(L₁ + L₂), no moment at the outermost holds; from w″ = M/EI + k and one slope
 * on both sides of a hold. Holds in order, two or more. Forces on the pipe and offsets right positive.
 */
export function bowByThreeMoments(holdsM: readonly number[], k: number, EI: number): { forcesN: number[]; endSlope: number; endOffsetM: (overhangM: number) => number } {
  const spans = holdsM.slice(1).map((x, i) => x - holdsM[i]!)
  const moments = momentsOf(spans, -3 * EI * k)
  const shears = spans.map((spanM, i) => (moments[i + 1]! - moments[i]!) / spanM)
  const lastM = spans.at(-1)!
  // Slope at the last hold, then the free arc beyond it.
  const slope = (lastM * moments.at(-2)!) / (6 * EI) + (k * lastM) / 2
  return { forcesN: holdsM.map((_, i) => (shears[i] ?? 0) - (shears[i - 1] ?? 0)), endSlope: slope, endOffsetM: (s) => slope * s + (k * s * s) / 2 }
}

/** Moments at all holds, 0 at the first and last; the right side of a row is `loadPerM` × both its spans. Thomas algorithm. */
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
