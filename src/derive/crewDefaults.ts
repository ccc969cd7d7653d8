/** Where the crew stands by task, clear of the zones of this yard. */
import { crewSpots, type CrewSpot } from '../scene/crewSpots.ts'
import { recordsOf } from '../scene/document.ts'
import type { CrewRecord } from '../scene/kinds/crew.ts'
import type { Phase, Place } from '../scene/parts.ts'
import { resolvePlace } from '../scene/resolve.ts'
import { clearSpot, type SpotPlace } from './clearSpot.ts'
import type { SiteModel } from './types.ts'
import { depthIn, judging, zoneStagesOf } from './zoneStages.ts'

export interface DefaultSpot {
  role: CrewRecord['role']
  runningM: number
  offsetM: number
  phases: Phase[]
}

/**
 * The usual spots by task (src/scene/crewSpots.ts), each moved to the nearest place no live RED zone of its phases
 * covers (nor an AMBER one that shuts its role out), first straight away from the pipe; a task for which there is no such
 * place within 30 m is left out, and so is one whose seat lies in a RED zone that shuts it.
 * Source: common practice, no published source.
 */
export const defaultCrew = (site: SiteModel): DefaultSpot[] => clearWishes(site).map(({ wish, at }) => ({ role: wish.role, ...at, phases: [...wish.phases] }))

/** The same as commands that place them, for tasks that have no spot yet: a seat stays in its vehicle. */
export function crewCommands(site: SiteModel): { command: 'place'; args: { kind: 'crew'; place: Place; patch: { role: CrewRecord['role']; phases: Phase[] } } }[] {
  const { run } = site
  if (run === null) return []
  const taken = new Set(recordsOf(site.document, 'crew').map(({ role }) => role))
  return clearWishes(site).filter(({ wish }) => !taken.has(wish.role)).map(({ wish, at }) => ({
    command: 'place', args: { kind: 'crew', place: wish.isSeat === true ? wish.place : { at: 'onRun', runId: run.id, ...at, turnRad: 0 }, patch: { role: wish.role, phases: [...wish.phases] } },
  }))
}

function clearWishes(site: SiteModel): { wish: CrewSpot; at: SpotPlace }[] {
  const { setUp, run, document } = site
  if (setUp === null || run === null) return []
  const stages = zoneStagesOf(site)
  const noseM = site.sticks.stringLengthM(site.sticks.stickCount)
  return crewSpots(document, { setUpId: setUp.id, runId: run.id, ...(noseM > 0 ? { noseM } : {}) }).flatMap((wish): { wish: CrewSpot; at: SpotPlace }[] => {
    const resolved = resolvePlace(document, wish.place, run.id)
    const from = { runningM: resolved.runningM ?? 0, offsetM: resolved.offsetM ?? 0 }
    const shut = stages.filter(({ stage }) => wish.phases.includes(stage.phase)).flatMap(({ zones }) => zones).filter((zone) => judging(zone) && !zone.mayEnter.includes(wish.role))
    // A seat cannot be moved: where a zone shuts it (a cab without a guard in line with the rope), there is no place.
    const isShut = shut.some((zone) => zone.zoneClass === 'RED' && depthIn(zone, resolved) > 0)
    const place = wish.isSeat === true ? (isShut ? null : from) : clearSpot(site, from, shut)
    return place === null ? [] : [{ wish, at: place }]
  })
}
