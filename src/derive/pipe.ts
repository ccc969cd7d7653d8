/** The job's pipe as the mechanics need it. */
import { modulusForQuestionPa } from '../engine/pipe/modulus.ts'
import { pipeProperties, type PipeProperties } from '../engine/pipe/pipeProperties.ts'
import type { LoadQuestion } from '../engine/pipe/tables.ts'
import type { JobRecord } from '../scene/records/frame.ts'
import type { JobPipe, MissingInput } from './types.ts'

/** Wall temperature the modulus tables are written for; stands in where nobody gave one. */
export const RATING_TEMPERATURE_C = 23

const pipes = new WeakMap<JobRecord, JobPipe>()

/**
 * Pipe properties of the job and its stiffness by question.
 *
 * Model:  walls and weight by the product's convention (mean wall for weight, minimum wall for stiffness); modulus by
 *         class, duration of the question and wall temperature. docs/formulas/pipe.md.
 * Output: `properties` null and `missing` naming the field where the pipe is unknown or not in the tables.
 *         A wall temperature nobody gave is taken as 23 °C and flagged, never passed over.
 */
export function pipeOf(job: JobRecord): JobPipe {
  const known = pipes.get(job)
  if (known !== undefined) return known
  const made = build(job)
  pipes.set(job, made)
  return made
}

function build(job: JobRecord): JobPipe {
  const missing: MissingInput[] = []
  const properties = propertiesOf(job, missing)
  const given = job.wallTemperatureC.value
  const wallTemperatureC = given ?? RATING_TEMPERATURE_C
  if (given === null) missing.push({ recordId: job.id, path: 'wallTemperatureC.value', label: { en: 'temperature of the pipe wall', es: 'temperatura de la pared del tubo' } })
  const stiffness = new Map<LoadQuestion, number | null>()
  return {
    properties,
    odM: properties?.odM ?? null,
    wallTemperatureC,
    temperatureAssumed: given === null,
    missing,
    stiffnessNm2: (question) => {
      let value = stiffness.get(question)
      if (value === undefined) {
        const modulus = properties === null ? null : modulusForQuestionPa({ material: properties.material, question, temperatureC: wallTemperatureC })
        value = modulus !== null && modulus.status === 'ok' ? modulus.value * properties!.inertiaM4 : null
        stiffness.set(question, value)
      }
      return value
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
