/**
 * A number together with what it measures. The value is always in the unit of `siUnitOf`:
 * m, N, kg, N·m, Pa, N/m, rad, V, m², s, m/s; temperature and its change in °C; ratio, percent and slope as a
 * plain ratio (0.25 for 25 %). Unknown is `null`, never 0.
 */
export type QuantityKind =
  | 'length'
  | 'shortLength'
  | 'height'
  | 'force'
  | 'mass'
  | 'moment'
  | 'stress'
  | 'pressure'
  | 'lineLoad'
  | 'temperature'
  | 'temperatureChange'
  | 'ratio'
  | 'percent'
  | 'angle'
  | 'slope'
  | 'count'
  | 'voltage'
  | 'area'
  | 'pistonArea'
  | 'duration'
  | 'speed'

export interface Quantity {
  kind: QuantityKind
  value: number | null
}

/** The unit `Quantity.value` is in, per kind; '1' for plain numbers. */
export const siUnitOf = {
  length: 'm',
  shortLength: 'm',
  height: 'm',
  force: 'N',
  mass: 'kg',
  moment: 'N·m',
  stress: 'Pa',
  pressure: 'Pa',
  lineLoad: 'N/m',
  temperature: '°C',
  temperatureChange: '°C',
  ratio: '1',
  percent: '1',
  angle: 'rad',
  slope: '1',
  count: '1',
  voltage: 'V',
  area: 'm²',
  pistonArea: 'm²',
  duration: 's',
  speed: 'm/s',
} as const satisfies Record<QuantityKind, string>

/** Every kind, in the order of the type. */
export const quantityKinds = Object.keys(siUnitOf) as QuantityKind[]

/** Shorthand for a quantity: `quantity('force', 120)`. */
export function quantity(kind: QuantityKind, value: number | null): Quantity {
  return { kind, value }
}
