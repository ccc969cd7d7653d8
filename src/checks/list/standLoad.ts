import type { SupportLoad } from '../../derive/mechanics.ts'
import type { Limit } from '../../engine/limits.ts'
import type { Finding, Level } from '../finding.ts'
import { sourceOf } from '../limits.ts'
import { atSupport, boundFor, defineCheck, finding, inRuns, levelFor, q, say, shareOfPlate, stretchOf } from '../make.ts'
import { phaseWords } from '../words.ts'

interface Share extends SupportLoad {
  share: number
  level: Level
}

export const standLoad = defineCheck({
  id: 'stand-load',
  title: { en: 'Load on stands and rollers', es: 'Carga en soportes y rodillos' },
  cost: 'slow',
  run: (site, { limits, mechanics }) => {
    const limit = limits.limit('stand-load')
    const loads = mechanics.loads()
    const shares = site.supports.flatMap((view): Share[] => {
      const load = loads.get(view.key)
      if (load === undefined || view.ratedLoadN === null || view.kind === 'rack') return []
      const share = shareOfPlate(load.loadN, view.ratedLoadN)
      return [{ ...load, share, level: levelFor(limit, share) }]
    })
    if (shares.length === 0) return []
    const runs = inRuns(shares, (a, b) => a.level === b.level && a.view.kind === b.view.kind && a.view.ratedLoadN === b.view.ratedLoadN)
    const over = runs.filter(([first]) => first!.level !== 'met')
    return over.length === 0 ? [withinPlate(shares, limit)] : over.map((group) => overPlate(group, limit))
  },
})

const worstOf = (group: readonly Share[]): Share => group.reduce((most, one) => (one.share > most.share ? one : most))
const phaseOf = ({ when }: Share): 'load' | 'fuse' | 'pull' => (when === 'feed' ? 'load' : when)
const boundN = (limit: Limit, one: Share): number | null => {
  const bound = boundFor(limit, one.level)
  return bound === null ? null : bound * one.view.ratedLoadN!
}

function withinPlate(shares: readonly Share[], limit: Limit): Finding {
  const worst = worstOf(shares)
  return finding('stand-load', {
    about: 'all', level: 'met', measured: q('force', worst.loadN), limit: q('force', boundN(limit, worst)), source: sourceOf(limit), phases: [phaseOf(worst)], where: atSupport(worst.view), items: [worst.view.itemId],
    what: say('No stand carries more than half its plate; {label} carries most, {load}.', 'Ningún soporte lleva más de la mitad de su placa; {label} lleva más, {load}.', { label: worst.view.label, load: q('force', worst.loadN) }),
  })
}

function overPlate(group: readonly Share[], limit: Limit): Finding {
  const worst = worstOf(group)
  const values = { labels: stretchOf(group.map(({ view }) => view)), label: worst.view.label, load: q('force', worst.loadN), rated: q('force', worst.view.ratedLoadN), when: phaseWords[phaseOf(worst)], joint: worst.joint }
  return finding('stand-load', {
    about: group[0]!.view.key,
    level: worst.level,
    measured: q('force', worst.loadN),
    limit: q('force', boundN(limit, worst)),
    source: worst.level === 'FIX' ? { class: 'plate', cite: 'rated load on the plate of the stand' } : sourceOf(limit),
    phases: [phaseOf(worst)],
    where: atSupport(worst.view),
    items: group.map(({ view }) => view.itemId),
    what: group.length === 1
      ? say('{label} carries {load} at {when} {joint}; its plate says {rated}.', '{label} lleva {load} en {when} {joint}; su placa dice {rated}.', values)
      : say('{labels} carry up to {load} ({label}, {when} {joint}); their plates say {rated}.', '{labels} llevan hasta {load} ({label}, {when} {joint}); sus placas dicen {rated}.', values),
    move: worst.level === 'FIX'
      ? group.length === 1 ? say('Use a stand rated for it, or share the load with one more.', 'Use un soporte con esa capacidad o reparta la carga con otro.') : say('Use stands rated for it, or set them closer.', 'Use soportes con esa capacidad o póngalos más juntos.')
      : group.length === 1 ? say('See that it stands on firm, level ground.', 'Vea que esté en suelo firme y a nivel.') : say('See that they stand on firm, level ground.', 'Vea que estén en suelo firme y a nivel.'),
  })
}
