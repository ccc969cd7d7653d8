/**
 * The pipe tables of shared/tables as typed rows, in the units of their source (converted where
 * used). Each table carries its source; `basis` says whether a figure was read in it or recalled.
 */
import allowablePullJson from '../../../shared/tables/allowable-pull.json' with { type: 'json' }
import bendRadiusJson from '../../../shared/tables/bend-radius.json' with { type: 'json' }
import frictionJson from '../../../shared/tables/friction.json' with { type: 'json' }
import fusionJson from '../../../shared/tables/fusion.json' with { type: 'json' }
import jointLossJson from '../../../shared/tables/joint-loss.json' with { type: 'json' }
import materialsJson from '../../../shared/tables/materials.json' with { type: 'json' }
import metricWallsJson from '../../../shared/tables/metric-walls.json' with { type: 'json' }
import modulusJson from '../../../shared/tables/modulus.json' with { type: 'json' }
import pipeSizesJson from '../../../shared/tables/pipe-sizes.json' with { type: 'json' }
import stackRowsJson from '../../../shared/tables/stack-rows.json' with { type: 'json' }
import surfacesJson from '../../../shared/tables/surfaces.json' with { type: 'json' }
import type { Localized } from '../../units/language.ts'

export type PipeSystem = 'IPS' | 'DIPS' | 'metric'
export type PipeMaterial = 'PE4710' | 'PE3608' | 'PE2708' | 'PE100' | 'PE80'
export type ModulusClass = 'PE2XXX' | 'PE3XXX' | 'PE4XXX'
export type PullEdition = 'F1804' | 'handbookCh12' | 'ppi2015'
/** What a modulus is asked for; the duration of the load follows from it. */
export type LoadQuestion = 'nose' | 'pull' | 'jaws' | 'fusing' | 'rest' | 'stored'
export type SurfaceId = 'gravel' | 'grass' | 'wetGrass' | 'asphalt' | 'concrete' | 'clay' | 'sand' | 'mat' | 'liner'

export interface OdRow {
  size: string
  odIn: number
  basis: string
}

export interface MetricRow {
  odMm: number
  wallMm: readonly (number | null)[]
  massKgPerM: readonly (number | null)[]
}

export interface MaterialRow {
  material: PipeMaterial
  modulusClass: ModulusClass
  /** Why the class is not the material's own; absent for the ASTM designations. */
  classNote?: Localized
  densityKgPerM3: number
  expansionPerF: number
  yieldPsi: number | null
}

export interface ModulusRow {
  durationH: number
  psi: readonly number[]
  basis: string
}

export interface PullEditionRow {
  id: PullEdition
  title: Localized
  source: string
}

export interface StressEdition extends PullEditionRow {
  classes: readonly ModulusClass[]
  rows: readonly { durationH: number; psi: readonly number[]; basis: string }[]
}

export interface SurfaceRow {
  id: SurfaceId
  title: Localized
  rollingRatio: number
  bearingKPa: number
  scuffs: boolean
}

export interface FrictionRow {
  id: SurfaceId | 'rollers' | 'unknown'
  pullHigh: number
  likely: number
  runAwayLow: number
  source: string
  basis: string
}

// JSON gives plain strings where a row names one of a closed set; tests/engine/pipe/tables.test.ts
// checks every such name, so the narrowing below is not a promise left unkept.
export const usSizes: Readonly<Record<'IPS' | 'DIPS', readonly OdRow[]>> = {
  IPS: pipeSizesJson.systems.IPS.rows,
  DIPS: pipeSizesJson.systems.DIPS.rows,
}
export const drSeries: readonly number[] = pipeSizesJson.drSeries.values
export const meanWallFactor: number = pipeSizesJson.meanWall.factor
export const metricSdr: readonly number[] = metricWallsJson.sdr
export const metricRows: readonly MetricRow[] = metricWallsJson.rows
export const materialRows = materialsJson.rows as readonly MaterialRow[]
export const modulusClasses = modulusJson.classes as readonly ModulusClass[]
export const modulusRows: readonly ModulusRow[] = modulusJson.rows
/** Factors on the modulus of the table: batch and handling. */
export const modulusBand: { low: number; likely: number; high: number } = modulusJson.band
export const temperatureMultipliers = pairs(modulusJson.temperature.rows)
export const questionDurationH: Readonly<Record<LoadQuestion, number>> = modulusJson.questions.durationH
/** How long such loads truly last where the table has no row so short. */
export const questionWantedH: Readonly<Partial<Record<LoadQuestion, number>>> = modulusJson.questions.wantedH
export const bendRows: readonly { dr: number; timesOd: number; basis: string }[] = bendRadiusJson.rows
export const fittingTimesOd: number = bendRadiusJson.fittingInBend.timesOd
export const bendSource: string = bendRadiusJson.source
export const jointLossRows = pairs(jointLossJson.rows)
export const surfaceRows = surfacesJson.surfaces as readonly SurfaceRow[]
export const frictionRows = frictionJson.rows as readonly FrictionRow[]
export const unknownFriction = frictionJson.unknownSurface as FrictionRow
export const breakawayFactors: { low: number; high: number } = frictionJson.breakaway
/** IPS size in inches, rows for DR up to 17, rows for thinner pipe. */
export const stackRowTable: readonly { sizeIn: number; thick: number; thin: number }[] = stackRowsJson.rows.map(([sizeIn = 0, thick = 0, thin = 0]) => ({ sizeIn, thick, thin }))
export const fusionTable = fusionJson

/** Rows of two numbers as pairs; a short row is a broken table, said by name. */
export function pairs(rows: readonly (readonly number[])[]): readonly (readonly [number, number])[] {
  return rows.map(([first, second], index) => {
    if (first === undefined || second === undefined) throw new RangeError(`table row ${index + 1} has fewer than two numbers`)
    return [first, second] as const
  })
}

const [f1804, handbookCh12, ppi2015] = allowablePullJson.editions
export const pullEditions = allowablePullJson.editions as readonly PullEditionRow[]
export const f1804Edition = f1804 as PullEditionRow & { designFactor: number; timeFactor: number[][] }
export const stressEditions = [handbookCh12, ppi2015] as readonly StressEdition[]
export const yieldTemperatureRule: { lessPerF: number; fromF: number; floor: number } = allowablePullJson.temperature

/** Friction of a surface; the unknown surface drags as the worst and runs away as the best. */
export function frictionOf(surface: SurfaceId | 'rollers' | null): FrictionRow {
  return frictionRows.find(({ id }) => id === surface) ?? unknownFriction
}

export function materialOf(material: PipeMaterial): MaterialRow {
  const row = materialRows.find((candidate) => candidate.material === material)
  if (!row) throw new RangeError(`material ${String(material)} is not in the table of materials`)
  return row
}

/** Sizes of a system in order, as they are written on the pipe: '12' in, or '315' mm. */
export function sizesOf(system: PipeSystem): { size: string; odM: number }[] {
  if (system === 'metric') return metricRows.map(({ odMm }) => ({ size: String(odMm), odM: odMm / 1000 }))
  return usSizes[system].map(({ size, odIn }) => ({ size, odM: odIn * 0.0254 }))
}

/** DRs a size is listed with: the usual series, or for metric pipe the SDRs its row has a wall for. */
export function drsOf(system: PipeSystem, size: string): number[] {
  if (system !== 'metric') return [...drSeries]
  const row = metricRows.find(({ odMm }) => String(odMm) === size)
  return row ? metricSdr.filter((_, index) => typeof row.wallMm[index] === 'number').toReversed() : []
}
