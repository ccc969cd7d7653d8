import type { BeamModel } from './model.ts'
import { TWO_WAY } from './model.ts'

/**
 * Two places whose upper hull edge bridges the centre of gravity: where a stiff straight pipe would rest. With one
 * two-way support the pipe turns about it on to the first obstacle on the heavy side.
 * Returns sites left to right, or an empty list where nothing holds the pipe.
 */
export function restingPair(model: BeamModel): number[] {
  const { siteCount, siteX, siteLevel, siteKind } = model
  const centre = model.startM + model.lengthM / 2
  let pivot = -1
  for (let i = 0; i < siteCount; i++) if (siteKind[i] === TWO_WAY) pivot = i
  if (pivot >= 0) {
    const toRight = centre >= siteX[pivot]!
    let best = -1
    let steepest = -Infinity
    for (let i = 0; i < siteCount; i++) {
      if (i === pivot || siteX[i]! > siteX[pivot]! !== toRight) continue
      const rise = (siteLevel[i]! - siteLevel[pivot]!) / Math.abs(siteX[i]! - siteX[pivot]!)
      if (rise > steepest) {
        steepest = rise
        best = i
      }
    }
    if (best < 0) return []
    return toRight ? [pivot, best] : [best, pivot]
  }
  const hull: number[] = []
  for (let i = 0; i < siteCount; i++) {
    while (hull.length > 1) {
      const a = hull[hull.length - 2]!
      const b = hull[hull.length - 1]!
      const cross = (siteX[b]! - siteX[a]!) * (siteLevel[i]! - siteLevel[a]!) - (siteLevel[b]! - siteLevel[a]!) * (siteX[i]! - siteX[a]!)
      if (cross < 0) break
      hull.pop()
    }
    hull.push(i)
  }
  for (let k = 0; k + 1 < hull.length; k++) if (siteX[hull[k + 1]!]! >= centre) return siteX[hull[k]!]! <= centre ? [hull[k]!, hull[k + 1]!] : []
  return []
}
