/** Runs the checks over a site and puts their findings in the order they are read. */
import { createMechanics } from '../derive/mechanics.ts'
import { deriveSite } from '../derive/site.ts'
import type { SiteModel } from '../derive/types.ts'
import type { YardDocument } from '../scene/document.ts'
import type { GearItem } from '../scene/gear.ts'
import { askedOnce } from './askedOnce.ts'
import { levelOrder, type CheckDefinition, type CheckRun, type CheckTools, type Finding } from './finding.ts'
import { limitsOf } from './limits.ts'
import { finding, houseRule, say } from './make.ts'
import { quantitiesOf } from './quantities.ts'
import { checks } from './registry.ts'

export interface RunOptions {
  /** `quick`: only what follows a drag frame by frame; the others settle after it. Default all. */
  only?: 'quick' | 'all'
  /** Other checks than the registry's, for tests. */
  checks?: readonly CheckDefinition[]
  /** The crew's own gear; it is no part of a layout. Left out: no list. */
  owned?: readonly GearItem[] | null
}

/**
 * Findings of a document or of a site already derived.
 *
 * Order: STOP, FIX, CHECK, NOTE, met; within a level along the tape, what has no place on it last; then as in the registry.
 * A check that fails by itself gives a CHECK that says so, never silence. Same input, same output.
 */
export function runChecks(input: YardDocument | SiteModel, options: RunOptions = {}): CheckRun {
  const site = 'placed' in input ? input : deriveSite(input)
  const limits = limitsOf(site.document)
  const tools: CheckTools = { limits, mechanics: createMechanics(site, limits), owned: options.owned ?? null }
  const wanted = (options.checks ?? checks).filter(({ cost }) => options.only !== 'quick' || cost === 'quick')
  const run = collect(site, askedOnce(wanted.flatMap((check) => runOne(check, site, tools))))
  return options.only === 'quick' ? run : { ...run, ...figures(tools) }
}

/** A solver that fails has already given a CHECK for what it failed in; the figures are left out then. */
function figures({ mechanics, limits }: CheckTools): Pick<CheckRun, 'quantities'> {
  try {
    return { quantities: quantitiesOf(mechanics, limits) }
  } catch {
    return {}
  }
}

function runOne(check: CheckDefinition, site: SiteModel, tools: CheckTools): readonly Finding[] {
  try {
    return check.run(site, tools)
  } catch (error) {
    return [finding(check.id, {
      level: 'CHECK',
      about: 'failed',
      what: say('{check}: could not be worked out ({reason}).', '{check}: no se pudo calcular ({reason}).', { check: check.title, reason: error instanceof Error ? error.message : String(error) }),
      source: houseRule,
      move: say('Judge it on site, and report this.', 'Júzguelo en el sitio y avise de esto.'),
    })]
  }
}

function collect(site: SiteModel, found: readonly Finding[]): CheckRun {
  const place = new Map(found.map((one) => [one, runningOf(site, one)]))
  const rank = (one: Finding): number => levelOrder.indexOf(one.level)
  const findings = found.toSorted((a, b) => rank(a) - rank(b) || place.get(a)! - place.get(b)!)
  const counts: CheckRun['counts'] = { STOP: 0, FIX: 0, CHECK: 0, NOTE: 0, met: 0, toConfirm: 0 }
  for (const { level, isUnknown } of findings) {
    counts[level] += 1
    if (isUnknown) counts.toConfirm += 1
  }
  return { findings, counts }
}

/** Where a finding lies along the tape; what lies nowhere comes last. */
function runningOf(site: SiteModel, { where, itemIds }: Finding): number {
  if (where?.at === 'run') return where.runningM
  if (where?.at === 'site') return site.toRunning(where.xM, where.yM).runningM
  const running = site.placed.get(itemIds[0] ?? '')?.runningM
  return running ?? Number.MAX_VALUE
}
