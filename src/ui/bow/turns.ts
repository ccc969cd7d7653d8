/** Steps of the dial. Turns are counter-clockwise seen looking down-string, 0 with the ends up, −180 to 180 degrees. */
const FULL_DEG = 360
export const KEY_STEP_DEG = 15
const DRAG_STEP_DEG = 5

export const toDegrees = (turnRad: number): number => (turnRad * 180) / Math.PI
export const toRadians = (degrees: number): number => (degrees * Math.PI) / 180

/** Within −180 … 180, the half turn as +180. */
export function wrappedDeg(degrees: number): number {
  const rest = degrees - FULL_DEG * Math.round(degrees / FULL_DEG)
  return rest <= -FULL_DEG / 2 ? rest + FULL_DEG : rest
}

/** The next multiple of a step from here in a direction; from a multiple a whole step. */
export function steppedDeg(degrees: number, direction: 1 | -1, stepDeg = KEY_STEP_DEG): number {
  const at = degrees / stepDeg
  return wrappedDeg((direction === 1 ? Math.floor(at + 1e-6) + 1 : Math.ceil(at - 1e-6) - 1) * stepDeg)
}

/** Turn a key asks for; null: none of the dial's. Left is counter-clockwise, as the ends go. */
export function turnOfKey(key: string, degrees: number): number | null {
  switch (key) {
    case 'ArrowLeft': case 'ArrowUp': return steppedDeg(degrees, 1)
    case 'ArrowRight': case 'ArrowDown': return steppedDeg(degrees, -1)
    case 'PageUp': return steppedDeg(degrees, 1, 45)
    case 'PageDown': return steppedDeg(degrees, -1, 45)
    case 'Home': return 0
    case 'End': return 180
    default: return null
  }
}

/** Turn under the pointer, from the middle of the dial, y down; to the drag's step. */
export const turnAtDeg = (dxPx: number, dyPx: number): number => wrappedDeg(Math.round(toDegrees(Math.atan2(-dxPx, -dyPx)) / DRAG_STEP_DEG) * DRAG_STEP_DEG)

/** Place on a circle about (0, 0) where ends turned like this point to, y down. */
export const onDial = (degrees: number, radiusPx: number): { x: number; y: number } => ({ x: -Math.sin(toRadians(degrees)) * radiusPx, y: -Math.cos(toRadians(degrees)) * radiusPx })
