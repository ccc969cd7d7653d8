/** The pull of one stage part by part, what may take it, and where the string would go by itself (docs/formulas/stages.md). */
import { allowableTensileLoadN, type AllowablePull } from '../../engine/pipe/allowablePull.ts'
import { contributionsAtHead, type PieceShare } from '../../engine/pull/contributions.ts'
import type { Surface } from '../../scene/records/frame.ts'
import { hourS } from '../../units/factors.ts'
import type { LimitLookup } from '../mechanics.ts'
import { guideLoadAtN, positionOf, stiffnessAtN, stringOn, type PullPosition, type PullWays } from '../stringPull.ts'
import type { SiteModel } from '../types.ts'
import { ropeLeadRad, usableTow, type PullerView } from './puller.ts'
import type { JobStage, PullParts, RunAway, StagePull } from './types.ts'

export interface PullScene {
  site: SiteModel
  ways: PullWays
  limits: LimitLookup
  puller: PullerView | null
  allowableN: number | null
}

/** Allowable tensile load by the job's edition, its duration with stops (under an hour where nobody said) and wall temperature; null where none covers it. */
export function allowableOf({ job, pipe }: SiteModel): AllowablePull | null {
  if (pipe.properties === null) return null
  const { material, odM, dr } = pipe.properties
  const allowed = allowableTensileLoadN({ edition: job.pullEdition, material, odM, dr, durationS: Math.max(0, job.pullDurationH.value ?? 1) * hourS, wallTemperatureC: pipe.wallTemperatureC })
  return allowed.status === 'ok' ? allowed.value : null
}

/**
 * Pull of a stage: all places at which a force can be largest (start, end, and where an end of the string passes a corner
 * of the way) are compared by what it takes to start there. Null for a stage without a pull.
 */
export function pullOfStage(scene: PullScene, stage: JobStage): StagePull | null {
  if (stage.phase !== 'pull' || stage.noseM === null || scene.site.job.method === 'walking') return null
  const { site, ways, puller, allowableN } = scene
  const lengthM = site.sticks.stringLengthM(stage.sticks)
  const nosesM = placesOf(ways, lengthM, stage.noseM)
  const places = nosesM.map((noseM) => ({ noseM, position: positionOf(site, ways, noseM - lengthM, noseM) }))
  const hardest = places.reduce((most, one) => (one.position.startN > most.position.startN ? one : most))
  const at = pullAt(scene, hardest.noseM, lengthM, hardest.position)
  const tow = puller === null ? null : usableTow(site, puller, scene.limits, hardest.noseM)
  const ropeN = puller?.ropeN ?? null
  const known = [allowableN, tow?.usableN ?? null, ropeN].filter((one) => one !== null)
  return {
    ...at,
    lengthM, weightN: ways.lineLoadNPerM * lengthM,
    atStartN: places[0]!.position.pullN, atEndN: places.at(-1)!.position.pullN,
    runAway: runAwayOf(places.map(({ position }) => position)),
    allowableN, usableTowN: tow?.usableN ?? null, usableTowBy: tow?.by ?? null, usableTowIsWhole: tow?.isWhole ?? false, ropeN,
    weakLink: allowableN === null || tow === null || !tow.isWhole || ropeN === null ? null : allowableN <= Math.min(ropeN, tow.usableN) ? 'pipe' : ropeN <= tow.usableN ? 'rope' : 'puller',
    utilisationRatio: known.length === 0 ? null : shareOf(at.needN, Math.min(...known)),
    guides: guidesOf(site, hardest.noseM, lengthM),
  }
}

/** What may carry nothing is broken by any pull. */
const shareOf = (needN: number, mayN: number): number => (mayN > 0 ? needN / mayN : needN > 0 ? Number.MAX_VALUE : 0)

/** Start and end, and where nose or tail passes an end of a piece of the way: a bend, a kink, a change of what drags. */
function placesOf({ pull, startM, stretch }: PullWays, lengthM: number, { from, to }: { from: number; to: number }): number[] {
  const runningOf = (trackM: number): number => startM + trackM / stretch
  const inside = pull.pieces.flatMap(({ endM }) => [runningOf(endM), runningOf(endM) + lengthM]).filter((at) => at > from + 0.01 && at < to - 0.01)
  return [from, ...new Set(inside.toSorted((a, b) => a - b)), to]
}

function pullAt(scene: PullScene, noseM: number, lengthM: number, { pullN, startN }: PullPosition) {
  const { site, ways, puller } = scene
  const { body, headM } = stringOn(ways, ways.pull, noseM - lengthM, noseM)
  const parts = partsOf(ways, contributionsAtHead(body, headM))
  const stiffnessN = stiffnessAtN(ways, noseM - lengthM, noseM, pullN)
  const breakawayN = startN - pullN
  const alongN = startN + stiffnessN
  const leadRad = puller === null ? null : ropeLeadRad(site, puller, noseM)
  // Only what points along the way draws the string; the rest drags the nose aside.
  const ropeLeadN = leadRad === null ? null : alongN / Math.cos(leadRad) - alongN
  return { noseM, pullN, parts, stiffnessN, breakawayN, ropeLeadN, ropeLeadRad: leadRad, needN: alongN + (ropeLeadN ?? 0) }
}

function partsOf(ways: PullWays, shares: readonly PieceShare[]): PullParts {
  const sum = (of: (share: PieceShare) => number): number => shares.reduce((total, share) => total + of(share), 0)
  let rollersN = 0
  const bySurface = new Map<Surface | null, number>()
  for (const { fromM, toM, dragN } of shares) {
    const on = ways.under(ways.startM + (fromM + toM) / 2 / ways.stretch)
    if (on === 'rollers') rollersN += dragN
    else bySurface.set(on.surface, (bySurface.get(on.surface) ?? 0) + dragN)
  }
  return {
    rollersN,
    ground: [...bySurface].map(([surface, dragN]) => ({ surface, dragN })),
    gradeN: sum(({ gradeN }) => gradeN), bendsN: sum(({ beltN }) => beltN), slackN: sum(({ slackN }) => slackN),
  }
}

/** The worst of both directions over all places. */
export function runAwayOf(positions: readonly PullPosition[]): RunAway {
  const most = (of: (one: PullPosition) => number): number => Math.max(...positions.map(of))
  return {
    exitN: most(({ runAwayN }) => runAwayN.exit), infeedN: most(({ runAwayN }) => runAwayN.infeed),
    tetherExitN: Math.max(0, most(({ tetherN }) => tetherN)), tetherInfeedN: Math.max(0, most(({ tetherN }) => 0 - tetherN)),
    gradeRatio: positions.reduce((steepest, { gradeRatio }) => (Math.abs(gradeRatio) > Math.abs(steepest) ? gradeRatio : steepest), 0),
    isPushingItself: positions.some(({ isPushingItself }) => isPushingItself),
  }
}

/** Bends the string lies in with the force on each guide, EI/(R·a). */
function guidesOf(site: SiteModel, noseM: number, lengthM: number): StagePull['guides'] {
  return site.bends.flatMap(({ fromM, toM, turnRad, vertex }) => {
    const radiusM = toM > fromM && turnRad !== 0 ? (toM - fromM) / Math.abs(turnRad) : null
    const guideLoadN = radiusM === null ? null : guideLoadAtN(site, radiusM)
    return guideLoadN === null || fromM >= noseM || toM <= noseM - lengthM ? [] : [{ vertex, atM: fromM, guideLoadN }]
  })
}
