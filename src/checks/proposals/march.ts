/** The row of supports laid out along the run, each as far on as a free nose still rides on by itself (docs/formulas/proposals.md). */
import { bodySolverOf } from '../../derive/bodies.ts'
import { pulledBody } from '../../derive/noseArrivals.ts'
import { typicalLeadInM } from '../../derive/supports.ts'
import type { SiteModel, SupportView } from '../../derive/types.ts'
import type { Pool } from './gearPool.ts'
import type { Ground } from './obstacles.ts'
import { saddleOf, trialSite } from './trialSite.ts'
import type { PlannedSupport, Why } from './types.ts'

/** Where the tip is judged, as the check does: half an inch short of the support. */
const SHORT_OF_M = 0.0127
/** Places tried short of the farthest, then halvings between the last that failed and the first that did. */
const STEPS_BACK = 10
const HALVINGS = 3
/** Two rollers with a hand between their bases. */
const LEAST_STEP_M = 0.5
/** An obstacle this many spacings wide can be crossed by a carried nose. */
const CARRIED_ACROSS = 1.6
/** Share of the lead-in used up on the way down, the rest is for setting out; a row at its even spacing has its own rounding. */
const SPARE = 0.9
/** A row longer than this is no yard. */
const MOST_SUPPORTS = 600

/** What may stand at a running distance; several, the best first. */
export type OptionsAt = (runningM: number) => readonly { kind: 'stand' | 'roller'; height: PlannedSupport['height']; why: Why }[]

export interface MarchScene {
  site: SiteModel
  kept: readonly SupportView[]
  ground: Ground
  pool: Pool
  /** Down to what a tape is read to. */
  onTapeM: (runningM: number) => number
  /** Beam solves spent, counted on. */
  spent: { solves: number }
}

export interface March {
  fromM: number
  toM: number
  /** Farthest a support may stand from the one before it. */
  capM: (fromM: number) => number
  /** Overhang beyond the last support that needs no other. */
  endGapM: number
  optionsAt: OptionsAt
  /** False where the nose is held: then only the spacing counts. */
  judgesNose: boolean
}

export type Marched =
  | { ok: true; planned: PlannedSupport[] }
  /** No gear left, no free place within reach, or no place at which the nose rides on. */
  | { ok: false; why: 'count' | 'blocked' | 'nose'; kind: 'stand' | 'roller'; atM: number; planned: PlannedSupport[]; droopM: number | null; leadInM: number | null }

/** Level of the free tip just short of a place, with what has been laid out so far; null where the beam does not settle. */
function tipLevelM(scene: MarchScene, planned: readonly PlannedSupport[], runningM: number): number | null {
  const trial = trialSite(scene.site, scene.kept, planned)
  const behind = { ...trial, supports: trial.supports.filter((one) => one.runningM < runningM - 0.02) }
  scene.spent.solves += 1
  const solution = bodySolverOf(behind).solve(pulledBody(behind, runningM - SHORT_OF_M, runningM))
  return solution === null || solution.result.status !== 'ok' ? null : solution.result.ends.levelM[1]
}

/** A last stand no more than this above the rollers steps down like one of them. */
const STEP_DOWN_M = 0.06
const isAlike = ({ height }: PlannedSupport, saddleM: number): boolean => height.rule === 'aboveGround' && Math.abs(height.saddleM - saddleM) <= STEP_DOWN_M
interface Stop { option: ReturnType<OptionsAt>[number]; runningM: number; droopM: number | null; leadInM: number | null }

export function march(scene: MarchScene, before: readonly PlannedSupport[], run: March): Marched {
  const { site, ground, pool } = scene
  const planned = [...before]
  const firstNoseM = site.job.firstStick === 'fedThrough' ? site.jaws.outerClampM : site.sticks.stringLengthM(1)
  const leadInOf = (kind: 'stand' | 'roller', saddleM: number): { leadInM: number; base: { lengthM: number; widthM: number } } | null => {
    const sort = pool.peek(kind, saddleM)
    return sort === null ? null : { leadInM: sort.leadInM ?? typicalLeadInM(site.pipe.odM) ?? 0, base: { lengthM: sort.baseLengthM, widthM: sort.baseWidthM } }
  }
  let atM = run.fromM
  while (planned.length < MOST_SUPPORTS) {
    const capM = run.capM(atM)
    if (run.toM - atM < run.endGapM - 1e-6) return { ok: true, planned }
    const nextKept = scene.kept.find(({ runningM, levelM }) => runningM > atM + 0.02 && levelM !== null)
    const farM = Math.min(atM + capM, run.toM, nextKept?.runningM ?? Infinity)
    let worst: { droopM: number | null; leadInM: number | null; kind: 'stand' | 'roller'; why: 'count' | 'blocked' | 'nose' } = { droopM: null, leadInM: null, kind: 'roller', why: 'blocked' }
    const stopAt = (runningM: number): Stop | null => {
      const isJudged = run.judgesNose && runningM > firstNoseM + 1e-9
      const options = run.optionsAt(runningM).flatMap((option) => {
        const saddleM = saddleOf(site, { runningM, height: option.height })
        const gear = saddleM === null ? null : leadInOf(option.kind, saddleM)
        if (gear === null) worst = { ...worst, kind: option.kind, why: 'count' }
        return gear !== null && ground.isFree(runningM, gear.base) ? [{ option, saddleM: saddleM!, leadInM: gear.leadInM }] : []
      })
      if (options.length === 0) return null
      if (!isJudged) return { option: options[0]!.option, runningM, droopM: null, leadInM: null }
      const tipM = tipLevelM(scene, planned, runningM)
      if (tipM === null) return null
      for (const { option, saddleM, leadInM } of options) {
        const droopM = site.groundLevelAt(runningM) + saddleM - tipM
        // Stepping down the nose points steeply at what comes next: it is met where it lies on the roller, not below its top.
        const isStep = option.kind === 'roller' && planned.at(-1)?.kind === 'stand' && !isAlike(planned.at(-1)!, saddleM)
        const takesM = isStep ? 0 : capM > run.endGapM ? SPARE * leadInM : leadInM
        if (droopM <= takesM) return { option, runningM, droopM, leadInM }
        worst = { droopM, leadInM, kind: option.kind, why: 'nose' }
      }
      return null
    }
    // A support that stays: the nose comes to it as to any other.
    if (nextKept !== undefined && nextKept.runningM <= atM + capM + 1e-6) {
      const isJudged = run.judgesNose && nextKept.runningM > firstNoseM + 1e-9
      const tipM = isJudged ? tipLevelM(scene, planned, nextKept.runningM) : Infinity
      if (tipM !== null && nextKept.levelM! - tipM <= (nextKept.leadInM ?? 0)) {
        atM = nextKept.runningM
        continue
      }
    }
    const isFreeAt = (runningM: number): boolean => run.optionsAt(runningM).some(({ kind, height }) => {
      const gear = leadInOf(kind, saddleOf(site, { runningM, height }) ?? 0)
      return gear === null || ground.isFree(runningM, gear.base)
    })
    const stop = farthest(stopAt, { fromM: atM, farM: shortOfObstacle(scene.onTapeM(farM + 1e-6), atM, isFreeAt), onTapeM: scene.onTapeM })
      // Held by a sling the nose is carried across what is wider than the spacing; what the pipe makes of it the checks say.
      ?? (run.judgesNose ? null : beyondObstacle(stopAt, farM, atM + CARRIED_ACROSS * capM, scene.onTapeM))
    if (stop === null) return { ok: false, why: worst.why, kind: worst.kind, atM, planned, droopM: worst.droopM, leadInM: worst.leadInM }
    const { option, runningM, droopM, leadInM } = stop
    const sort = pool.take(option.kind, saddleOf(site, { runningM, height: option.height }) ?? 0)
    if (sort === null) return { ok: false, why: 'count', kind: option.kind, atM, planned, droopM: null, leadInM: null }
    planned.push({ ...option, runningM, sort, droopM, leadInM })
    atM = runningM
  }
  return { ok: false, why: 'count', kind: 'roller', atM, planned, droopM: null, leadInM: null }
}

/** Down from `farM`, an inch at a time, to where a base finds room; `farM` itself where none does. */
function shortOfObstacle(farM: number, fromM: number, isFreeAt: (runningM: number) => boolean): number {
  for (let atM = farM; atM > fromM + LEAST_STEP_M; atM -= 0.0254) if (isFreeAt(atM)) return atM
  return farM
}

function beyondObstacle(stopAt: (runningM: number) => Stop | null, fromM: number, toM: number, onTapeM: (runningM: number) => number): Stop | null {
  for (let atM = fromM; atM <= toM; atM += 0.0254) {
    const stop = stopAt(onTapeM(atM + 0.0254))
    if (stop !== null) return stop
  }
  return null
}

function farthest(stopAt: (runningM: number) => Stop | null, { fromM, farM, onTapeM }: { fromM: number; farM: number; onTapeM: (runningM: number) => number }): Stop | null {
  const leastM = fromM + LEAST_STEP_M
  const first = onTapeM(farM + 1e-6)
  const at = first > leastM ? stopAt(first) : null
  if (at !== null) return at
  let failedM = first
  for (let step = 1; step <= STEPS_BACK; step += 1) {
    const tryM = onTapeM(farM - ((farM - leastM) * step) / STEPS_BACK)
    if (tryM < leastM - 1e-6 || tryM >= failedM) continue
    let found = stopAt(tryM)
    if (found === null) {
      failedM = tryM
      continue
    }
    for (let pass = 0; pass < HALVINGS; pass += 1) {
      const middleM = onTapeM((found.runningM + failedM) / 2)
      if (middleM <= found.runningM || middleM >= failedM) break
      const further = stopAt(middleM)
      if (further === null) failedM = middleM
      else found = further
    }
    return found
  }
  return null
}
