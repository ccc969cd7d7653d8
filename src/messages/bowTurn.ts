import type { Localized } from './localized.ts'

const RIGHT_ANGLE_RAD = Math.PI / 2
/** A turn this near to a quarter is called by its name. */
const NAMED_WITHIN_RAD = Math.PI / 360

/**
 * How bowed sticks lie, in words: where their ends point. 0 is ends up, counter-clockwise seen looking down-string;
 * between the quarters by the degrees from ends up.
 */
export function bowTurnWords(turnRad: number): Localized {
  const quarter = Math.round(turnRad / RIGHT_ANGLE_RAD)
  if (Math.abs(turnRad - quarter * RIGHT_ANGLE_RAD) < NAMED_WITHIN_RAD) return quarters[((quarter % 4) + 4) % 4]!
  const full = 2 * Math.PI
  const ccwRad = ((turnRad % full) + full) % full
  const toLeft = ccwRad < Math.PI
  const degrees = Math.round(((toLeft ? ccwRad : full - ccwRad) * 180) / Math.PI)
  return toLeft ? { en: `ends ${degrees}° left of up`, es: `puntas ${degrees}° a la izquierda de arriba` } : { en: `ends ${degrees}° right of up`, es: `puntas ${degrees}° a la derecha de arriba` }
}

const quarters: readonly Localized[] = [
  { en: 'ends up', es: 'puntas arriba' },
  { en: 'ends to the left', es: 'puntas a la izquierda' },
  { en: 'ends down', es: 'puntas abajo' },
  { en: 'ends to the right', es: 'puntas a la derecha' },
]
