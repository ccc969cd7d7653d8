/** Units a plan's coordinates may be in. `degrees`: longitude and latitude, WGS 84. */
export const planUnits = ['m', 'ft', 'usft', 'in', 'cm', 'mm', 'degrees'] as const
export type PlanUnit = (typeof planUnits)[number]

export interface ForeignShape {
  layer: string
  name: string
  as: 'area' | 'line' | 'point'
  /** x and y as the file has them; an area's first corner is not repeated. */
  points: readonly (readonly [x: number, y: number])[]
}

export interface ForeignPlan {
  shapes: readonly ForeignShape[]
  /** Unit the file says, to be shown and confirmed; null: it says none. */
  saidUnit: PlanUnit | null
  /** What of the file is not read: its own name for it and how often. */
  skipped: readonly { what: string; count: number }[]
}

export interface PlanLimits {
  chars: number
  depth: number
  shapes: number
  cornersOfOne: number
  corners: number
}

/** Looked at before and while a plan is read. Corners of one: as many as a record may have. */
export const planLimits: PlanLimits = { chars: 6_000_000, depth: 16, shapes: 5000, cornersOfOne: 2000, corners: 60_000 }
