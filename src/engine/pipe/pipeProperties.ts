/** Section, weight and stiffness of a pipe by system, size and DR. */
import { gravityMPerS2, inchM } from '../../units/factors.ts'
import type { Localized } from '../../units/language.ts'
import { known, missingAmong, requireNumber, uncovered } from '../outcome.ts'
import type { Outcome } from '../outcome.ts'
import { materialOf, meanWallFactor, metricRows, metricSdr, usSizes } from './tables.ts'
import type { ModulusClass, PipeMaterial, PipeSystem } from './tables.ts'

/** Which wall a figure is worked from: the least the standard allows, 6 % over it, or one that was measured. */
export type WallConvention = 'minimum' | 'mean' | 'given'

export interface PipeInput {
  system: PipeSystem | null
  /** As written on the pipe: '12' for 12 in, '315' for dn 315. */
  size: string | null
  dr: number | null
  material: PipeMaterial | null
  /** Replaces the density of the material. */
  densityKgPerM3?: number | null
  /** Wall for the weight; default 'mean'. */
  weightWall?: WallConvention
  /** Wall for stiffness, stress and radius; default 'minimum'. */
  stiffnessWall?: WallConvention
  /** The measured wall, needed where a convention is 'given'. */
  givenWallM?: number | null
}

export interface PipeProperties {
  system: PipeSystem
  size: string
  dr: number
  material: PipeMaterial
  modulusClass: ModulusClass
  /** Set where the class stands for another designation. */
  classNote: Localized | null
  odM: number
  minimumWallM: number
  meanWallM: number
  weightWallM: number
  stiffnessWallM: number
  /** From the stiffness wall. */
  idM: number
  densityKgPerM3: number
  massKgPerM: number
  /** Own weight, down positive. */
  lineLoadNPerM: number
  inertiaM4: number
  sectionModulusM3: number
  /** Area of the pipe's end face from the minimum wall: fusion face and tensile area. */
  faceAreaM2: number
  /** Offset allowance and damage depth: a tenth of the minimum wall. */
  tenthOfWallM: number
}

/** Area of a ring of outside diameter D and wall t: π (D − t) t, the same as π/4 (D² − d²). */
export function ringAreaM2(odM: number, wallM: number): number {
  return Math.PI * (odM - wallM) * wallM
}

/** Second moment of area of a ring: π/64 (D⁴ − d⁴). */
export function ringInertiaM4(odM: number, wallM: number): number {
  const idM = odM - 2 * wallM
  return (Math.PI / 64) * (odM ** 4 - idM ** 4)
}

function outsideDiameterM(system: PipeSystem, size: string): number | undefined {
  if (system === 'metric') {
    const row = metricRows.find(({ odMm }) => String(odMm) === size)
    return row && row.odMm / 1000
  }
  const row = usSizes[system].find((candidate) => candidate.size === size)
  return row && row.odIn * inchM
}

/** OD / DR to the nearest 0.001 in for IPS and DIPS; the table's wall for metric pipe, undefined where it has none. */
export function minimumWallM(system: PipeSystem, size: string, dr: number): number | undefined {
  const odM = outsideDiameterM(system, size)
  if (odM === undefined) return undefined
  if (system !== 'metric') return (Math.round((odM / inchM / dr) * 1000) / 1000) * inchM
  const wallMm = metricRows.find(({ odMm }) => String(odMm) === size)?.wallMm[metricSdr.indexOf(dr)]
  return typeof wallMm === 'number' ? wallMm / 1000 : undefined
}

/**
 * What a pipe is and weighs.
 *
 * Model:  minimum wall OD/DR to 0.001 in (metric: table); mean wall 1.06 × minimum; weight from the mean wall,
 *         stiffness, stress and radius from the minimum wall, unless the input says otherwise.
 * Input:  any of system, size, dr, material may be null.
 * Output: 'missing' naming the null fields; 'uncovered' for a size or DR the tables do not have.
 * Valid:  DR 5 to 60 for IPS and DIPS; the SDRs of the table for metric pipe.
 * Fails:  RangeError for a wall or density that is not a positive number, or no wall where the convention is 'given'.
 * Source: ASTM F714, AWWA C906 (wall rule and tolerance from memory, confirm); AS/NZS 4130 and ISO 4427-2 (metric walls);
 *         PPI TR-7 (weight by mean wall). docs/formulas/pipe.md.
 */
export function pipeProperties(input: PipeInput): Outcome<PipeProperties> {
  const { system, size, dr, material } = input
  if (system === null || size === null || dr === null || material === null) return missingAmong({ system, size, dr, material })!
  const odM = outsideDiameterM(system, size)
  if (odM === undefined) return uncovered('size', `${system} has no size ${size}`, `${system} no tiene el tamaño ${size}`)
  if (!(dr >= 5 && dr <= 60)) return uncovered('dr', `DR ${dr} is outside 5 to 60`, `el DR ${dr} está fuera de 5 a 60`)
  const minimumM = minimumWallM(system, size, dr)
  if (minimumM === undefined) return uncovered('dr', `the table has no wall for ${size} mm SDR ${dr}`, `la tabla no tiene pared para ${size} mm SDR ${dr}`)

  const meanM = meanWallFactor * minimumM
  const wallBy = (convention: WallConvention): number => {
    if (convention === 'minimum') return minimumM
    if (convention === 'mean') return meanM
    if (input.givenWallM === null || input.givenWallM === undefined) throw new RangeError('givenWallM is missing though the wall convention is "given"')
    requireNumber('givenWallM', input.givenWallM, { above: 0 })
    if (input.givenWallM >= odM / 2) throw new RangeError(`givenWallM is ${input.givenWallM}, must be below half the outside diameter ${odM}`)
    return input.givenWallM
  }
  const weightWallM = wallBy(input.weightWall ?? 'mean')
  const stiffnessWallM = wallBy(input.stiffnessWall ?? 'minimum')
  const row = materialOf(material)
  const densityKgPerM3 = input.densityKgPerM3 ?? row.densityKgPerM3
  requireNumber('densityKgPerM3', densityKgPerM3, { above: 0 })
  const massKgPerM = ringAreaM2(odM, weightWallM) * densityKgPerM3
  const inertiaM4 = ringInertiaM4(odM, stiffnessWallM)
  return known({
    system, size, dr, material,
    modulusClass: row.modulusClass,
    classNote: row.classNote ?? null,
    odM,
    minimumWallM: minimumM,
    meanWallM: meanM,
    weightWallM,
    stiffnessWallM,
    idM: odM - 2 * stiffnessWallM,
    densityKgPerM3,
    massKgPerM,
    lineLoadNPerM: massKgPerM * gravityMPerS2,
    inertiaM4,
    sectionModulusM3: inertiaM4 / (odM / 2),
    faceAreaM2: ringAreaM2(odM, minimumM),
    tenthOfWallM: 0.1 * minimumM,
  })
}
