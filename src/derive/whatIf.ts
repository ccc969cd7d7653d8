/** Cases of the same layout: as planned or as set, and what-ifs laid over it. A case is view state, never a stored copy. */
import type { JobRecord, Surface } from '../scene/records/frame.ts'
import type { YardDocument } from '../scene/document.ts'

/** One end or the middle of a band. */
export type BandPart = 'low' | 'likely' | 'high'

/** What is supposed for once, over the plan. Everything left out is as planned; an empty object is the plan. */
export interface WhatIf {
  /** Wall of the pipe warmer by this much, °C; colder is negative. It also adds to the swing the growth is worked out for. */
  warmerC?: number
  /** Ids of items taken away. */
  missing?: readonly string[]
  /** Legs of the run on grass, and those nobody has said, are wet grass. */
  wetGrass?: boolean
  /** Wind across the string, m/s, ≥ 0. */
  windMPerS?: number
  /** One end of the friction table for pull and run-away alike; left out, the pull takes the high values and the run-away the low ones. */
  friction?: BandPart
  /** One end of the band of the modulus (shared/tables/modulus.json). */
  modulus?: BandPart
  /** One end of the bands of wall temperature and swing, where the job gives them. */
  temperature?: BandPart
  /** A support lower than planned by this much, m, down positive. */
  sink?: { itemId: string; byM: number }
}

/** Which case of the layout is derived. */
export interface DeriveOptions {
  /** The set-up shown; default: the first of the document. */
  setUpId?: string
  /** Of several strings the one shown; default: the first of the document. */
  stringId?: string
  /** `asSet`: heights the crew measured replace the planned ones where there are any. */
  variant?: 'planned' | 'asSet'
  whatIf?: WhatIf
}

/** The case on the screen. */
export interface ShownCase {
  variant: 'planned' | 'asSet'
  whatIf: WhatIf
  /** Of several strings the one on the screen, no supposition: left out, the first. */
  stringId?: string
}

export const thePlan: ShownCase = { variant: 'planned', whatIf: {} }

/** A what-if without the entries that suppose nothing, in one order, so that equal cases have equal marks. */
export function tidyWhatIf(whatIf: WhatIf): WhatIf {
  const { warmerC = 0, missing = [], wetGrass = false, windMPerS = 0, friction, modulus, temperature, sink } = whatIf
  return {
    ...(warmerC === 0 ? {} : { warmerC }),
    ...(missing.length === 0 ? {} : { missing: [...new Set(missing)].toSorted() }),
    ...(wetGrass ? { wetGrass } : {}),
    ...(windMPerS > 0 ? { windMPerS } : {}),
    ...(friction === undefined ? {} : { friction }),
    ...(modulus === undefined ? {} : { modulus }),
    ...(temperature === undefined ? {} : { temperature }),
    ...(sink === undefined || sink.byM === 0 ? {} : { sink }),
  }
}

export const isPlan = ({ variant, whatIf }: ShownCase): boolean => variant === 'planned' && Object.keys(tidyWhatIf(whatIf)).length === 0

/** Names the case in the stamp of a result: '' for the plan of the first string, else what it supposes and which string it is of. */
export const caseMark = (shown: ShownCase): string =>
  `${isPlan(shown) ? '' : `~${shown.variant}${JSON.stringify(tidyWhatIf(shown.whatIf))}`}${shown.stringId === undefined ? '' : `#${shown.stringId}`}`

/** The document without what is missing, for everything that counts or looks up records. The one given stays as it is. */
export function withoutMissing(document: YardDocument, { missing = [] }: WhatIf): YardDocument {
  const gone = missing.filter((id) => document.records[id] !== undefined)
  if (gone.length === 0) return document
  const records = { ...document.records }
  for (const id of gone) delete records[id]
  return { records }
}

/** An end of a band; the value itself is the likely one, whatever was likely when the band was typed. */
const endOf = (band: { low: number; high: number } | undefined, part: BandPart | undefined, value: number): number => (band === undefined || part === undefined || part === 'likely' ? value : band[part])

/** The job with the swing of the wall temperature at one end of its band, widened by what the wall is warmer. Unknown stays unknown. */
export function jobInCase(job: JobRecord, { warmerC = 0, temperature }: WhatIf): JobRecord {
  const { temperatureSwingC: swing } = job
  if (swing.value === null) return job
  const value = endOf(swing.band, temperature, swing.value) + warmerC
  return value === swing.value ? job : { ...job, temperatureSwingC: { ...swing, value } }
}

/** Wall temperature of a case, °C, from the one the plan works with (given or the tables' 23 °C). */
export function wallTemperatureInCase(job: JobRecord, plannedC: number, { warmerC = 0, temperature }: WhatIf): number {
  const { band } = job.wallTemperatureC
  return endOf(band, temperature, plannedC) + warmerC
}

export const surfaceInCase = (surface: Surface | null, { wetGrass = false }: WhatIf): Surface | null => (wetGrass && (surface === null || surface === 'grass') ? 'wetGrass' : surface)

/** Supports with the one that sinks lowered. */
export function sunk<T extends { itemId: string; levelM: number | null; saddleM: number | null }>(supports: readonly T[], { sink }: WhatIf): readonly T[] {
  if (sink === undefined) return supports
  const down = (levelM: number | null): number | null => (levelM === null ? null : levelM - sink.byM)
  return supports.map((view) => (view.itemId === sink.itemId ? { ...view, levelM: down(view.levelM), saddleM: down(view.saddleM) } : view))
}
