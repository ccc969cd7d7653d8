/** Random layouts through every check, and what a long run of them proves: `npm run soak -- layouts`. */
import { levelOrder, type Finding, type Level } from '../../src/checks/finding.ts'
import { checks } from '../../src/checks/registry.ts'
import { runChecks } from '../../src/checks/runner.ts'
import { bodySolverOf } from '../../src/derive/bodies.ts'
import { profileAt } from '../../src/derive/profile.ts'
import { deriveSite } from '../../src/derive/site.ts'
import type { SiteModel } from '../../src/derive/types.ts'
import type { ContactBeamResult } from '../../src/engine/beam/types.ts'
import { renderText } from '../../src/messages/render.ts'
import { phases } from '../../src/scene/parts.ts'
import { documentIssues } from '../../src/scene/references.ts'
import { gearItem } from './gear.ts'
import { seededRandom } from './seededRandom.ts'
import { variedCase } from './variedLayout.ts'

/** A figure and the seed of the layout that gave it. */
export interface Most {
  value: number
  seed: number
}

/** Plain JSON, so that slices of a run can be written down and put together. */
export interface LayoutSoakResult {
  count: number
  findings: number
  /** Longest single layout, ms of processor time: what else runs on the machine does not count. */
  longestMs: Most
  /** Linear solves of the beam that took most of them, and its unknowns: contacts in it. */
  mostPasses: Most
  mostUnknowns: Most
  /** Beams solved for one layout, and findings of one layout that ask for an input. */
  mostSolves: Most
  mostToConfirm: Most
  /** Bodies the solver gave up on; refused ones (jaws below the ground) are not among them. And those whose slopes are beyond the beam's range anyway. */
  notConverged: number
  notConvergedSteep: number
  /** Layouts with a finding of the level. */
  withLevel: Record<Level, number>
  /** Layouts in which a check gave the level. */
  fired: Record<string, Partial<Record<Level, number>>>
  failureCount: number
  /** The first of them. */
  failures: { seed: number; what: string }[]
}

/** Where the pipe's slopes are small and the ground is nowhere steeper than 1 in 1 a body that needs more linear solves than this has lost its way; beyond, the search takes one for each contact that comes or goes. */
export const MOST_PASSES = 400
const MOST_PASSES_STEEP = 20_000
/** Unknowns a body may have: this many for each support, clamp and corner of the ground, and as many for the ends; where slopes are not small, what the search may put on the ground besides. */
const UNKNOWNS_EACH = 4
const MORE_UNKNOWNS_STEEP = 4096
const MOST_FAILURES_KEPT = 50

export const nothingSoaked = (seed: number): LayoutSoakResult => {
  const none = { value: 0, seed }
  return { count: 0, findings: 0, longestMs: none, mostPasses: none, mostUnknowns: none, mostSolves: none, mostToConfirm: none, notConverged: 0, notConvergedSteep: 0, withLevel: { STOP: 0, FIX: 0, CHECK: 0, NOTE: 0, met: 0 }, fired: {}, failureCount: 0, failures: [] }
}

/**
 * Seeded random layouts, each valid as a file, through every check: no exception, no NaN in any number or sentence, the
 * solver's passes and unknowns under their caps.
 */
export function runLayoutSoak({ seed, count }: { seed: number; count: number }): LayoutSoakResult {
  const result = nothingSoaked(seed)
  for (let one = seed; one < seed + count; one += 1) {
    const before = process.cpuUsage()
    try {
      judge(one, result)
    } catch (error) {
      fail(result, one, error instanceof Error ? (error.stack ?? error.message).slice(0, 600) : String(error))
    }
    result.count += 1
    const { user, system } = process.cpuUsage(before)
    result.longestMs = more(result.longestMs, { value: (user + system) / 1000, seed: one })
  }
  return result
}

const more = (a: Most, b: Most): Most => (b.value > a.value ? b : a)

function fail(result: LayoutSoakResult, seed: number, what: string): void {
  result.failureCount += 1
  if (result.failures.length < MOST_FAILURES_KEPT) result.failures.push({ seed, what })
}

function judge(seed: number, result: LayoutSoakResult): void {
  const { document, options } = variedCase(seededRandom(seed))
  for (const { path, message } of documentIssues(document)) fail(result, seed, `no valid file: ${path} ${message.en}`)
  const site = deriveSite(document, options)
  const { findings, counts, quantities } = runChecks(site, { owned: seed % 3 === 0 ? [gearItem({ choices: {}, count: seed % 7 }), gearItem({ id: 'gear:r1', kind: 'roller', choices: {}, count: seed % 30, figures: {} })] : null })
  result.findings += findings.length
  result.mostToConfirm = more(result.mostToConfirm, { value: counts.toConfirm, seed })
  tally(findings, result)
  for (const one of findings) {
    if (one.key.endsWith('@failed')) fail(result, seed, `${one.checkId}: ${JSON.stringify(one.what.values)}`)
    const bad = firstBadNumber(one, one.key)
    if (bad !== null) fail(result, seed, `not a number: ${bad}`)
    for (const sentence of [one.what, one.move, one.remedy?.label]) if (sentence !== null && sentence !== undefined) readable(renderText(sentence.text, sentence.values ?? {}, { system: 'metric', language: 'en' }))
  }
  const bad = firstBadNumber(quantities, 'quantities')
  if (bad !== null) fail(result, seed, `not a number: ${bad}`)
  for (const phase of phases) {
    for (const body of profileAt(site, { phase, joint: 1 + (seed % 5) }).bodies) {
      if (!body.levelM.every(Number.isFinite)) fail(result, seed, `profile of ${phase} has a level that is no number`)
    }
  }
  judgeSolves(site, seed, result)
}

function readable(text: string): void {
  if (/NaN|undefined|Infinity|\{\w+\}/.test(text)) throw new Error(`unreadable: ${text}`)
}

function judgeSolves(site: SiteModel, seed: number, result: LayoutSoakResult): void {
  const solver = bodySolverOf(site)
  const { runningM, levelM } = site.ground
  const isCliff = runningM.some((at, i) => i > 0 && Math.abs(levelM[i]! - levelM[i - 1]!) > at - runningM[i - 1]!)
  result.mostSolves = more(result.mostSolves, { value: solver.solveCount(), seed })
  for (const { result: beam, supports, jaws } of solver.solved()) {
    const unknowns = unknownsOf(beam)
    result.mostPasses = more(result.mostPasses, { value: beam.passes, seed })
    result.mostUnknowns = more(result.mostUnknowns, { value: unknowns, seed })
    const isSteep = beam.outOfSmallSlope || isCliff
    if (beam.status === 'notConverged') {
      if (isSteep) result.notConvergedSteep += 1
      else result.notConverged += 1
    }
    if (beam.passes > (isSteep ? MOST_PASSES_STEEP : MOST_PASSES)) fail(result, seed, `${beam.passes} passes`)
    if (unknowns > UNKNOWNS_EACH * (supports.length + jaws.length + site.ground.runningM.length + 4) + (isSteep ? MORE_UNKNOWNS_STEEP : 0)) fail(result, seed, `${unknowns} unknowns`)
  }
}

/** One at each support that carries or touch of the ground, two at a stretch lying on it. */
const unknownsOf = ({ pattern }: ContactBeamResult): number => pattern.carrying.filter(Boolean).length + pattern.ground.reduce((sum, { kind }) => sum + (kind === 'interval' ? 2 : 1), 0)

function tally(findings: readonly Finding[], result: LayoutSoakResult): void {
  for (const level of new Set(findings.map((one) => one.level))) result.withLevel[level] += 1
  for (const key of new Set(findings.map(({ checkId, level }) => `${checkId} ${level}`))) {
    const [checkId, level] = key.split(' ') as [string, Level]
    const levels = (result.fired[checkId] ??= {})
    levels[level] = (levels[level] ?? 0) + 1
  }
}

function firstBadNumber(value: unknown, path: string): string | null {
  if (typeof value === 'number') return Number.isFinite(value) ? null : path
  if (typeof value !== 'object' || value === null) return null
  for (const [key, inner] of Object.entries(value)) {
    const bad = firstBadNumber(inner, `${path}.${key}`)
    if (bad !== null) return bad
  }
  return null
}

/** Two slices as one. */
export function together(a: LayoutSoakResult, b: LayoutSoakResult): LayoutSoakResult {
  const fired: LayoutSoakResult['fired'] = {}
  for (const id of new Set([...Object.keys(a.fired), ...Object.keys(b.fired)])) fired[id] = Object.fromEntries(levelOrder.map((level) => [level, (a.fired[id]?.[level] ?? 0) + (b.fired[id]?.[level] ?? 0)]).filter(([, times]) => times !== 0))
  return {
    count: a.count + b.count, findings: a.findings + b.findings,
    longestMs: more(a.longestMs, b.longestMs), mostPasses: more(a.mostPasses, b.mostPasses), mostUnknowns: more(a.mostUnknowns, b.mostUnknowns), mostSolves: more(a.mostSolves, b.mostSolves), mostToConfirm: more(a.mostToConfirm, b.mostToConfirm),
    notConverged: a.notConverged + b.notConverged, notConvergedSteep: a.notConvergedSteep + b.notConvergedSteep,
    withLevel: Object.fromEntries(levelOrder.map((level) => [level, a.withLevel[level] + b.withLevel[level]])) as LayoutSoakResult['withLevel'],
    fired, failureCount: a.failureCount + b.failureCount, failures: [...a.failures, ...b.failures].slice(0, MOST_FAILURES_KEPT),
  }
}

/** What a run says, line by line; checks that never fired and those that fired in one level only are named. */
export function soakLines(result: LayoutSoakResult): string[] {
  const most = (name: string, { value, seed }: Most): string => `${name} ${Number.isInteger(value) ? value : value.toFixed(1)} (seed ${seed})`
  const share = (level: Level): string => `${level} ${((100 * result.withLevel[level]) / Math.max(1, result.count)).toFixed(1)} %`
  const never = checks.filter(({ id }) => result.fired[id] === undefined).map(({ id }) => id)
  return [
    `layouts ${result.count}, findings ${result.findings}, failures ${result.failureCount}`,
    [most('longest ms', result.longestMs), most('beam passes', result.mostPasses), most('beam unknowns', result.mostUnknowns), most('beams solved', result.mostSolves), most('inputs asked for', result.mostToConfirm)].join('; '),
    `not converged ${result.notConverged}; beyond small slopes ${result.notConvergedSteep}`,
    `layouts with a finding: ${levelOrder.map(share).join(', ')}`,
    'layouts in which a check gave a level:',
    ...checks.filter(({ id }) => result.fired[id] !== undefined).map(({ id }) => `  ${id}: ${levelOrder.flatMap((level) => (result.fired[id]?.[level] === undefined ? [] : [`${level} ${result.fired[id]?.[level]}`])).join(', ')}`),
    `never fired: ${never.length === 0 ? 'none' : never.join(', ')}`,
    ...result.failures.map(({ seed, what }) => `FAILURE seed ${seed}: ${what}`),
  ]
}
