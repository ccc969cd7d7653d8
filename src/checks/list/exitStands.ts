import { q, atRun, defineCheck, finding, houseRule, machineIds, say } from '../make.ts'
import type { SiteModel, SupportView } from '../../derive/types.ts'
import { sourceOf } from '../limits.ts'

/** A stand this far below the jaw line still counts as level: the soft start of a lay-down drops its last level stand by 1½ in. */
const LEVEL_WITHIN_M = 0.0508

/** Exit stands from the jaws outward up to the first that is let down. */
export function levelExitStands(site: SiteModel): SupportView[] {
  const exit = site.supports.filter(({ side, kind }) => side === 'exit' && kind !== 'rack')
  const end = exit.findIndex(({ saddleM, jawLineSaddleM }) => saddleM === null || jawLineSaddleM === null || Math.abs(jawLineSaddleM - saddleM) > LEVEL_WITHIN_M)
  return end < 0 ? exit : exit.slice(0, end)
}

export const exitStands = defineCheck({
  id: 'exit-stands',
  title: { en: 'Level stands on the exit', es: 'Soportes a nivel en la salida' },
  cost: 'quick',
  run: (site, { limits, mechanics }) => {
    const limit = limits.limit('level-stands')
    const wanted = limit.check ?? 0
    if (site.setUp === null || mechanics.missing.length > 0) return []
    const level = levelExitStands(site)
    const common = { measured: q('count', level.length), limit: q('count', wanted), bound: 'least' as const, source: sourceOf(limit), phases: ['fuse', 'pull'] as const, items: [...machineIds(site), ...level.map(({ itemId }) => itemId)] }
    if (level.length >= wanted) return [finding('exit-stands', { ...common, level: 'met', what: say('{count} level stands between the jaws and the lay-down.', '{count} soportes a nivel entre las mordazas y el descenso.', { count: level.length }) })]
    const effort = mechanics.worstEffortRatio()
    const isEasy = effort !== null && effort <= (limits.limit('jaw-effort').check ?? 1)
    const atM = placeForStandM(site, level)
    return [finding('exit-stands', {
      ...common,
      level: isEasy ? 'NOTE' : 'CHECK',
      where: atRun(atM, null),
      what: level.length === 0
        ? say('No level stand between the jaws and the lay-down.', 'Ningún soporte a nivel entre las mordazas y el descenso.')
        : say('One level stand on the exit; two keep the pipe quiet in the jaws.', 'Un solo soporte a nivel en la salida; dos dejan el tubo quieto en las mordazas.'),
      move: say('Add a level stand at {at}.', 'Agregue un soporte a nivel en {at}.', { at: { runningM: atM } }),
      remedy: site.run === null ? null : {
        command: 'place',
        args: { kind: 'stand', place: { at: 'onRun', runId: site.run.id, runningM: atM, offsetM: 0, turnRad: 0 } },
        label: say('Add a stand at {at}', 'Agregar un soporte en {at}', { at: { runningM: atM } }),
      },
      source: common.source ?? houseRule,
    })]
  },
})

/** First stand half a stick from the jaws, the second three eighths of a stick beyond it: 20 and 35 ft with 40 ft sticks. */
function placeForStandM(site: SiteModel, level: readonly SupportView[]): number {
  const stickM = site.sticks.stickLengthM ?? 12.192
  const first = level[0]
  if (first === undefined) return rounded(stickM / 2)
  const beyondM = first.runningM + 0.375 * stickM
  return rounded(first.runningM > 0.7 * stickM ? first.runningM / 2 : beyondM)
}

const rounded = (lengthM: number): number => Math.round(lengthM * 1000) / 1000
