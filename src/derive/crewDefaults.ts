/** Where the crew stands by task, clear of the zones of this yard. */
import type { CrewRecord } from '../scene/kinds/crew.ts'
import type { Phase } from '../scene/parts.ts'
import { clearSpot } from './clearSpot.ts'
import type { PlacedItem, SiteModel } from './types.ts'
import { depthIn, judging, zoneStagesOf } from './zoneStages.ts'

export interface DefaultSpot {
  role: CrewRecord['role']
  runningM: number
  offsetM: number
  phases: Phase[]
}

/** From the carriage to the operator, from the pipe to the nose spotter, behind the nose. */
const OPERATOR_OFF_M = 0.9144
const EXIT_HAND = { runningM: 3.048, offM: 1.524 }
const NOSE_SPOTTER_OFF_M = 5.4864
const BEHIND_NOSE_M = 4.572
/** A spotter stands this far off a trailer or a loader’s swing. */
const SPOTTER_OFF_M = 4.572

/**
 * Spots by task: operator on the control side of the machine, infeed hand at the far rack end on its closed side, exit
 * hand 10 ft down-string and 5 ft off the pipe, nose spotter 18 ft off and 15 ft behind the nose of the last pull,
 * loader operator and puller operator in their vehicles, spotter and driver off the trailer. Only what the plan has.
 *
 * Each is moved to the nearest place no live RED zone of its phases covers (nor an AMBER one that shuts its role out),
 * first straight away from the pipe; a task for which there is no such place within 30 m is left out, and so is one
 * whose seat lies in a RED zone that shuts it.
 * Source: common practice, no published source.
 */
export function defaultCrew(site: SiteModel): DefaultSpot[] {
  if (site.run === null) return []
  const stages = zoneStagesOf(site)
  return wishes(site).flatMap((wish): DefaultSpot[] => {
    const shut = stages.filter(({ stage }) => wish.phases.includes(stage.phase)).flatMap(({ zones }) => zones).filter((zone) => judging(zone) && !zone.mayEnter.includes(wish.role))
    const seat = { runningM: wish.runningM, offsetM: wish.offsetM }
    // A seat cannot be moved: where a zone shuts it (a cab without a guard in line with the rope), there is no place.
    const isShut = shut.some((zone) => zone.zoneClass === 'RED' && depthIn(zone, site.atRunning(seat.runningM, seat.offsetM)) > 0)
    const place = wish.isSeat === true ? (isShut ? null : seat) : clearSpot(site, wish, shut)
    return place === null ? [] : [{ role: wish.role, ...place, phases: wish.phases }]
  })
}

/** A wished place; a seat is where the vehicle is. */
interface Wish extends DefaultSpot {
  isSeat?: boolean
}

function wishes(site: SiteModel): Wish[] {
  const items = [...site.placed.values()]
  const first = (kind: PlacedItem['kind']): PlacedItem | undefined => items.find((item) => item.kind === kind && item.runningM !== null)
  const [machine, rack, loader, offload, puller] = [first('machine'), first('rack'), first('loader'), first('offload'), first('puller')]
  // The side away from the rack's open side; the controls are on the right without a rack.
  const closed = rack?.record.kind === 'rack' && rack.record.openSide === 'L' ? 1 : rack === undefined ? 1 : -1
  const wished: Wish[] = []
  if (machine?.record.kind === 'machine') wished.push({ role: 'operator', runningM: machine.runningM!, offsetM: machine.offsetM! + closed * ((machine.record.figures.widthM.value ?? 1.9) / 2 + OPERATOR_OFF_M), phases: ['load', 'fuse', 'pull'] })
  if (rack?.record.kind === 'rack') wished.push({ role: 'infeedHand', runningM: rack.runningM! - (rack.record.figures.beamSpacingM.value ?? 7.112) / 2 - 0.6, offsetM: rack.offsetM! + closed, phases: ['load', 'fuse', 'pull'] })
  wished.push({ role: 'exitHand', runningM: EXIT_HAND.runningM, offsetM: closed * EXIT_HAND.offM, phases: ['fuse', 'pull'] })
  if (loader !== undefined) wished.push({ role: 'loaderOperator', runningM: loader.runningM!, offsetM: loader.offsetM!, phases: ['offload', 'load'], isSeat: true })
  if (offload?.record.kind === 'offload') {
    const ahead = (offload.record.figures.lengthM.value ?? 21.3) / 2
    wished.push({ role: 'spotter', runningM: offload.runningM! + ahead + SPOTTER_OFF_M, offsetM: offload.offsetM!, phases: ['offload'] })
    wished.push({ role: 'driver', runningM: offload.runningM! + ahead + SPOTTER_OFF_M, offsetM: offload.offsetM! - 2, phases: ['offload'] })
  } else if (loader !== undefined) wished.push({ role: 'spotter', runningM: loader.runningM! - SPOTTER_OFF_M, offsetM: loader.offsetM!, phases: ['offload', 'load'] })
  wished.push({ role: 'noseSpotter', runningM: site.sticks.stringLengthM(site.sticks.stickCount) - BEHIND_NOSE_M, offsetM: closed * NOSE_SPOTTER_OFF_M, phases: ['pull'] })
  if (puller !== undefined) wished.push({ role: 'pullerOperator', runningM: puller.runningM!, offsetM: puller.offsetM!, phases: ['pull'], isSeat: true })
  return wished
}
