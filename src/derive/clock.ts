/** The clock and the fusion figures of the job, from what the document says. */
import { jobClock, type JobClock } from '../engine/clock/jobClock.ts'
import { cycleS, jointTimes, type StepTime } from '../engine/clock/jointTimes.ts'
import { fusionForceN, jointFigures, usualInterfacialPa } from '../engine/pipe/fusion.ts'
import { fusionTable } from '../engine/pipe/tables.ts'
import { recordsOf } from '../scene/document.ts'
import { fahrenheitToC, inchM } from '../units/factors.ts'
import type { MissingInput, SiteModel } from './types.ts'

export type { JobClock } from '../engine/clock/jobClock.ts'

export interface SiteClock {
  joints: number
  /** Steps of one joint; null while the pipe is unknown. */
  steps: readonly StepTime[] | null
  /** One whole round, by its low, likely and high steps. */
  cycleS: { low: number; likely: number; high: number } | null
  /** By low, likely and high times; null while pipe or start time is unknown, or the end is not after the start. */
  low: JobClock | null
  likely: JobClock | null
  high: JobClock | null
  missing: readonly MissingInput[]
}

/** Start that a plan without one is reckoned from, so that the spacing of the joints shows; the answer says it is missing. */
export const ASSUMED_START_MIN = 7 * 60

/**
 * The clock of the shown string: trial and intermediate joints are not in it.
 *
 * Model:  src/engine/clock; docs/formulas/clock.md. A start nobody gave counts as 7:00 and is named in `missing`.
 */
export function clockOf(site: SiteModel): SiteClock {
  const { job, pipe, sticks } = site
  const joints = Math.max(0, sticks.stickCount - 1)
  const missing: MissingInput[] = pipe.properties === null ? pipe.missing.filter(({ path }) => path === 'pipe') : []
  if (job.clock.startMin === null) missing.push({ recordId: job.id, path: 'clock.startMin', label: { en: 'start of work', es: 'inicio del trabajo' } })
  const properties = pipe.properties
  if (properties === null) return { joints, steps: null, cycleS: null, low: null, likely: null, high: null, missing }
  const own = job.procedure
  const steps = jointTimes({
    odM: properties.odM, minimumWallM: properties.minimumWallM, walks: job.method === 'walking',
    procedure: own === null ? null : { soakS: own.soakS.value, openCloseS: own.openCloseS.value, coolS: own.coolS.value, holdBeforePullS: own.holdBeforePullS.value },
  })
  const startMin = job.clock.startMin ?? ASSUMED_START_MIN
  const endMin = job.clock.endMin !== null && job.clock.endMin > startMin ? job.clock.endMin : null
  const by = (which: 'lowS' | 'likelyS' | 'highS'): JobClock => jobClock({ joints, steps, which, startMin, endMin, breaks: job.clock.breaks })
  return { joints, steps, cycleS: { low: cycleS(steps, 'lowS'), likely: cycleS(steps), high: cycleS(steps, 'highS') }, low: by('lowS'), likely: by('likelyS'), high: by('highS'), missing }
}

export interface FusionFigures {
  heaterLowC: number
  heaterHighC: number
  interfacialPa: number
  forceN: number
  /** Fusion pressure on the gauge without drag; null while the piston area is unknown. */
  gaugePa: number | null
  beadM: number
  soakS: number
  heaterOutS: number
  coolS: number
  hiLoM: number
  damageM: number
  /** Which of them the operator's own procedure gives. */
  own: readonly ('heaterC' | 'interfacialPressurePa' | 'beadM' | 'soakS' | 'openCloseS' | 'coolS')[]
  missing: readonly MissingInput[]
}

/**
 * What a fusion card says of the pipe, by published tables (ASTM F2620; times and beads from memory, confirm) or by the
 * operator's own procedure. Null while the pipe is unknown. It does not qualify a joint.
 */
export function fusionFiguresOf(site: SiteModel): FusionFigures | null {
  const { properties } = site.pipe
  if (properties === null) return null
  const own = site.job.procedure
  const figures = jointFigures({ odM: properties.odM, minimumWallM: properties.minimumWallM })
  const times = jointTimes({ odM: properties.odM, minimumWallM: properties.minimumWallM, walks: false, procedure: null })
  const machine = recordsOf(site.document, 'machine').find(({ setUpId }) => setUpId === site.setUp?.id) ?? null
  const pistonAreaM2 = machine?.figures.pistonAreaM2.value ?? null
  const interfacialPa = own?.interfacialPressurePa.value ?? usualInterfacialPa
  const forceN = fusionForceN({ faceAreaM2: properties.faceAreaM2, interfacialPa })
  const odIn = properties.odM / inchM
  const beadIn = (fusionTable.bead.rows.find(([upToIn = 0]) => odIn <= upToIn + 1e-9) ?? fusionTable.bead.rows.at(-1)!)[1]!
  const heaterC = own?.heaterC.value ?? null
  const ownFields = ['heaterC', 'interfacialPressurePa', 'beadM', 'soakS', 'openCloseS', 'coolS'] as const
  return {
    heaterLowC: heaterC ?? fahrenheitToC(fusionTable.heater.lowF),
    heaterHighC: heaterC ?? fahrenheitToC(fusionTable.heater.highF),
    interfacialPa,
    forceN,
    gaugePa: pistonAreaM2 === null ? null : forceN / pistonAreaM2,
    beadM: own?.beadM.value ?? beadIn * inchM,
    soakS: own?.soakS.value ?? times.find(({ step }) => step === 'soak')!.likelyS,
    heaterOutS: own?.openCloseS.value ?? figures.heaterOutS,
    coolS: own?.coolS.value ?? figures.coolingS,
    hiLoM: figures.hiLoM,
    damageM: figures.damageDepthM,
    own: own === null ? [] : ownFields.filter((field) => own[field].value !== null),
    missing: pistonAreaM2 === null && machine !== null ? [{ recordId: machine.id, path: 'figures.pistonAreaM2.value', label: { en: 'piston area (plate)', es: 'área de pistones (placa)' } }] : [],
  }
}
