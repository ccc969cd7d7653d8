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
    // A rack is one levelled frame, screwed to the jaw line as a whole: worth knowing, not a stand to be watched.
    const onlyRack = fine.every(({ view }) => view.kind === 'rack')
    if (fine.length === 0) {
      return [finding('set-out-tolerance', { ...common, level: 'met', items: [tightest.view.itemId], what: say('Set {label} to ± {tolerance}, the others no finer.', 'Nivele {label} a ± {tolerance}, los demás no más fino.', { label: tightest.view.label, tolerance: q('shortLength', tightest.toleranceM) }) })]
    }
    return [finding('set-out-tolerance', {
      ...common,
      level: onlyRack ? 'NOTE' : 'CHECK',
      items: [...new Set(fine.map(({ view }) => view.itemId))],
      what: say('Set {labels} to within ± {tolerance} of the planned height.', 'Nivele {labels} a ± {tolerance} de la altura planeada.', { labels: listOf(fine.map(({ view }) => view.label)), tolerance: q('shortLength', tightest.toleranceM) }),
      move: onlyRack
        ? say('Screw the beams to the jaw line with a straight stick clamped in.', 'Ajuste las vigas a la línea de mordazas con un tubo recto sujeto.')
        : say('Set from the jaws with a straight stick clamped in, and check again after the first joint.', 'Nivele desde las mordazas con un tubo recto sujeto, y revise después de la primera junta.'),
    })]
  },
})
