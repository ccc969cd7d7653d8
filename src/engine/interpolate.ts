/** Straight-line interpolation in a table of pairs with rising first column. */

/**
 * The value at `at` between the two neighbouring rows.
 *
 * Input:  rows sorted by rising x; a first or last row hit exactly gives its own value.
 * Output: undefined outside the rows (never extended), so that the caller has to say what then.
 */
export function interpolate(rows: readonly (readonly [number, number])[], at: number): number | undefined {
  for (let index = 1; index < rows.length; index += 1) {
    const [lowX, lowY] = rows[index - 1]!
    const [highX, highY] = rows[index]!
    if (at < lowX || at > highX) continue
    // Written so that both ends come back exactly.
    return at === highX ? highY : lowY + ((highY - lowY) * (at - lowX)) / (highX - lowX)
  }
  return undefined
}
