import type { JointSolve, Side } from '../../derive/jawSolve.ts'
import { createMechanics } from '../../derive/mechanics.ts'
import { jawLineLevelM } from '../../derive/supports.ts'
import type { SiteModel, SupportView } from '../../derive/types.ts'
import type { Remedy } from '../finding.ts'
import { sourceOf, type Limits } from '../limits.ts'
import { atJaws, boundFor, defineCheck, finding, levelFor, machineIds, q, say } from '../make.ts'
import { sideWord } from '../words.ts'

/** The joint at which a side of the jaws feels most. */
export function worstAtJaws(solves: readonly JointSolve[], side: Side): JointSolve | null {
  return solves.reduce<JointSolve | null>((worst, one) => (worst === null || one[side].effortRatio > worst[side].effortRatio ? one : worst), null)
}

export const jawEffort = defineCheck({
  id: 'jaw-effort',
  title: { en: 'Effort at the closed jaws', es: 'Esfuerzo en las mordazas cerradas' },
  cost: 'quick',
  run: (site, { limits, mechanics }) => {
    const limit = limits.limit('jaw-effort')
    return (['infeed', 'exit'] as const).flatMap((side) => {
      const worst = worstAtJaws(mechanics.solvedJoints(), side)
      if (worst === null) return []
      const { effortRatio, innerN, outerN } = worst[side]
      const level = levelFor(limit, effortRatio)
      const values = { side: sideWord(side), inner: q('force', innerN), outer: q('force', outerN), joint: worst.joint }
      const bound = boundFor(limit, level)
      const common = { about: side, measured: q('ratio', effortRatio), limit: q('ratio', bound), source: sourceOf(limit), phases: ['fuse'] as const, where: atJaws(site), items: machineIds(site) }
      if (level === 'met') return [finding('jaw-effort', { ...common, level, what: say('The {side} jaws hold the pipe without effort (C).', 'Las mordazas de {side} sostienen el tubo sin esfuerzo (C).', values) })]
      const remedy = remedyFor(site, limits, side)
      return [finding('jaw-effort', {
        ...common,
        level,
        what: say('The {side} jaws fight the pipe at joint {joint}: inner {inner}, outer {outer}.', 'Las mordazas de {side} pelean con el tubo en la junta {joint}: interior {inner}, exterior {outer}.', values),
        move: remedy === null ? say('Set the stands next to the {side} jaws on the jaw line, or add one.', 'Ponga los soportes junto a las mordazas de {side} en la línea de mordazas, o agregue uno.', values) : { text: remedy.label.text, values: remedy.label.values ?? {} },
        remedy,
      })]
    })
  },
})

/** A change that brings C to the CHECK bound or lower, tried on the solver: a stand to the jaw line, then one more stand. */
function remedyFor(site: SiteModel, limits: Limits, side: Side): Remedy | null {
  const limit = limits.limit('jaw-effort')
  const wanted = limit.check ?? limit.fix ?? 1
  const good = (supports: readonly SupportView[]): boolean => isWithin(site, limits, supports, side, wanted)
  const stickM = site.sticks.stickLengthM
  if (stickM === null || site.run === null || site.setUp === null) return null
  for (const support of site.supports) {
    if (support.side !== side || support.kind === 'roller' || support.locked || Math.abs(support.runningM) > 1.25 * stickM) continue
    if (support.saddleM === null || support.jawLineSaddleM === null || Math.abs(support.saddleM - support.jawLineSaddleM) < 0.003) continue
    if (isSetByCase(site, support)) continue
    if (!good(site.supports.map((one) => (one.itemId === support.itemId && one.levelM !== null ? { ...one, levelM: jawLineLevelM(site.jaws, one.runningM) } : one)))) continue
    const up = support.jawLineSaddleM > support.saddleM
    return {
      command: 'setHeight',
      args: { ids: [support.itemId], height: { rule: 'onAxis' } },
      label: say(up ? 'Raise {label} by {by}, to the jaw line' : 'Lower {label} by {by}, to the jaw line', up ? 'Subir {label} {by}, a la línea de mordazas' : 'Bajar {label} {by}, a la línea de mordazas', { label: support.label, by: q('height', Math.abs(support.jawLineSaddleM - support.saddleM)) }),
    }
  }
  for (const share of [0.5, 0.875, 0.35, 0.65, 0.25]) {
    const runningM = Math.round((side === 'exit' ? share : -share) * stickM * 1000) / 1000
    if (site.supports.some((support) => Math.abs(support.runningM - runningM) < 0.6)) continue
    if (!good([...site.supports, levelStandAt(site, side, runningM)].toSorted((a, b) => a.runningM - b.runningM))) continue
    const place = { at: 'onRun' as const, runId: site.run.id, runningM, offsetM: 0, turnRad: 0 }
    return { command: 'place', args: { kind: 'stand', place }, label: say('Add a level stand at {at}', 'Agregar un soporte a nivel en {at}', { at: { runningM } }) }
  }
  return null
}

/** A height measured on site, or a support supposed to sink, does not follow a new height of the plan. */
const isSetByCase = (site: SiteModel, { itemId, measuredSaddleM }: SupportView): boolean => (site.case.variant === 'asSet' && measuredSaddleM !== null) || site.case.whatIf?.sink?.itemId === itemId

/** One more stand on the jaw line, as far as the jaws feel it. */
function levelStandAt(site: SiteModel, side: Side, runningM: number): SupportView {
  const groundLevelM = site.groundLevelAt(runningM)
  const levelM = jawLineLevelM(site.jaws, runningM)
  const saddleM = levelM === null ? null : levelM - groundLevelM
  return {
    key: 'stand:remedy', itemId: 'stand:remedy', label: '', kind: 'stand', roller: 'flat', side, runningM, offsetM: 0, turnRad: 0, levelM, groundLevelM, saddleM, plannedSaddleM: saddleM, measuredSaddleM: null, jawLineSaddleM: saddleM,
    lowestSaddleM: null, highestSaddleM: null, ratedLoadN: null, leadInM: null, leadInIsTypical: true, rollerRadiusM: null, landingAid: 'none', groundGuessed: false, locked: false,
  }
}

/** Whether C of a side is no more than wanted at every judged joint, with other supports; the first joint over it settles it. */
function isWithin(site: SiteModel, limits: Limits, supports: readonly SupportView[], side: Side, wanted: number): boolean {
  const mechanics = createMechanics({ ...site, supports }, limits)
  return (side === 'infeed' ? [1] : mechanics.joints).every((joint) => (mechanics.sideEffort(side, joint) ?? Infinity) <= wanted)
}
