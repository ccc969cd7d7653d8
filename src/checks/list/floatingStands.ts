import { atSupport, defineCheck, finding, listOf, mechanics as mechanicsSource, q, say } from '../make.ts'

/** Less than this nobody sees, and no stand is set that well. */
const FLOATS_FROM_M = 0.0005

export const floatingStands = defineCheck({
  id: 'floating-stands',
  title: { en: 'Stands that carry nothing', es: 'Soportes que no cargan' },
  cost: 'quick',
  run: (_site, { mechanics }) => {
    const last = mechanics.solvedJoints().at(-1)
    if (last === undefined) return []
    const all = [...last.infeed.closed.supports, ...last.exit.closed.supports]
    const floating = all.filter(({ reactionN, gapM, marginal }) => reactionN <= 0 && gapM > FLOATS_FROM_M && !marginal)
    const common = { source: mechanicsSource('jaws'), phases: ['fuse'] as const }
    if (floating.length === 0) return all.length === 0 ? [] : [finding('floating-stands', { ...common, level: 'met', what: say('The pipe touches every support under it.', 'El tubo toca cada soporte debajo de él.') })]
    const widest = floating.reduce((most, one) => (one.gapM > most.gapM ? one : most))
    return [finding('floating-stands', {
      ...common,
      level: 'NOTE',
      measured: q('shortLength', widest.gapM),
      where: atSupport(widest.view),
      items: [...new Set(floating.map(({ view }) => view.itemId))],
      what: floating.length === 1
        ? say('{labels} carries nothing at the last joint: the pipe passes {gap} above it.', '{labels} no carga nada en la última junta: el tubo pasa {gap} por encima.', { labels: listOf(floating.map(({ view }) => view.label)), gap: q('shortLength', widest.gapM) })
        : say('{labels} carry nothing at the last joint; the widest gap is {gap}, at {label}.', '{labels} no cargan nada en la última junta; el mayor claro es {gap}, en {label}.', { labels: listOf(floating.map(({ view }) => view.label)), gap: q('shortLength', widest.gapM), label: widest.view.label }),
      move: say('Leave it if the nose needs it, else raise it to the pipe.', 'Déjelo si la punta lo necesita; si no, súbalo hasta el tubo.'),
    })]
  },
})
