/** Layouts worth trying: level stands, lay-down and row, first guessed by closed forms, laid out on the solver. */
import { freeLayDownLengthM, layDownHeightM } from '../../engine/beam/closedForms.ts'
import { createMechanics, type LimitLookup } from '../../derive/mechanics.ts'
import { evenSpacingM } from '../../derive/noseArrivals.ts'
import { jawLineLevelM, typicalLeadInM } from '../../derive/supports.ts'
import type { SiteModel, SupportView } from '../../derive/types.ts'
import { poolOf, type Pool } from './gearPool.ts'
import { march, type Marched, type MarchScene, type OptionsAt } from './march.ts'
import { groundOf } from './obstacles.ts'
import { saddleOf, trialSite } from './trialSite.ts'
import type { PlannedSupport, ProposalKind, Sort } from './types.ts'

/** Level stands as shares of a stick; the last is where the lay-down begins. More than two only for pipe that sags between them. */
const levelShares: readonly (readonly number[])[] = [[0.5, 0.875], [0.3125, 0.625], [0.4, 0.8], [0.45, 0.7], [0.25, 0.5, 0.8], [0.2, 0.4, 0.6, 0.8], [0.15, 0.3, 0.45, 0.6, 0.75, 0.9]]
/** Infeed stands where there is no rack: the beams of the usual rack (common practice, no source). */
const infeedShares = [0.208, 0.792]
/**
 * Ways down for a free nose. Longer than the free lay-down it comes down no steeper than the supports take it in; where no stand
 * goes as low as the rollers the pipe is laid level at the lowest saddle first, over so many spans, and steps down from there.
 */
const waysDown = { low: [{ stretch: 1, levelSpans: 0 }, { stretch: 1.4, levelSpans: 0 }, { stretch: 1.9, levelSpans: 0 }], high: [{ stretch: 1, levelSpans: 0 }, { stretch: 1, levelSpans: 1 }, { stretch: 1.5, levelSpans: 1 }, { stretch: 1, levelSpans: 2 }, { stretch: 1.5, levelSpans: 2 }] } as const
/** Spans over which the nose finds back to the level once it is on the rollers. */
const SETTLING_SPANS = 4
/** Soft start: the last level stand is dropped by this share of the drop, 1½ in of 24 in (our own fixture, docs/formulas/jaws.md). */
const SOFT_SHARE = 1 / 16
const SOFT_MOST_M = 0.0381
/** Level stands and rollers this near in height need no lay-down. */
const FLAT_M = 0.03
/** Level layouts that are laid out to the end; the others only had their jaws looked at. */
const LEVELS_MARCHED = 2

export interface Layout {
  planned: PlannedSupport[]
  /** The nose has to be slung on its way down. */
  slings: boolean
  /** Steeper or gentler than the free lay-down. */
  stretch: number
}

export interface LayoutSearch {
  layouts: Layout[]
  /** What ended the ones that came to no end, nearest to one first. */
  failures: Extract<Marched, { ok: false }>[]
  /** Saddle heights the level stands would need and no stand reaches. */
  beyondReach: { saddleM: number; lowestM: number; highestM: number } | null
  spacingM: number | null
}

export interface SearchInput {
  site: SiteModel
  limits: LimitLookup
  kind: ProposalKind
  kept: readonly SupportView[]
  stands: readonly Sort[]
  rollers: readonly Sort[]
  /** Also layouts on whose way down the nose is slung. */
  maySling: boolean
  isSlung: boolean
  /** The row this many steps of the tape closer than the nose asks for: loads share out. */
  closerBy: number
  spent: { solves: number }
}

const stepsOf = (site: SiteModel): { tapeM: number; rowM: number; heightM: number } =>
  site.layout.displayUnits === 'feetInches' ? { tapeM: 0.0254, rowM: 0.1524, heightM: 0.00635 } : { tapeM: 0.01, rowM: 0.1, heightM: 0.005 }

const down = (valueM: number, stepM: number): number => Math.floor(valueM / stepM + 1e-6) * stepM
const near = (valueM: number, stepM: number): number => Math.round(valueM / stepM) * stepM

/** Layouts in the order they are worth judging: nose as the job holds it first, then fewest supports, fewest stands, gentlest. */
export function layoutsFor(input: SearchInput): LayoutSearch {
  const { site, kind, kept, stands, rollers, maySling, isSlung, closerBy, spent } = input
  const steps = stepsOf(site)
  const leadInM = rollers[0]?.leadInM ?? typicalLeadInM(site.pipe.odM) ?? 0
  const evenM = evenSpacingM(site, leadInM)
  const search: LayoutSearch = { layouts: [], failures: [], beyondReach: null, spacingM: evenM === null ? null : down(evenM, steps.rowM) - closerBy * steps.rowM }
  if (search.spacingM === null || !(search.spacingM > 0)) return search
  const ground = groundOf(site, kept)
  const scene = (pool: Pool): MarchScene => ({ site, kept, ground, pool, onTapeM: (at) => down(at, steps.tapeM), spent })
  const { levels, beyondReach } = kind === 'rollers' ? { levels: [[]], beyondReach: null } : levelsByEffort(input, steps, ground)
  search.beyondReach = beyondReach
  const modes = isSlung ? [true] : maySling ? [false, true] : [false]
  for (const [i, level] of levels.slice(0, LEVELS_MARCHED).entries()) {
    for (const slings of modes) {
      // How a free nose comes down hardly depends on where the level stands are: what failed beyond one level part fails beyond the next.
      if (!slings && i > 0 && search.layouts.every((one) => one.slings)) continue
      const isHigh = poolOf(stands, rollers).lowestM > poolOf(stands, rollers).rollerM + leadInM
      for (const way of slings || kind === 'rollers' ? [waysDown.low[0]] : isHigh ? waysDown.high : waysDown.low) {
        const pool = poolOf(stands, rollers)
        const planned = level.map((one) => ({ ...one, sort: pool.take(one.kind, saddleOf(site, one) ?? 0) ?? one.sort }))
        const marched = layOut(scene(pool), planned, { ...way, slings, spacingM: search.spacingM, heightStepM: steps.heightM, standsToo: kind === 'stands' })
        if (marched.ok) search.layouts.push({ planned: bridged(marched.planned, search.spacingM), slings, stretch: way.stretch })
        else search.failures.push(marched)
      }
    }
  }
  const order = (one: Layout): number => (one.slings && !isSlung ? 1e6 : 0) + one.planned.length * 1000 + one.planned.filter((support) => support.kind === 'stand').length * 10 - one.stretch
  search.layouts.sort((a, b) => order(a) - order(b))
  search.failures.sort((a, b) => b.atM - a.atM)
  return search
}

/** Rollers set closer than the row before it gets its spacing take the nose on its way down. */
function bridged(planned: readonly PlannedSupport[], spacingM: number): PlannedSupport[] {
  const stepM = (i: number): number => planned[i]!.runningM - (planned[i - 1]?.runningM ?? -Infinity)
  const isInRow = (i: number): boolean => planned[i]!.kind === 'roller' && Math.abs(stepM(i) - spacingM) < 0.03
  const firstOfRow = planned.findIndex((_, i) => isInRow(i) && (i + 1 >= planned.length || isInRow(i + 1)))
  return planned.map((one, i) => (one.kind === 'roller' && (firstOfRow < 0 || i < firstOfRow) ? { ...one, why: 'bridge' } : one))
}

interface Levels {
  levels: PlannedSupport[][]
  beyondReach: LayoutSearch['beyondReach']
}

/** Level parts that fit gear and ground, least effort at the jaws first; equal within a tenth: the one that reaches farther. */
function levelsByEffort({ site, limits, kept, stands, rollers, spent }: SearchInput, steps: ReturnType<typeof stepsOf>, ground: ReturnType<typeof groundOf>): Levels {
  const stickM = site.sticks.stickLengthM ?? 0
  const judged: { planned: PlannedSupport[]; effort: number; isSoft: boolean }[] = []
  let beyondReach: LayoutSearch['beyondReach'] = null
  for (const shares of levelShares) {
    for (const isSoft of [true, false]) {
      const pool = poolOf(stands, rollers)
      const planned: PlannedSupport[] = []
      for (const [i, share] of shares.entries()) {
        const runningM = near(share * stickM, steps.tapeM)
        const lineM = saddleOf(site, { runningM, height: { rule: 'onAxis' } }) ?? 0
        const dropM = isSoft && i === shares.length - 1 ? near(Math.min(SOFT_MOST_M, Math.max(0, (lineM - pool.rollerM) * SOFT_SHARE)), steps.heightM) : 0
        const height = dropM > 0 ? { rule: 'belowAxis' as const, dropM } : { rule: 'onAxis' as const }
        const asRoller = Math.abs(lineM - pool.rollerM) <= FLAT_M
        const kind = asRoller ? 'roller' as const : 'stand' as const
        const saddleM = lineM - dropM
        if (!asRoller && !pool.reaches('stand', saddleM) && !(pool.lowestM > pool.highestM)) beyondReach ??= { saddleM, lowestM: pool.lowestM, highestM: pool.highestM }
        const sort = pool.take(kind, saddleM)
        if (sort === null || !ground.isFree(runningM, { lengthM: sort.baseLengthM, widthM: sort.baseWidthM })) break
        planned.push({ kind, runningM, height: asRoller ? { rule: 'aboveGround', saddleM: pool.rollerM } : height, sort, why: dropM > 0 ? 'softStart' : 'level', droopM: null, leadInM: null })
      }
      if (planned.length < shares.length) continue
      judged.push({ planned: [...infeed(site, kept, pool, steps.tapeM), ...planned], effort: effortOf(site, limits, kept, planned, spent), isSoft })
    }
  }
  const limit = limits.limit('jaw-effort').check ?? 1
  // A soft start before all but what the jaws feel; where there is nothing to come down from, none is drawn.
  const rank = ({ effort, planned, isSoft }: (typeof judged)[number]): number => (effort <= limit ? 0 : 1e4 + effort) + planned.length * 100 + (isSoft ? 0 : 50) + Math.round(effort * 10) - planned.at(-1)!.runningM / 1000
  return { levels: judged.toSorted((a, b) => rank(a) - rank(b)).map(({ planned }) => planned), beyondReach: judged.length === 0 ? beyondReach : null }
}

/** Two infeed stands where nothing holds the stick there. */
function infeed(site: SiteModel, kept: readonly SupportView[], pool: Pool, tapeM: number): PlannedSupport[] {
  const stickM = site.sticks.stickLengthM ?? 0
  if (kept.some(({ side, runningM }) => side === 'infeed' && runningM > -stickM)) return []
  return infeedShares.flatMap((share): PlannedSupport[] => {
    const runningM = -near(share * stickM, tapeM)
    const sort = pool.take('stand', saddleOf(site, { runningM, height: { rule: 'onAxis' } }) ?? 0)
    return sort === null ? [] : [{ kind: 'stand', runningM, height: { rule: 'onAxis' }, sort, why: 'infeed', droopM: null, leadInM: null }]
  }).reverse()
}

/** C on the exit side over the judged joints, with a free lay-down beyond the last level stand. */
function effortOf(site: SiteModel, limits: LimitLookup, kept: readonly SupportView[], planned: readonly PlannedSupport[], spent: { solves: number }): number {
  const trial = trialSite(site, kept, planned)
  const mechanics = createMechanics(trial, limits)
  const efforts = mechanics.joints.map((joint) => mechanics.sideEffort('exit', joint) ?? Infinity)
  spent.solves += mechanics.solveCount()
  return Math.max(...efforts)
}

interface LayOut {
  stretch: number
  levelSpans: number
  slings: boolean
  spacingM: number
  heightStepM: number
  standsToo: boolean
}

type Option = ReturnType<OptionsAt>[number]

/** Lay-down from the last support that stands, then the row to the end of the string. */
function layOut(scene: MarchScene, planned: readonly PlannedSupport[], way: LayOut): Marched {
  const { site, pool, kept } = scene
  const { slings, spacingM, heightStepM, standsToo } = way
  const { rollerM } = pool
  const standing = trialSite(site, kept.filter(({ kind }) => kind !== 'roller'), planned).supports.filter(({ side, levelM }) => side === 'exit' && levelM !== null)
  const last = standing.at(-1)
  const startM = last?.runningM ?? site.jaws.outerClampM
  const startLevelM = last?.levelM ?? jawLineLevelM(site.jaws, startM) ?? 0
  const startSaddleM = startLevelM - site.groundLevelAt(startM)
  // A free nose is let down to where the stands end; held it comes down as the pipe does by itself.
  const floorM = standsToo && !slings ? Math.min(Math.max(rollerM, Math.ceil(pool.lowestM / heightStepM - 1e-6) * heightStepM), startSaddleM) : rollerM
  const heightM = startSaddleM - floorM
  const lengthM = heightM <= FLAT_M ? 0 : way.stretch * freeLayDownLengthM({ bendingStiffnessNm2: site.pipe.stiffnessNm2('jaws') ?? 0, lineLoadNPerM: site.pipe.properties?.lineLoadNPerM ?? 0, heightM })
  const levelToM = startM + lengthM + (floorM > rollerM + heightStepM ? way.levelSpans * spacingM : 0)
  const settledM = levelToM + SETTLING_SPANS * spacingM
  const saddleAt = (runningM: number): number => floorM + (lengthM === 0 ? 0 : layDownHeightM({ distanceM: startM + lengthM - runningM, lengthM, heightM }))
  const roller = (): Option => ({ kind: 'roller', height: { rule: 'aboveGround', saddleM: rollerM }, why: 'row' })
  const optionsAt = (runningM: number): Option[] => {
    const saddleM = near(saddleAt(runningM), heightStepM)
    const isStand = standsToo && runningM <= levelToM + 1e-6 && saddleM > rollerM + heightStepM && pool.reaches('stand', saddleM)
    return isStand ? [{ kind: 'stand', height: { rule: 'aboveGround', saddleM }, why: 'layDown' }] : [roller()]
  }
  const endM = rowEndM(site)
  if (!slings) {
    const firstNoseM = site.job.firstStick === 'fedThrough' ? 0 : site.sticks.stringLengthM(1)
    const isComingDown = (at: number): boolean => lengthM + levelToM - startM > 0 && at >= firstNoseM && at < settledM
    return march(scene, planned, { fromM: startM, toM: endM, endGapM: spacingM, capM: (at) => (isComingDown(at) ? 2 : 1) * spacingM, optionsAt, judgesNose: true })
  }
  const landM = startM + lengthM
  return march(scene, [...planned, ...(standsToo ? quarterStands(scene, { startM, lengthM, endM, optionsAt }) : [])], { fromM: Math.min(landM, endM) - spacingM, toM: endM, endGapM: spacingM, capM: () => spacingM, optionsAt: () => [roller()], judgesNose: false })
}

/** End of the finished string, or of the pull path where that is drawn to an end before it. */
function rowEndM(site: SiteModel): number {
  const stringM = site.sticks.stringLengthM(site.sticks.stickCount)
  const end = site.run?.vertices.at(-1)
  return end === undefined ? stringM : Math.min(stringM, site.toRunning(end.xM, end.yM).runningM)
}

/** Stands at the quarter points of the free lay-down that the gear reaches. */
function quarterStands({ site, pool, ground, onTapeM }: MarchScene, { startM, lengthM, endM, optionsAt }: { startM: number; lengthM: number; endM: number; optionsAt: OptionsAt }): PlannedSupport[] {
  return (lengthM > 0 ? [0.25, 0.5, 0.75] : []).flatMap((quarter): PlannedSupport[] => {
    const runningM = onTapeM(startM + quarter * lengthM)
    const [option] = optionsAt(runningM)
    if (option?.kind !== 'stand' || runningM > endM) return []
    const saddleM = saddleOf(site, { runningM, height: option.height }) ?? 0
    const sort = pool.peek('stand', saddleM)
    if (sort === null || !ground.isFree(runningM, { lengthM: sort.baseLengthM, widthM: sort.baseWidthM })) return []
    pool.take('stand', saddleM)
    return [{ ...option, runningM, sort, droopM: null, leadInM: null }]
  })
}
