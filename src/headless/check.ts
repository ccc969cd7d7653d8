/** `yard check`: findings, quantities and the bent pipe of layouts, without a browser. */
import { readFile as readText } from 'node:fs/promises'
import { limitsOf } from '../checks/limits.ts'
import type { CheckRun, Finding, Sentence } from '../checks/finding.ts'
import { runChecks } from '../checks/runner.ts'
import { createMechanics } from '../derive/mechanics.ts'
import { profileAt } from '../derive/profile.ts'
import { deriveSite } from '../derive/site.ts'
import type { SiteModel } from '../derive/types.ts'
import { renderSentence } from '../messages/render.ts'
import { readFile } from '../scene/readFile.ts'
import { formatQuantity, formatRunning, type FormatOptions } from '../units/format.ts'
import type { Quantity } from '../units/quantity.ts'

/**
 * Checks the files in their order and writes what was found.
 *
 * `json`: one JSON object a line and file, quantities in SI; else text for a person, in the layout's own units.
 * Returns 0 where no file has a STOP or FIX, 1 where one has, 2 where one cannot be used (its line says why).
 */
export async function runCheck(files: string[], json: boolean, write: (text: string) => void = (text) => process.stdout.write(text)): Promise<number> {
  let exitCode = 0
  for (const file of files) {
    const outcome = await open(file)
    if ('reason' in outcome) {
      exitCode = 2
      write(json ? `${JSON.stringify({ file, status: 'rejected', reason: outcome.reason })}\n` : `${file}: ${outcome.reason}\n`)
      continue
    }
    const { site } = outcome
    const run = runChecks(site)
    if (exitCode === 0 && run.counts.STOP + run.counts.FIX > 0) exitCode = 1
    write(json ? `${JSON.stringify({ file, status: 'ok', ...reportOf(site, run) })}\n` : textOf(file, site, run))
  }
  return exitCode
}

async function open(file: string): Promise<{ site: SiteModel } | { reason: string }> {
  let text: string
  try {
    text = await readText(file, 'utf8')
  } catch {
    return { reason: 'cannot be read: no such file, or no permission' }
  }
  const result = readFile(text)
  if (!result.ok) {
    const [first] = result.issues
    return { reason: first === undefined ? 'is not a layout' : `${first.path === '' ? '' : `${first.path} `}${first.message.en}` }
  }
  return { site: deriveSite(result.document) }
}

/** Everything as plain JSON, SI throughout. Sentences are given rendered in English beside their parts. */
export function reportOf(site: SiteModel, run: CheckRun): Record<string, unknown> {
  const mechanics = createMechanics(site, limitsOf(site.document))
  const lastJoint = Math.max(1, site.sticks.stickCount - 1)
  const options = optionsOf(site)
  const { properties } = site.pipe
  return {
    title: site.layout.title,
    counts: run.counts,
    findings: run.findings.map((one) => ({ ...one, text: sentence(one.what, options), moveText: one.move === null ? null : sentence(one.move, options) })),
    quantities: {
      pipe: properties === null ? null : { odM: properties.odM, wallM: properties.minimumWallM, lineLoadNPerM: properties.lineLoadNPerM, massKgPerM: properties.massKgPerM },
      wallTemperatureC: site.pipe.wallTemperatureC,
      sticks: site.sticks.plan === null ? null : { count: site.sticks.plan.sticks, joints: site.sticks.plan.joints, madeLengthM: site.sticks.plan.madeLengthM, overM: site.sticks.plan.overM },
      jaws: mechanics.solvedJoints().map((joint) => ({
        joint: joint.joint, effortRatio: joint.effortRatio, faceGapM: joint.faceGapM, offsetM: joint.offsetM,
        infeed: { innerN: joint.infeed.innerN, outerN: joint.infeed.outerN }, exit: { innerN: joint.exit.innerN, outerN: joint.exit.outerN },
      })),
      arrivals: mechanics.arrivals().map(({ view, pull, tipM, droopM, leadInM, isOnGround }) => ({ label: view.label, pull, tipM, droopM, leadInM, isOnGround })),
      supports: site.supports.map(({ key, label, runningM, offsetM, levelM, groundLevelM, saddleM }) => ({ key, label, runningM, offsetM, levelM, groundLevelM, saddleM, largestLoadN: mechanics.loads().get(key)?.loadN ?? null })),
      setOutTolerances: mechanics.tolerances().map(({ view, toleranceM }) => ({ label: view.label, toleranceM })),
    },
    profile: profileReport(site, lastJoint),
  }
}

/** The pipe as it lies when the last joint is fused. */
function profileReport(site: SiteModel, joint: number): Record<string, unknown> {
  const { stage, status, missing, bodies, loads, jaws } = profileAt(site, { phase: 'fuse', joint })
  return {
    stage, status, missing,
    bodies: bodies.map(({ name, startM, endM, runningM, levelM, result }) => ({ name, startM, endM, passes: result.passes, runningM: [...runningM], levelM: [...levelM] })),
    loads: [...loads].map(([key, load]) => ({ key, ...load })),
    jaws,
  }
}

const optionsOf = (site: SiteModel): FormatOptions => ({ system: site.layout.displayUnits, language: 'en' })
const sentence = ({ text, values }: Sentence, options: FormatOptions): string => renderSentence(text, values ?? {}, options)

function textOf(file: string, site: SiteModel, run: CheckRun): string {
  const options = optionsOf(site)
  const { counts } = run
  const shown = run.findings.filter(({ level, isUnknown }) => level !== 'met' && !isUnknown)
  const unknown = run.findings.filter(({ isUnknown }) => isUnknown)
  const head = `${file}: ${site.layout.title === '' ? 'without a title' : site.layout.title}`
  const tally = `STOP ${counts.STOP} · FIX ${counts.FIX} · CHECK ${counts.CHECK - counts.toConfirm} · NOTE ${counts.NOTE} · met ${counts.met} · to confirm ${counts.toConfirm}`
  return `${[head, tally, ...shown.flatMap((one) => linesOf(one, options)), ...(unknown.length === 0 ? [] : ['to confirm', ...unknown.map((one) => `  ${sentence(one.what, options)}`)])].join('\n')}\n`
}

function linesOf(one: Finding, options: FormatOptions): string[] {
  const place = one.where?.at === 'run' ? ` (${formatRunning(one.where.runningM, options)})` : ''
  const value = valueText(one.measured, one.limit, options)
  const source = `${one.source.class}: ${one.source.cite}${one.source.edited === true ? ', edited' : ''}`
  return [
    `${one.level.padEnd(5)} ${sentence(one.what, options)}${place}`,
    `      ${value === '' ? '' : `${value} · `}${source}`,
    ...(one.move === null ? [] : [`      ${sentence(one.move, options)}`]),
  ]
}

function valueText(measured: Quantity | null, limit: Quantity | null, options: FormatOptions): string {
  if (measured === null) return ''
  const text = formatQuantity(measured, options)
  return limit === null || limit.value === null ? text : `${text} against ${formatQuantity(limit, options)}`
}
