/** Solution of A·x = b for a small dense matrix, by elimination with the largest pivot of each column. Fails: RangeError where A is singular. */
export function solveDense(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const rows = matrix.map((row, i) => [...row, right[i]!])
  const n = rows.length
  for (let column = 0; column < n; column += 1) {
    let best = column
    for (let i = column + 1; i < n; i += 1) if (Math.abs(rows[i]![column]!) > Math.abs(rows[best]![column]!)) best = i
    const pivot = rows[best]!
    rows[best] = rows[column]!
    rows[column] = pivot
    if (!(Math.abs(pivot[column]!) > 0)) throw new RangeError('the places do not hold the body')
    for (let i = column + 1; i < n; i += 1) {
      const factor = rows[i]![column]! / pivot[column]!
      if (factor !== 0) for (let k = column; k <= n; k += 1) rows[i]![k] = rows[i]![k]! - factor * pivot[k]!
    }
  }
  const x = new Array<number>(n).fill(0)
  for (let i = n - 1; i >= 0; i -= 1) {
    let sum = rows[i]![n]!
    for (let k = i + 1; k < n; k += 1) sum -= rows[i]![k]! * x[k]!
    x[i] = sum / rows[i]![i]!
  }
  return x
}
