import type { UnitSystem } from '../units/format.ts'

/** Spacings of the marks of a tape, in the unit of its figures (ft or m). `mid` and `minor` are null where they would run together. */
export interface TickSteps {
  unitM: number
  /** Full-width marks with a figure. */
  major: number
  mid: number | null
  minor: number | null
}

const FOOT_M = 0.3048
/** Room a figure of up to four digits needs before the next one, px. */
const FIGURE_ROOM_PX = 38
/** Nearer than this marks run into a grey field, px. */
const LEAST_GAP_PX = 3.9

/** Rows a real tape could have: figures, the marks between, the finest marks. */
const rows: Readonly<Record<UnitSystem, readonly (readonly [major: number, mid: number, minor: number, coarserMinor?: number])[]>> = {
  feetInches: [[1, 0.5, 0.25], [5, 1, 0.25, 0.5], [10, 5, 1], [50, 10, 5], [100, 50, 10], [500, 100, 50], [1000, 500, 100], [5000, 1000, 500]],
  metric: [[0.5, 0.1, 0.05], [1, 0.5, 0.1], [5, 1, 0.5], [10, 5, 1], [50, 10, 5], [100, 50, 10], [500, 100, 50], [1000, 500, 100], [5000, 1000, 500]],
}

/**
 * The finest mark by scale (docs/look.md, 'what hides when'): 50 ft below 2 px a foot, 10 ft to 4, 1 ft to 8, 3 in beyond.
 * Metric tapes change at the same scales: 10 m, 5 m, 0.5 m, 0.05 m.
 */
const finest = (system: UnitSystem, pxPerM: number): number => {
  const pxPerFt = pxPerM * FOOT_M
  const steps = system === 'feetInches' ? ([50, 10, 1, 0.25] as const) : ([10, 5, 0.5, 0.05] as const)
  return pxPerFt < 2 ? steps[0] : pxPerFt < 4 ? steps[1] : pxPerFt < 8 ? steps[2] : steps[3]
}

/** Marks of the tape at a scale. */
export const tickSteps = (system: UnitSystem, pxPerM: number): TickSteps => {
  const unitM = system === 'feetInches' ? FOOT_M : 1
  const pxPerUnit = pxPerM * unitM
  const [major, mid, minor, coarserMinor] = rows[system].find(([step]) => step * pxPerUnit >= FIGURE_ROOM_PX) ?? (rows[system].at(-1) as readonly [number, number, number, number?])
  const least = finest(system, pxPerM)
  const kept = (step: number): number | null => (step >= least && step * pxPerUnit >= LEAST_GAP_PX ? step : null)
  return { unitM, major, mid: kept(mid), minor: kept(minor) ?? (coarserMinor === undefined ? null : kept(coarserMinor)) }
}

export interface Tick {
  atM: number
  rank: 'major' | 'mid' | 'minor'
  /** Figure beside a major mark, without sign and unit: the colour of the tape says which side it is; '' at the datum. */
  figure: string
}

/** Marks from one running distance to another, ends included, in order. A mark of two ranks counts as the higher. */
export const ticksBetween = (fromM: number, toM: number, steps: TickSteps): Tick[] => {
  const step = steps.minor ?? steps.mid ?? steps.major
  const first = Math.ceil(fromM / steps.unitM / step - 1e-9)
  const last = Math.floor(toM / steps.unitM / step + 1e-9)
  const ticks: Tick[] = []
  for (let i = first; i <= last; i++) {
    const at = i * step
    const isMultiple = (of: number | null): boolean => of !== null && Math.abs(at / of - Math.round(at / of)) < 1e-6
    const rank = isMultiple(steps.major) ? 'major' : isMultiple(steps.mid) ? 'mid' : 'minor'
    const figure = rank === 'major' && i !== 0 ? String(Math.round(Math.abs(at) * 100) / 100) : ''
    ticks.push({ atM: at * steps.unitM + 0, rank, figure })
  }
  return ticks
}
