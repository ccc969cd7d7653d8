/** The job's pipe as the mechanics need it. */
import { modulusForQuestionPa } from '../engine/pipe/modulus.ts'
import { pipeProperties, type PipeProperties } from '../engine/pipe/pipeProperties.ts'
import { modulusBand, questionDurationH, questionWantedH, type LoadQuestion } from '../engine/pipe/tables.ts'
import type { JobRecord } from '../scene/records/frame.ts'
import type { JobPipe, MissingInput } from './types.ts'
import { wallTemperatureInCase, type BandPart, type WhatIf } from './whatIf.ts'

/** Questions shown: fusing lasts as long as the jaws. */
export type ShownQuestion = Exclude<LoadQuestion, 'fusing'>

/** A question the modulus is asked for, as the screen shows it. */
export interface ModulusRowView {
  question: ShownQuestion
  /** How long such a load lasts, h, and for how long the table is read: nose and pull use its shortest row. */
  durationH: number
  readAtH: number
  /** Pa; null where pipe or table has none. */
  modulusPa: number | null
  lowPa: number | null
  highPa: number | null
}

const questions: readonly ShownQuestion[] = ['nose', 'pull', 'jaws', 'rest', 'stored']

/** Modulus by question at the wall temperature worked with, with the ends of its band. */
export const modulusRowsOf = (pipe: JobPipe): ModulusRowView[] => questions.map((question) => {
  const modulusPa = pipe.modulusPa(question)
  const times = (factor: number): number | null => (modulusPa === null ? null : modulusPa * factor)
  return { question, durationH: questionWantedH[question] ?? questionDurationH[question], readAtH: questionDurationH[question], modulusPa, lowPa: times(modulusBand.low), highPa: times(modulusBand.high) }
})

/** Wall temperature the modulus tables are written for; stands in where nobody gave one. */
export const RATING_TEMPERATURE_C = 23

// Keeps nothing but what job and case determine.
const pipes = new WeakMap<JobRecord, Map<string, JobPipe>>()

/**
 * Pipe properties of the job and its stiffness by question.
 *
 * Model:  walls and weight by the product's convention (mean wall for weight, minimum wall for stiffness); modulus by
 *         class, duration of the question and wall temperature. docs/formulas/pipe.md.
 * Output: `properties` null and `missing` naming the field where the pipe is unknown or not in the tables.
 *         A wall temperature nobody gave is taken as 23 °C and flagged, never passed over.
 *         A case may take the wall warmer, or one end of the bands of temperature and modulus.
 */
export function pipeOf(job: JobRecord, { warmerC = 0, modulus = 'likely', temperature }: WhatIf = {}): JobPipe {
  const ofJob = pipes.get(job) ?? new Map<string, JobPipe>()
  pipes.set(job, ofJob)
  const key = `${warmerC},${modulus},${temperature ?? ''}`
  const known = ofJob.get(key)
  if (known !== undefined) return known
  const made = build(job, { warmerC, modulus, ...(temperature === undefined ? {} : { temperature }) })
  ofJob.set(key, made)
  return made
}

function build(job: JobRecord, whatIf: WhatIf & { modulus: BandPart }): JobPipe {
  const missing: MissingInput[] = []
  const properties = propertiesOf(job, missing)
  const given = job.wallTemperatureC.value
  const wallTemperatureC = wallTemperatureInCase(job, given ?? RATING_TEMPERATURE_C, whatIf)
  if (given === null) missing.push({ recordId: job.id, path: 'wallTemperatureC.value', label: { en: 'temperature of the pipe wall', es: 'temperatura de la pared del tubo' } })
  const moduli = new Map<LoadQuestion, number | null>()
  const modulusPa = (question: LoadQuestion): number | null => {
    let value = moduli.get(question)
    if (value === undefined) {
      const modulus = properties === null ? null : modulusForQuestionPa({ material: properties.material, question, temperatureC: wallTemperatureC })
      value = modulus !== null && modulus.status === 'ok' ? modulus.value * modulusBand[whatIf.modulus] : null
      moduli.set(question, value)
    }
    return value
  }
  return {
    properties,
    odM: properties?.odM ?? null,
    wallTemperatureC,
    temperatureAssumed: given === null,
    missing,
    modulusPa,
    stiffnessNm2: (question) => {
      const modulus = modulusPa(question)
      return modulus === null || properties === null ? null : modulus * properties.inertiaM4
    },
  }
}

function propertiesOf(job: JobRecord, missing: MissingInput[]): PipeProperties | null {
  if (job.pipe === null) {
    missing.push({ recordId: job.id, path: 'pipe', label: { en: 'pipe: size, DR and material', es: 'tubo: tamaño, DR y material' } })
    return null
  }
  const outcome = pipeProperties(job.pipe)
  if (outcome.status === 'ok') return outcome.value
  const label = outcome.status === 'uncovered' ? outcome.reason : { en: 'pipe: size, DR and material', es: 'tubo: tamaño, DR y material' }
  missing.push({ recordId: job.id, path: 'pipe', label })
  return null
}
