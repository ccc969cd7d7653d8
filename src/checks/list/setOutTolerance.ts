import { sourceOf } from '../limits.ts'
import { atSupport, defineCheck, finding, levelFor, listOf, q, say } from '../make.ts'

export const setOutTolerance = defineCheck({
  id: 'set-out-tolerance',
  title: { en: 'How exactly the stands have to be set', es: 'Con qué exactitud se nivelan los soportes' },
  cost: 'slow',
  run: (_site, { limits, mechanics }) => {
    const limit = limits.limit('set-out-tolerance')
    const all = mechanics.tolerances().toSorted((a, b) => a.toleranceM - b.toleranceM)
    const [tightest] = all
    if (tightest === undefined) return []
    const fine = all.filter(({ toleranceM }) => levelFor(limit, toleranceM) !== 'met')
    const common = { measured: q('shortLength', tightest.toleranceM), limit: q('shortLength', limit.check), bound: 'least' as const, source: sourceOf(limit), phases: ['setUp', 'fuse'] as const, where: atSupport(tightest.view) }
    if (fine.length === 0) {
      return [finding('set-out-tolerance', { ...common, level: 'met', items: [tightest.view.itemId], what: say('Set {label} to ± {tolerance}, the others no finer.', 'Nivele {label} a ± {tolerance}, los demás no más fino.', { label: tightest.view.label, tolerance: q('shortLength', tightest.toleranceM) }) })]
    }
    return [finding('set-out-tolerance', {
      ...common,
      level: 'CHECK',
      items: [...new Set(fine.map(({ view }) => view.itemId))],
      what: say('{labels} must stand within ± {tolerance} of the planned height.', '{labels} debe quedar a ± {tolerance} de la altura planeada.', { labels: listOf(fine.map(({ view }) => view.label)), tolerance: q('shortLength', tightest.toleranceM) }),
      move: say('Set them from the jaws with a straight stick clamped in, and check again after the first joint.', 'Nivélelos desde las mordazas con un tubo recto sujeto, y revise después de la primera junta.'),
    })]
  },
})
