import { sourceOf } from '../limits.ts'
import { atSupport, defineCheck, finding, listOf, q, say } from '../make.ts'

export const groundGuessed = defineCheck({
  id: 'ground-guessed',
  title: { en: 'Ground measured under the supports', es: 'Terreno medido bajo los apoyos' },
  cost: 'quick',
  run: (site, { limits }) => {
    const limit = limits.limit('ground-reach')
    const guessed = site.supports.filter(({ groundGuessed: isGuessed }) => isGuessed)
    const common = { limit: q('length', limit.check), source: sourceOf(limit), phases: ['setUp'] as const }
    const [first] = guessed
    if (first === undefined) return site.supports.length === 0 ? [] : [finding('ground-guessed', { ...common, level: 'met', what: say('The ground is measured near every support.', 'El terreno está medido cerca de cada apoyo.') })]
    return [finding('ground-guessed', {
      ...common,
      level: 'CHECK',
      where: atSupport(first),
      items: [...new Set(guessed.map(({ itemId }) => itemId))],
      what: guessed.length === 1
        ? say('Ground guessed at {labels}: no level within {reach}.', 'Terreno supuesto en {labels}: ningún nivel a {reach}.', { labels: listOf(guessed.map(({ label }) => label)), reach: q('length', limit.check) })
        : say('Ground guessed at {labels}: no level within {reach} of them.', 'Terreno supuesto en {labels}: ningún nivel a {reach} de ellos.', { labels: listOf(guessed.map(({ label }) => label)), reach: q('length', limit.check) }),
      move: say('Take a ground level every {step} along the line.', 'Tome un nivel del terreno cada {step} a lo largo de la línea.', { step: q('length', limit.check) }),
    })]
  },
})
