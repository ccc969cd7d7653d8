import { z } from 'zod'
import { closedSide, crewSpots, type CrewSpot } from '../crewSpots.ts'
import { jobOf, recordsOf, runsOf, type YardDocument, type YardRecord } from '../document.ts'
import type { Edit, Env } from '../edit.ts'
import { anchor } from '../kinds/anchor.ts'
import { crew, type CrewRecord } from '../kinds/crew.ts'
import { machine } from '../kinds/machine.ts'
import { rack, type RackRecord } from '../kinds/rack.ts'
import { stand } from '../kinds/stand.ts'
import { typical, type Place } from '../parts.ts'
import type { RunRecord, SetUpRecord } from '../records/frame.ts'
import { resolvePlace, runIdOf } from '../resolve.ts'
import { rounded } from '../rounding.ts'
import { oneId, stepM } from './args.ts'
import { defineCommand, refuse } from './command.ts'
import { USUAL_STICK_M } from './strip.ts'

/** A set-up with the first of its runs, or a CommandError naming it. */
function lineOf(command: string, document: YardDocument, setUpId: string): { setUp: SetUpRecord; run: RunRecord } {
  const setUp = document.records[setUpId]
  if (setUp?.kind !== 'setUp') return refuse(command, 'setUpId', `names ${setUpId}, which is not a set-up here`, `nombra ${setUpId}, que no es un montaje aquí`)
  const run = runsOf(document).find((one) => one.setUpId === setUpId)
  return run === undefined ? refuse(command, 'setUpId', `names ${setUpId}, which has no pull path`, `nombra ${setUpId}, que no tiene recorrido`) : { setUp, run }
}

const onRun = (runId: string, runningM: number, offsetM = 0): Place => ({ at: 'onRun', runId, runningM: rounded(runningM), offsetM: rounded(offsetM), turnRad: 0 })

const isOnRun = (document: YardDocument, runId: string) => (record: { place: Place }): boolean => runIdOf(document, record.place) === runId

/**
 * The usual set-up, as shares of a stick so that it holds for every stick length; with 40 ft sticks: a rack whose two
 * beams stand 23 ft 4 in apart about the middle of the stick lying in the infeed, a first exit stand 20 ft from the jaws
 * and a second level one at 35 ft. Common practice, no source.
 */
const usual = { rackMiddle: 0.5, beamSpacing: 7.112 / 12.192, firstStand: 0.5, secondStand: 0.875 }

/** Adds what is missing of the usual set-up: rack, a first level exit stand 20 ft from the jaws, a second. What is there already is left alone. */
export const usualSetUp = defineCommand({
  name: 'usualSetUp',
  args: z.strictObject({ setUpId: oneId }),
  run: (document, { setUpId }, env): Edit => {
    const { run } = lineOf('usualSetUp', document, setUpId)
    const stickM = jobOf(document).stickLengthM ?? USUAL_STICK_M
    const at = (runningM: number): { place: Place; setUpId: string; runId: string } => ({ place: onRun(run.id, runningM), setUpId, runId: run.id })
    const put: YardRecord[] = []
    const machines = recordsOf(document, 'machine').filter((one) => one.setUpId === setUpId)
    if (machines.length === 0) put.push(machine.create(env.newId('machine'), at(0)))
    if (!recordsOf(document, 'rack').some(isOnRun(document, run.id))) {
      const made = rack.create(env.newId('rack'), at(-usual.rackMiddle * stickM)) as RackRecord
      put.push({ ...made, figures: { ...made.figures, beamSpacingM: typical(rounded(usual.beamSpacing * stickM)) } })
    }
    const exitStands = recordsOf(document, 'stand').filter((one) => isOnRun(document, run.id)(one) && (resolvePlace(document, one).runningM ?? 0) > 0)
    const missing = [usual.firstStand, usual.secondStand].slice(exitStands.length)
    for (const share of missing) put.push(stand.create(env.newId('stand'), at(share * stickM)))
    return { put, remove: [] }
  },
  label: () => ({ text: { en: 'usual set-up', es: 'montaje habitual' } }),
})

/** Adds a usual spot for every task that has none yet. */
export const crewDefaults = defineCommand({
  name: 'crewDefaults',
  args: z.strictObject({ setUpId: oneId }),
  run: (document, { setUpId }, env): Edit => {
    const { run } = lineOf('crewDefaults', document, setUpId)
    const taken = new Set(recordsOf(document, 'crew').map(({ role }) => role))
    return { put: crewSpots(document, { setUpId, runId: run.id }).filter(({ role }) => !taken.has(role)).map((spot) => crewAt(env, setUpId, run.id, spot)), remove: [] }
  },
  label: () => ({ text: { en: 'usual crew spots', es: 'puestos habituales' } }),
})

const crewAt = (env: Env, setUpId: string, runId: string, { role, place, phases }: CrewSpot): CrewRecord => ({ ...(crew.create(env.newId('crew'), { place, setUpId, runId }) as CrewRecord), role, phases: [...phases] })

/**
 * Places a tether anchor near the tail of the string: 10 ft on the infeed side of the datum, beside the machine on the
 * closed side of the rack, unless told where. Common practice, no source.
 */
export const setHoldBack = defineCommand({
  name: 'setHoldBack',
  args: z.strictObject({ setUpId: oneId, runningM: stepM.optional(), offsetM: stepM.optional() }),
  run: (document, { setUpId, runningM, offsetM }, env): Edit => {
    const { run } = lineOf('setHoldBack', document, setUpId)
    const place = onRun(run.id, runningM ?? -3.048, offsetM ?? closedSide(document, run.id) * 2.5)
    return { put: [anchor.create(env.newId('anchor'), { place, setUpId, runId: run.id })], remove: [] }
  },
  label: () => ({ text: { en: 'add tether and anchor', es: 'añadir retención y ancla' } }),
})
