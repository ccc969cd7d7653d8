import type { MissingInput, SiteModel, SupportView } from '../../derive/types.ts'
import { brokenBound, limitParam } from '../../engine/limits.ts'
import { recordsOf } from '../../scene/document.ts'
import type { CheckTools, Finding } from '../finding.ts'
import { sourceOf } from '../limits.ts'
import { atJaws, atSupport, defineCheck, finding, houseRule, listOf, machineIds, q, say } from '../make.ts'
import { sideWord } from '../words.ts'

/** A tape is read to 1/16 in at best; half of that is no difference. */
const READING_M = 0.0008

/** Heights as the crew measured them against the plan, each with the tolerance of its own support (docs/checks/as-set.md). */
export const asSet = defineCheck({
  id: 'as-set',
  title: { en: 'Heights as set against the plan', es: 'Alturas como quedaron frente al plano' },
  cost: 'slow',
  run: (site, tools) => {
    const measured = site.supports.filter(({ measuredSaddleM }) => measuredSaddleM !== null)
    const jawM = recordsOf(site.document, 'asSet').find(({ itemId }) => itemId === site.jaws.machineId)?.saddleM ?? null
    // Nobody has begun to measure: nothing to compare.
    if (measured.length === 0 && jawM === null) return []
    const limit = tools.limits.limit('set-out-tolerance')
    const tolerances = new Map(tools.mechanics.tolerances().map(({ view, toleranceM }) => [view.key, toleranceM]))
    const mostM = limitParam(limit, 'mostM')
    const toleranceOf = ({ key }: SupportView): number => tolerances.get(key) ?? mostM
    const off = measured.flatMap((view) => offFinding(site, tools, view, toleranceOf(view)))
    const jaws = jawM === null || site.plannedJawM === null ? [] : jawFinding(site, tools, jawM - site.plannedJawM, Math.min(mostM, ...tolerances.values()))
    const open = site.supports.filter(({ measuredSaddleM, plannedSaddleM }) => measuredSaddleM === null && plannedSaddleM !== null)
    const unmeasured = open.length === 0 ? [] : [openFinding(site, open, measured.length)]
    const found = [...off, ...jaws, ...unmeasured]
    if (found.length > 0) return found
    return [finding('as-set', { level: 'met', source: sourceOf(limit), phases: ['setUp', 'fuse'], what: say('All {count} supports stand within the tolerance of their planned heights.', 'Los {count} apoyos están dentro de la tolerancia de sus alturas planeadas.', { count: measured.length }) })]
  },
})

function offFinding(site: SiteModel, { limits, mechanics }: CheckTools, view: SupportView, toleranceM: number): Finding[] {
  if (view.plannedSaddleM === null || view.measuredSaddleM === null) return []
  const offM = view.measuredSaddleM - view.plannedSaddleM
  if (Math.abs(offM) <= toleranceM + READING_M) return []
  // C of its side with this one support as set and as planned, the others as the case shown has them.
  const usesAsSet = site.case.variant === 'asSet'
  const efforts = mechanics.solvedJoints().map((one) => one[view.side].effortRatio)
  const [here, shifted] = [efforts.length === 0 ? null : Math.max(...efforts), mechanics.effortWithShift(view.key, usesAsSet ? -offM : offM, view.side)]
  const [effort, planned] = usesAsSet ? [here, shifted] : [shifted, here]
  const isLow = offM < 0
  const values = {
    label: view.label, side: sideWord(view.side), off: q('shortLength', Math.abs(offM)), tolerance: q('shortLength', toleranceM), saddle: q('height', view.plannedSaddleM),
    effort: q('ratio', effort), planned: q('ratio', planned),
  }
  const isKnown = effort !== null && planned !== null
  return [finding('as-set', {
    level: effort !== null && brokenBound(limits.limit('jaw-effort'), effort) === 'fix' ? 'FIX' : 'CHECK',
    about: view.key,
    measured: q('shortLength', Math.abs(offM)),
    limit: q('shortLength', toleranceM),
    source: sourceOf(limits.limit('set-out-tolerance')),
    phases: ['setUp', 'fuse'],
    where: atSupport(view),
    items: [view.itemId],
    what: isLow
      ? say(isKnown ? '{label} was set {off} lower than planned, more than ± {tolerance}: C at the {side} jaws is {effort} instead of {planned}.' : '{label} was set {off} lower than planned, more than ± {tolerance}.', isKnown ? '{label} quedó {off} más bajo que lo planeado, más de ± {tolerance}: C en las mordazas de {side} es {effort} en vez de {planned}.' : '{label} quedó {off} más bajo que lo planeado, más de ± {tolerance}.', values)
      : say(isKnown ? '{label} was set {off} higher than planned, more than ± {tolerance}: C at the {side} jaws is {effort} instead of {planned}.' : '{label} was set {off} higher than planned, more than ± {tolerance}.', isKnown ? '{label} quedó {off} más alto que lo planeado, más de ± {tolerance}: C en las mordazas de {side} es {effort} en vez de {planned}.' : '{label} quedó {off} más alto que lo planeado, más de ± {tolerance}.', values),
    move: isLow ? say('Raise {label} by {off} to {saddle} and measure it again.', 'Suba {label} {off}, a {saddle}, y mida otra vez.', values) : say('Lower {label} by {off} to {saddle} and measure it again.', 'Baje {label} {off}, a {saddle}, y mida otra vez.', values),
  })]
}

/** Jaws off their height are every stand off by as much the other way, so the tightest tolerance holds. */
function jawFinding(site: SiteModel, { limits }: CheckTools, offM: number, toleranceM: number): Finding[] {
  if (Math.abs(offM) <= toleranceM + READING_M) return []
  const values = { off: q('shortLength', Math.abs(offM)), tolerance: q('shortLength', toleranceM) }
  return [finding('as-set', {
    level: 'CHECK',
    about: 'jaws',
    measured: q('shortLength', Math.abs(offM)),
    limit: q('shortLength', toleranceM),
    source: sourceOf(limits.limit('set-out-tolerance')),
    phases: ['setUp', 'fuse'],
    where: atJaws(site),
    items: machineIds(site),
    what: offM < 0
      ? say('The pipe lies {off} lower in the jaws than planned; the tightest stand allows ± {tolerance}.', 'El tubo queda {off} más bajo en las mordazas que lo planeado; el soporte más exigente permite ± {tolerance}.', values)
      : say('The pipe lies {off} higher in the jaws than planned; the tightest stand allows ± {tolerance}.', 'El tubo queda {off} más alto en las mordazas que lo planeado; el soporte más exigente permite ± {tolerance}.', values),
    move: say('Set the stands from the jaws as they are, or level the machine again.', 'Nivele los soportes desde las mordazas como están, o vuelva a nivelar la máquina.'),
  })]
}

/** Path of the missing input: the field for it stands in the tag of the support. */
const missingOf = ({ itemId, label, key }: SupportView): MissingInput => ({ recordId: itemId, path: key.endsWith('#2') ? 'asSet.farSaddleM' : 'asSet.saddleM', label: { en: `as-set height of ${label}`, es: `altura como quedó de ${label}` } })

function openFinding(site: SiteModel, open: readonly SupportView[], measuredCount: number): Finding {
  const values = { labels: listOf(open.map(({ label }) => label)), count: open.length, all: measuredCount + open.length }
  return finding('as-set', {
    level: 'CHECK',
    about: 'open',
    source: houseRule,
    phases: ['setUp', 'fuse'],
    items: [...new Set(open.map(({ itemId }) => itemId))],
    where: atSupport(open[0]!),
    missing: open.map(missingOf),
    what: site.case.variant === 'asSet'
      ? say('Not measured yet, {count} of {all}: {labels}. The planned height stands in.', 'Sin medir aún, {count} de {all}: {labels}. Vale la altura planeada.', values)
      : say('Not measured yet, {count} of {all}: {labels}.', 'Sin medir aún, {count} de {all}: {labels}.', values),
    move: say('Measure from the ground to the bottom of the pipe and type it.', 'Mida del suelo al fondo del tubo y escríbalo.'),
  })
}
