/** What each `check` of shared/cases/pipe-cases.json computes, in the unit of its row. Inputs come from JSON and are read by name. */
import { fahrenheitToC, footM, footPoundNm, hourS, inchM, minuteS, poundForceN, poundPerFootNPerM, psiPa, squareInchM2 } from '../../../src/units/factors.ts'
import type { Outcome } from '../../../src/engine/outcome.ts'
import { allowableTensileLoadN } from '../../../src/engine/pipe/allowablePull.ts'
import { bendStrainRatio, bendTimesOd, minimumBendRadiusM } from '../../../src/engine/pipe/bendRadius.ts'
import { fusionForceN, gaugePressurePa, jointFigures, singleHighPressure, usualInterfacialPa } from '../../../src/engine/pipe/fusion.ts'
import { apparentModulusPa, temperatureMultiplier } from '../../../src/engine/pipe/modulus.ts'
import { pipeProperties } from '../../../src/engine/pipe/pipeProperties.ts'
import type { PipeProperties } from '../../../src/engine/pipe/pipeProperties.ts'
import { equalMomentPickRatio, equalSpans, simpleSpanForSagM, simpleSpanSagM } from '../../../src/engine/pipe/spans.ts'
import { frictionOf } from '../../../src/engine/pipe/tables.ts'
import type { ModulusClass, PipeMaterial, PipeSystem, PullEdition, SurfaceId } from '../../../src/engine/pipe/tables.ts'
import { restrainedBow, thermalChangeM } from '../../../src/engine/pipe/thermal.ts'
import { overheadClearanceM, transitClearanceM } from '../../../src/engine/safety/overheadClearance.ts'
import { trenchRules } from '../../../src/engine/safety/trenchRules.ts'

export interface CaseInput {
  system?: string
  size?: string
  dr?: number
  density?: number
  material?: string
  edition?: string
  materialClass?: string
  surface?: string
  hours?: number
  temperatureC?: number
  temperatureF?: number
  spanFt?: number
  sagIn?: number
  spanCount?: number
  index?: number
  fitting?: boolean
  timesOd?: number
  lengthFt?: number
  riseF?: number
  odIn?: number
  odMm?: number
  renardS?: number
  ratio?: number
  pistonIn2?: number
  dragPsi?: number
  wallMm?: number
  kv?: number
  depthFt?: number
  modulusPsi?: number
}

export interface CaseRow {
  id: string
  check: string
  input: CaseInput
  expected: number
  tolerance: { relative?: number; absolute?: number }
  unit: string
  source: string
  basis: string
}

/** The value of an outcome; a case whose answer is missing or uncovered is a failed case. */
export function must<T>(outcome: Outcome<T>): T {
  if (outcome.status !== 'ok') throw new Error(JSON.stringify(outcome))
  return outcome.value
}

const num = (value: number | undefined): number => {
  if (value === undefined) throw new Error('the case lacks a number its check needs')
  return value
}

function pipeOf(input: CaseInput): PipeProperties {
  return must(pipeProperties({
    system: input.system as PipeSystem,
    size: input.size ?? null,
    dr: input.dr ?? null,
    material: (input.material ?? 'PE4710') as PipeMaterial,
    densityKgPerM3: input.density === undefined ? null : input.density * 1000,
  }))
}

const beamOf = (input: CaseInput) => {
  const pipe = pipeOf(input)
  return { lineLoadNPerM: pipe.lineLoadNPerM, bendingStiffnessNm2: num(input.modulusPsi) * psiPa * pipe.inertiaM4 }
}
const simpleMomentNm = (input: CaseInput): number => (pipeOf(input).lineLoadNPerM * (num(input.spanFt) * footM) ** 2) / 8
// w = L = EI = 1, so that every answer is the table's coefficient.
const spansOf = (input: CaseInput) => equalSpans({ lineLoadNPerM: 1, bendingStiffnessNm2: 1 }, { spanCount: num(input.spanCount), spanM: 1 })
const at = (values: readonly number[], input: CaseInput): number => num(values[num(input.index)])
const pull = (input: CaseInput) => {
  const pipe = pipeOf(input)
  return must(allowableTensileLoadN({ edition: input.edition as PullEdition, material: pipe.material, odM: pipe.odM, dr: pipe.dr, durationS: num(input.hours) * hourS, wallTemperatureC: 23 }))
}
const jointOf = (input: CaseInput) => jointFigures(pipeOf(input))
const forceN = (input: CaseInput): number => fusionForceN({ faceAreaM2: pipeOf(input).faceAreaM2, interfacialPa: usualInterfacialPa })
const temperatureC = (input: CaseInput): number => input.temperatureC ?? fahrenheitToC(num(input.temperatureF))
const growthM = (input: CaseInput): number => must(thermalChangeM({ material: input.material as PipeMaterial, lengthM: num(input.lengthFt) * footM, temperatureChangeC: num(input.riseF) / 1.8 }))
const bowOf = (input: CaseInput) => restrainedBow({ lengthM: num(input.lengthFt) * footM, odM: num(input.odIn) * inchM, expansionRatio: num(input.ratio) })
const shp = (input: CaseInput) => singleHighPressure(num(input.wallMm) / 1000)
const lengthIn = (lengthM: number, unit: string): number => lengthM / ({ in: inchM, ft: footM, mm: 0.001, m: 1 }[unit] ?? Number.NaN)

export const caseChecks: Record<string, (input: CaseInput, unit: string) => number> = {
  wall: (input, unit) => lengthIn(pipeOf(input).minimumWallM, unit),
  renardWall: (input) => num(input.odMm) / (2 * num(input.renardS) + 1),
  weight: (input) => pipeOf(input).lineLoadNPerM / poundPerFootNPerM,
  mass: (input) => pipeOf(input).massKgPerM,
  modulus: (input, unit) => must(apparentModulusPa({ materialClass: input.materialClass as ModulusClass, durationS: num(input.hours) * hourS, temperatureC: temperatureC(input) })) / (unit === 'psi' ? psiPa : 1e6),
  multiplier: (input) => num(temperatureMultiplier(temperatureC(input))),
  inertia: (input) => pipeOf(input).inertiaM4 / inchM ** 4,
  simpleSag: (input) => simpleSpanSagM(beamOf(input), num(input.spanFt) * footM) / inchM,
  simpleMoment: (input) => simpleMomentNm(input) / footPoundNm,
  simpleStress: (input) => simpleMomentNm(input) / pipeOf(input).sectionModulusM3 / psiPa,
  simpleReaction: (input) => (pipeOf(input).lineLoadNPerM * num(input.spanFt) * footM) / 2 / poundForceN,
  spanForSag: (input) => simpleSpanForSagM(beamOf(input), num(input.sagIn) * inchM) / footM,
  spanReaction: (input) => at(spansOf(input).reactionsN, input),
  supportMoment: (input) => -at(spansOf(input).supportMomentsNm, input),
  spanMoment: (input) => at(spansOf(input).spanMomentsNm, input),
  spanSag: (input) => at(spansOf(input).sagsM, input),
  pickRatio: () => equalMomentPickRatio,
  bend: (input, unit) => lengthIn(must(minimumBendRadiusM({ ...pipeOf(input), fittingInBend: input.fitting ?? false })), unit),
  bendTimesOd: (input) => num(bendTimesOd(num(input.dr))),
  bendStrain: (input) => bendStrainRatio(1, num(input.timesOd)),
  pull: (input) => pull(input).loadN / poundForceN,
  pullStress: (input) => pull(input).stressPa / psiPa,
  drag: (input) => (frictionOf(input.surface as SurfaceId | 'rollers').pullHigh * pipeOf(input).lineLoadNPerM * num(input.lengthFt) * footM) / poundForceN,
  growth: (input) => growthM(input) / inchM,
  bow: (input) => bowOf(input).bowM / footM,
  bowStrain: (input) => bowOf(input).strainRatio,
  faceArea: (input) => pipeOf(input).faceAreaM2 / squareInchM2,
  fusionForce: (input) => forceN(input) / poundForceN,
  gauge: (input) => gaugePressurePa({ forceN: forceN(input), pistonAreaM2: num(input.pistonIn2) * squareInchM2, dragPa: num(input.dragPsi) * psiPa }) / psiPa,
  cooling: (input) => jointOf(input).coolingS / minuteS,
  heaterOut: (input) => jointOf(input).heaterOutS,
  soak: (input) => num(jointOf(input).soakS ?? undefined) / minuteS,
  hiLo: (input) => jointOf(input).hiLoM / inchM,
  damage: (input) => jointOf(input).damageDepthM / inchM,
  shpSoak: (input) => shp(input).soakS,
  shpBead: (input) => shp(input).beadM * 1000,
  shpRemoval: (input) => shp(input).removalS,
  shpCooling: (input) => shp(input).coolingS / minuteS,
  coolingPerMm: () => jointFigures({ odM: 1, minimumWallM: 0.001 }).coolingS / minuteS,
  tableA: (input) => num(overheadClearanceM(num(input.kv)).clearanceM ?? undefined) / footM,
  trigger: (input) => overheadClearanceM(num(input.kv)).triggerM / footM,
  vehicles: (input) => num(overheadClearanceM(num(input.kv)).vehiclesM ?? undefined) / inchM,
  transit: (input) => num(transitClearanceM(num(input.kv)) ?? undefined) / footM,
  trenchEdge: (input) => trenchRules(num(input.depthFt) * footM).edgeM / footM,
  trenchLadder: (input) => trenchRules(num(input.depthFt) * footM).egressTravelM / footM,
}
