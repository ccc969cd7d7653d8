/** Solves kept from run to run, each under all that enters it, so that only what changed is solved again. */
import type { BodyCase, BodySolution, BodySolver } from '../bodies.ts'
import { jawLineLevelM } from '../supports.ts'
import type { MissingInput, SiteModel } from '../types.ts'

/** Handed from one run to the next; not plain JSON and never sent anywhere. */
export interface RunMemory {
  solutions: Map<string, BodySolution | null>
}

export const createRunMemory = (): RunMemory => ({ solutions: new Map() })

export interface MemorySolver extends BodySolver {
  /** Bodies answered without a solve, from the last run or this one. */
  reusedCount: () => number
  /** Forgets what this run did not ask for. Call when it is through; a run broken off keeps everything. */
  settle: () => void
}

/**
 * A solver that answers from the memory where nothing that enters a body's solve has changed.
 *
 * What enters: the body, stiffness and weight, clamps, lifts and jaw line, key and level and place of each support under
 * it, the ground under it. Ratings, labels and what stands elsewhere do not.
 */
export function memorySolver(site: SiteModel, solver: BodySolver, memory: RunMemory): MemorySolver {
  const missing = solver.missing.length > 0 ? solver.missing : withoutStiffness(site)
  const jobKey = keyOfJob(site)
  const supportsKeyAt = supportKeys(site)
  const groundKeyAt = groundKeys(site)
  const asked = new Map<string, BodySolution | null>()
  let [solves, reused] = [0, 0]
  const solve = (body: BodyCase): BodySolution | null => {
    if (missing.length > 0) return null
    const key = `${jobKey(body)};${JSON.stringify(body)};${supportsKeyAt(body)};${groundKeyAt(body)}`
    const before = asked.get(key)
    if (before !== undefined) return before
    const kept = memory.solutions.get(key)
    let solution: BodySolution | null
    if (kept === undefined) {
      solves += 1
      solution = solver.solve(body)
      memory.solutions.set(key, solution)
    } else {
      reused += 1
      solution = kept === null ? null : onSite(site, kept)
    }
    asked.set(key, solution)
    return solution
  }
  return {
    missing,
    solve,
    solveCount: () => solves,
    reusedCount: () => reused,
    unsettled: () => [...asked.values()].filter((one) => one !== null).filter(({ result }) => result.status !== 'ok'),
    settle: () => {
      memory.solutions = new Map(asked)
    },
  }
}

/** The pipe is known and no table gives its modulus: a wall temperature beyond them. */
function withoutStiffness({ pipe, job }: SiteModel): MissingInput[] {
  if (pipe.stiffnessNm2('jaws') !== null) return []
  return [{ recordId: job.id, path: 'wallTemperatureC.value', label: { en: 'a wall temperature within the table of moduli', es: 'una temperatura de pared dentro de la tabla de módulos' } }]
}

/** Stiffness is part of the key by the body's question; the rest of the job is the same for every body. */
function keyOfJob({ pipe, jaws }: SiteModel): (body: BodyCase) => string {
  const { properties } = pipe
  const jawKey = `${properties?.lineLoadNPerM},${properties?.odM},${properties?.inertiaM4},${jaws.innerClampM},${jaws.outerClampM},${jaws.liftAtM},${jaws.liftTravelM},${jawLineLevelM(jaws, 0)},${jaws.slopeRatio}`
  const keys = new Map<BodyCase['question'], string>()
  return ({ question }) => {
    let key = keys.get(question)
    if (key === undefined) keys.set(question, (key = `${jawKey},${pipe.stiffnessNm2(question)}`))
    return key
  }
}

/** What each support enters a key with is written once a run: writing numbers is what keys cost. */
function supportKeys({ supports }: SiteModel): (body: BodyCase) => string {
  const parts = supports.map(({ key, runningM, levelM }) => (levelM === null ? '' : `${key}@${runningM}^${levelM},`))
  return ({ startM, endM }) => {
    let key = ''
    for (let i = firstAt(supports, startM); i < supports.length && supports[i]!.runningM <= endM + 1e-9; i += 1) key += parts[i]!
    return key
  }
}

/** Index of the first of a sorted row at or beyond a place. */
function firstAt(row: readonly { runningM: number }[], atM: number): number {
  let [low, high] = [0, row.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if (row[middle]!.runningM < atM - 1e-9) low = middle + 1
    else high = middle
  }
  return low
}

/** The ground line under a body: its kinks inside and its levels at both ends. */
function groundKeys({ ground, groundLevelAt }: SiteModel): (body: BodyCase) => string {
  const { runningM, levelM } = ground
  return ({ startM, endM }) => {
    let key = `${groundLevelAt(startM)}`
    for (let i = 0; i < runningM.length && runningM[i]! < endM; i += 1) if (runningM[i]! > startM) key += `,${runningM[i]}^${levelM[i]}`
    return `${key},${groundLevelAt(endM)}`
  }
}

/** A kept solution with the supports as they are now: places and levels are the same, labels and plates may not be. */
function onSite(site: SiteModel, solution: BodySolution): BodySolution {
  const { startM, endM } = solution.body
  const now = new Map<string, SiteModel['supports'][number]>()
  for (let i = firstAt(site.supports, startM); i < site.supports.length && site.supports[i]!.runningM <= endM + 1e-9; i += 1) now.set(site.supports[i]!.key, site.supports[i]!)
  return { ...solution, supports: solution.supports.map((one) => ({ ...one, view: now.get(one.view.key) ?? one.view })) }
}
