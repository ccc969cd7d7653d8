/** A point or a displacement in plan: x right, y up, metres. */
export interface Vec {
  readonly xM: number
  readonly yM: number
}

/** A place with a direction: `headingRad` counter-clockwise from +x. */
export interface Pose extends Vec {
  readonly headingRad: number
}

export const ORIGIN: Vec = { xM: 0, yM: 0 }

export const vec = (xM: number, yM: number): Vec => ({ xM, yM })
export const add = (a: Vec, b: Vec): Vec => ({ xM: a.xM + b.xM, yM: a.yM + b.yM })
export const subtract = (a: Vec, b: Vec): Vec => ({ xM: a.xM - b.xM, yM: a.yM - b.yM })
export const scale = (a: Vec, factor: number): Vec => ({ xM: a.xM * factor, yM: a.yM * factor })
export const dotM2 = (a: Vec, b: Vec): number => a.xM * b.xM + a.yM * b.yM

/** Positive where `b` points to the left of `a`. Rounded; a decision on its sign belongs to `orientation`. */
export const crossM2 = (a: Vec, b: Vec): number => a.xM * b.yM - a.yM * b.xM

export const lengthM = (a: Vec): number => Math.hypot(a.xM, a.yM)
export const distanceM = (a: Vec, b: Vec): number => Math.hypot(b.xM - a.xM, b.yM - a.yM)
export const squaredDistanceM2 = (a: Vec, b: Vec): number => (b.xM - a.xM) ** 2 + (b.yM - a.yM) ** 2
export const samePlace = (a: Vec, b: Vec): boolean => a.xM === b.xM && a.yM === b.yM

/** Point at `ratio` of the way from `a` (0) to `b` (1). */
export const between = (a: Vec, b: Vec, ratio: number): Vec => ({
  xM: a.xM + (b.xM - a.xM) * ratio,
  yM: a.yM + (b.yM - a.yM) * ratio,
})

/** Direction of a displacement, counter-clockwise from +x in (−π, π]; 0 for a displacement of no length. */
export const headingOf = (a: Vec): number => Math.atan2(a.yM, a.xM)

/** Displacement of `distanceM` in direction `headingRad`. */
export const along = (headingRad: number, distanceAlongM: number): Vec => ({
  xM: Math.cos(headingRad) * distanceAlongM,
  yM: Math.sin(headingRad) * distanceAlongM,
})

/** Displacement of `distanceM` to the right of direction `headingRad`. */
export const toTheRight = (headingRad: number, distanceRightM: number): Vec => ({
  xM: Math.sin(headingRad) * distanceRightM,
  yM: -Math.cos(headingRad) * distanceRightM,
})

/** `a` turned counter-clockwise about the origin. */
export function rotate(a: Vec, angleRad: number): Vec {
  const c = Math.cos(angleRad)
  const s = Math.sin(angleRad)
  return { xM: c * a.xM - s * a.yM, yM: s * a.xM + c * a.yM }
}

/** Same direction brought into (−π, π]. */
export function wrapAngleRad(angleRad: number): number {
  const turned = angleRad - 2 * Math.PI * Math.round(angleRad / (2 * Math.PI))
  return turned <= -Math.PI ? turned + 2 * Math.PI : turned
}

export const isFiniteVec = (a: Vec): boolean => Number.isFinite(a.xM) && Number.isFinite(a.yM)
