/** Whether a point lies inside a ring of flat points (even–odd). On the edge either answer may come. */
export const pointInRing = (ringM: readonly number[], xM: number, yM: number): boolean => {
  let isInside = false
  const count = ringM.length >> 1
  for (let i = 0, j = count - 1; i < count; j = i++) {
    const [xi, yi, xj, yj] = [ringM[2 * i]!, ringM[2 * i + 1]!, ringM[2 * j]!, ringM[2 * j + 1]!]
    if (yi > yM !== yj > yM && xM < ((xj - xi) * (yM - yi)) / (yj - yi) + xi) isInside = !isInside
  }
  return isInside
}

/** Smallest box about flat points, or null for none. */
export const boundsOfPoints = (points: readonly number[]): { leastX: number; leastY: number; mostX: number; mostY: number } | null => {
  let [leastX, leastY, mostX, mostY] = [Infinity, Infinity, -Infinity, -Infinity]
  for (let i = 0; i + 1 < points.length; i += 2) {
    leastX = Math.min(leastX, points[i]!)
    mostX = Math.max(mostX, points[i]!)
    leastY = Math.min(leastY, points[i + 1]!)
    mostY = Math.max(mostY, points[i + 1]!)
  }
  return leastX > mostX ? null : { leastX, leastY, mostX, mostY }
}
