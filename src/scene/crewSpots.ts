/** Where the crew stands by task, as a layout alone can say it; src/derive/crewDefaults.ts moves each clear of the zones. */
import { jobOf, recordsOf, type YardDocument } from './document.ts'
import type { CrewRecord } from './kinds/crew.ts'
import type { MachineRecord } from './kinds/machine.ts'
import type { Phase, Place } from './parts.ts'
import { resolvePlace, runIdOf } from './resolve.ts'
import { rounded } from './rounding.ts'

export interface CrewSpot {
  role: CrewRecord['role']
  place: Place
  phases: readonly Phase[]
  /** In the vehicle: it cannot be moved. */
  isSeat?: boolean
}

const FOOT_M = 0.3048
/** Jaws and carriage are kept clear by 3 ft all round; nobody stands on that edge but 6 in off it. */
const OFF_MACHINE_M = 3 * FOOT_M
const OFF_EDGE_M = 0.5 * FOOT_M
const EXIT_HAND_OFF_M = 5 * FOOT_M
const NOSE_SPOTTER_OFF_M = 18.5 * FOOT_M
const BEHIND_NOSE_M = 15 * FOOT_M
const OFF_TRAILER_M = 15 * FOOT_M
const DRIVER_ASIDE_M = 2
const PAST_RACK_M = 0.6
const PAST_STICK_M = 10 * FOOT_M
/** Sizes where nobody has given them: a usual stick and rack, the largest machine that is moved about, reach and trailer. */
const usual = { stickM: 12.192, beamSpacingRatio: 7.112 / 12.192, machineLengthM: 6, machineWidthM: 1.9, carriageTravelM: 0.6, reachM: 4.27, topM: 4.5, trailerM: 21.3 } as const

/** −1 where the rack's open side is right (then the closed side is left), +1 where it is left; closed side left without a rack. */
export const closedSide = (document: YardDocument, runId: string): number => (recordsOf(document, 'rack').find(({ place }) => runIdOf(document, place) === runId)?.openSide === 'L' ? 1 : -1)

/** Running distance of the nose when all is fused: sticks less what the joints take, where it is known; else the length needed, or three sticks. */
function noseOf(document: YardDocument, setUpId: string): number {
  const job = jobOf(document)
  const stickM = job.stickLengthM ?? usual.stickM
  const lossM = job.jointLossM.value ?? 0
  const wantedM = job.neededLengthM === null ? null : job.neededLengthM + job.tailsM
  const decided = recordsOf(document, 'string').find((string) => string.setUpId === setUpId)?.stickCount ?? null
  if (decided === null && wantedM === null) return 3 * stickM
  if (job.stickLengthM === null || lossM >= stickM) return wantedM ?? 3 * stickM
  // A millimetre short is rounding, not another stick.
  const count = decided ?? Math.max(1, Math.ceil(((wantedM ?? 0) - lossM - 0.001) / (stickM - lossM)))
  return count * stickM - (count - 1) * lossM
}

/** From the datum to clear of the machine down-string: half its length, the carriage's travel where it runs that way, 3 ft and 6 in. */
function clearOfMachineM(machine: MachineRecord | undefined): number {
  const { lengthM, carriageTravelM } = machine?.figures ?? { lengthM: null, carriageTravelM: null }
  const travelM = machine?.carriageSide === 'exit' ? (carriageTravelM?.value ?? usual.carriageTravelM) : 0
  return (lengthM?.value ?? usual.machineLengthM) / 2 + travelM + OFF_MACHINE_M + OFF_EDGE_M
}

/** Nobody is put between a string that moves and a trench this near the line. */
const TRENCH_NEAR_M = 12

const isTrenchSide = (document: YardDocument, runId: string, side: number): boolean =>
  recordsOf(document, 'trench').some(({ points }) => {
    const offsets = points.map(({ xM, yM }) => (resolvePlace(document, { at: 'free', xM, yM, headingRad: 0 }, runId).offsetM ?? Infinity) * side)
    return offsets.every((offsetM) => offsetM > 0) && Math.min(...offsets) < TRENCH_NEAR_M
  })

/**
 * Usual spots by task, on the closed side of the rack; only for what the plan has.
 *
 * Operator 3 ft from the machine at its controls; infeed hand at the far rack end; exit hand down-string clear of the
 * machine, 5 ft off the pipe; loader operator and puller operator in their vehicles; spotter behind what a stick on the
 * loader sweeps and where it would land, or 15 ft ahead of the trailer with its driver; nose spotter 18 ft 6 in off and 15 ft behind the nose of
 * the last pull, on the other side where a trench runs on that one. `noseM` is where that nose lies; left out, it is worked out from the job.
 * Source: common practice, no source.
 */
export function crewSpots(document: YardDocument, at: { setUpId: string; runId: string; noseM?: number }): CrewSpot[] {
  const { setUpId, runId } = at
  const side = closedSide(document, runId)
  const stickM = jobOf(document).stickLengthM ?? usual.stickM
  const [ours] = recordsOf(document, 'machine').filter((one) => one.setUpId === setUpId)
  const cradle = recordsOf(document, 'rack').find(({ place }) => runIdOf(document, place) === runId)
  const [loader] = recordsOf(document, 'loader')
  const [offload] = recordsOf(document, 'offload')
  const [puller] = recordsOf(document, 'puller')
  const onRun = (runningM: number, offsetM: number): Place => ({ at: 'onRun', runId, runningM: rounded(runningM), offsetM: rounded(offsetM), turnRad: 0 })
  // Local y is to the left, offsets count to the right.
  const onItem = (itemId: string, dxM = 0, dyM = 0): Place => ({ at: 'onItem', itemId, dxM: rounded(dxM), dyM: rounded(dyM), turnRad: 0 })
  const spots: CrewSpot[] = []
  if (ours !== undefined) spots.push({ role: 'operator', place: onItem(ours.id, 0, -side * ((ours.figures.widthM.value ?? usual.machineWidthM) / 2 + OFF_MACHINE_M)), phases: ['load', 'fuse', 'pull'] })
  if (cradle !== undefined) spots.push({ role: 'infeedHand', place: onItem(cradle.id, -(cradle.figures.beamSpacingM.value ?? usual.beamSpacingRatio * stickM) / 2 - PAST_RACK_M, -side), phases: ['load', 'fuse', 'pull'] })
  spots.push({ role: 'exitHand', place: onRun(clearOfMachineM(ours), side * EXIT_HAND_OFF_M), phases: ['fuse', 'pull'] })
  if (loader !== undefined) spots.push({ role: 'loaderOperator', place: onItem(loader.id), phases: ['offload', 'load'], isSeat: true })
  if (offload !== undefined) {
    const { runningM, offsetM } = resolvePlace(document, offload, runId)
    const aheadM = (runningM ?? 0) + (offload.figures.lengthM.value ?? usual.trailerM) / 2 + OFF_TRAILER_M
    spots.push({ role: 'spotter', place: onRun(aheadM, offsetM ?? 0), phases: ['offload'] }, { role: 'driver', place: onRun(aheadM, (offsetM ?? 0) - DRIVER_ASIDE_M), phases: ['offload'] })
  } else if (loader !== undefined) {
    const { runningM, offsetM } = resolvePlace(document, loader, runId)
    const sweepM = Math.hypot(stickM / 2, loader.figures.reachM.value ?? usual.reachM) + OFF_MACHINE_M + OFF_EDGE_M
    // Past the end of a stick by 10 ft, or by the height it hangs at: where it would land.
    const landsM = stickM / 2 + Math.max(PAST_STICK_M, loader.figures.topHeightM.value ?? usual.topM) + OFF_EDGE_M
    spots.push({ role: 'spotter', place: onRun((runningM ?? 0) - Math.max(sweepM, landsM), offsetM ?? 0), phases: ['offload', 'load'] })
  }
  const noseSide = isTrenchSide(document, runId, side) && !isTrenchSide(document, runId, -side) ? -side : side
  spots.push({ role: 'noseSpotter', place: onRun((at.noseM ?? noseOf(document, setUpId)) - BEHIND_NOSE_M, noseSide * NOSE_SPOTTER_OFF_M), phases: ['pull'] })
  if (puller !== undefined) spots.push({ role: 'pullerOperator', place: onItem(puller.id), phases: ['pull'], isSeat: true })
  return spots
}
