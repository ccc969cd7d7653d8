/** 'Place the stands' and 'Place the rollers': a layout of the supports that the checks pass, with the fewest of them tried. */
import { bodySolverOf } from '../../derive/bodies.ts'
import { deriveSite } from '../../derive/site.ts'
import type { SiteModel, SupportView } from '../../derive/types.ts'
import { commandOf as commandNamed } from '../../scene/commands/index.ts'
import { applyEdit, type Env } from '../../scene/edit.ts'
import { limitsOf } from '../limits.ts'
import { loaderPlateN } from '../../derive/loaders.ts'
import type { Finding } from '../finding.ts'
import { runChecks } from '../runner.ts'
import { commandOf } from './commands.ts'
import { sortsOf } from './gearPool.ts'
import { layoutsFor, type Layout, type LayoutSearch } from './layouts.ts'
import { reasonsOf, saidOf } from './reasons.ts'
import type { OnProgress, ProposalRequest, ProposalResult, SupportCounts } from './types.ts'
import { unmetOf } from './unmet.ts'
import { verdictOf } from './verdict.ts'

/** Whole check runs spent at most on trying layouts. */
const MOST_RUNS = 8
const MOST_RUNS_A_SPACING = 4
/** Steps of the tape the row may be closer than the nose asks for: 1 ft, or 0.2 m. */
const MOST_CLOSER = 2

const countsOf = (views: readonly SupportView[]): SupportCounts => ({ stands: views.filter(({ kind }) => kind === 'stand').length, rollers: views.filter(({ kind }) => kind === 'roller').length })
const total = ({ stands, rollers }: SupportCounts): number => stands + rollers

/** Somebody on the plan who can carry the nose: a loader, or a puller that drives. */
const canSling = (site: SiteModel): boolean => loaderPlateN(site) !== null || [...site.placed.values()].some(({ record }) => record.kind === 'loader' || (record.kind === 'puller' && record.pullerKind !== 'winch'))

/** Ids of trial documents; only their being different counts. */
function trialEnv(): Env {
  let count = 0
  return { newId: (prefix) => `${prefix}:trial${(count += 1).toString(36)}`, now: () => '1970-01-01T00:00:00.000Z' }
}

/**
 * Search for a better layout of the supports.
 *
 * Model:  layouts from closed forms laid out on the contact beam (layouts.ts, march.ts), each judged by all checks; the first,
 *         in order of nose hold, number of supports and stands, that raises no STOP, FIX or CHECK and clears one or saves supports.
 * Output: a command of existing names with reasons, counts and findings; or which limit no layout tried meets.
 * Same input, same output; at most `MOST_RUNS` whole check runs after that of the present layout.
 */
export function propose({ kind, document, owned }: ProposalRequest, onProgress: OnProgress = () => {}): ProposalResult {
  const site = deriveSite(document)
  const spent = { solves: 0 }
  let runCount = 0
  const common = (): { kind: typeof kind; solveCount: number; runCount: number } => ({ kind, solveCount: spent.solves, runCount })
  const missing = [...bodySolverOf(site).missing, ...(site.sticks.countAssumed ? site.sticks.missing.filter(({ path }) => path !== 'stickLengthM') : [])]
  if (missing.length > 0) return { ...common(), status: 'missing', missing }

  const mayMove = (view: SupportView): boolean => !view.locked && (view.kind === 'roller' ? view.side === 'exit' : view.kind === 'stand' && kind === 'stands' && (view.side === 'exit' || !infeedStays(site)))
  const present = site.supports.filter(mayMove)
  const kept = site.supports.filter((view) => !mayMove(view))
  const limits = limitsOf(document)
  const stands = sortsOf(site, 'stand', owned)
  const rollers = sortsOf(site, 'roller', owned)
  const isSlung = site.job.noseHold === null || site.job.noseHold === 'slung' || site.job.noseHold === 'lifted'
  const before = runChecks(site, { owned })
  spent.solves += bodySolverOf(site).solveCount()
  onProgress(0.1)
  const presentCounts = countsOf(site.supports)
  const raised: { layout: Layout; raises: readonly Finding[] }[] = []
  let firstSearch: LayoutSearch | null = null
  for (let closerBy = 0; closerBy <= MOST_CLOSER && runCount < MOST_RUNS; closerBy += 1) {
    const search = layoutsFor({ site, limits, kind, kept, stands, rollers, maySling: canSling(site), isSlung, closerBy, spent })
    firstSearch ??= search
    // Closer rollers help what they carry and what the ground's bumps do to the nose; nothing else.
    if (closerBy > 0 && !raised.some(({ raises }) => raises.every(({ checkId }) => checkId === 'stand-load' || checkId === 'nose-landing'))) break
    for (const layout of search.layouts.slice(0, MOST_RUNS_A_SPACING)) {
      if (runCount >= MOST_RUNS) break
      const command = commandOf(site, kind, present, layout.planned, layout.slings)
      const after = deriveSite(applyEdit(document, commandNamed(command.command)!.run(document, command.args, trialEnv())))
      const run = runChecks(after, { owned })
      runCount += 1
      spent.solves += bodySolverOf(after).solveCount()
      onProgress(0.1 + (0.9 * runCount) / MOST_RUNS)
      const verdict = verdictOf(before, run)
      const proposed = countsOf(after.supports)
      if (verdict.raises.length > 0) {
        raised.push({ layout, raises: verdict.raises })
        continue
      }
      if (verdict.clears.length === 0 && total(proposed) >= total(presentCounts)) return { ...common(), status: 'nothing', present: presentCounts, proposed }
      onProgress(1)
      return { ...common(), status: 'found', command, reasons: reasonsOf(after, layout), said: saidOf({ site: after, layout, stands, rollers, wasSlung: isSlung }), present: presentCounts, proposed, clears: verdict.clears, toConfirm: verdict.toConfirm }
    }
  }
  onProgress(1)
  const isGood = before.findings.every(({ checkId, level }) => !aboutSupports.has(checkId) || level === 'met' || level === 'NOTE')
  if (isGood && present.length > 0) return { ...common(), status: 'nothing', present: presentCounts, proposed: null }
  return { ...common(), status: 'impossible', unmet: unmetOf({ site, kind, search: firstSearch!, raised, stands, rollers, canSling: canSling(site), isSlung }) }
}

/** Checks a layout of supports answers: with none of them open there is nothing to propose. */
const aboutSupports: ReadonlySet<string> = new Set(['jaw-effort', 'lifts-out', 'exit-stands', 'face-gap', 'offset-change', 'sag', 'nose-landing', 'stand-load', 'saddle-height', 'balance', 'feed', 'surface-scuff'])

/** The infeed is left alone where it has a rack, or anything that may not be moved. */
const infeedStays = (site: SiteModel): boolean => site.supports.some(({ side, kind, locked }) => side === 'infeed' && (kind !== 'stand' || locked))
