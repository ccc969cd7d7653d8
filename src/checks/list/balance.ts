import type { SiteModel, SupportView } from '../../derive/types.ts'
import { sourceOf } from '../limits.ts'
import { atSupport, defineCheck, finding, q, say } from '../make.ts'
import { sideWord } from '../words.ts'

/** The one support of a stick on its side of the machine, or null where it lies on more or none. */
function loneSupport(site: SiteModel, side: 'infeed' | 'exit'): SupportView | null {
  const stickM = site.sticks.stickLengthM ?? 0
  const under = site.supports.filter((support) => support.side === side && support.levelM !== null && Math.abs(support.runningM) <= stickM)
  return under.length === 1 ? under[0]! : null
}

export const balance = defineCheck({
  id: 'balance',
  title: { en: 'Stick balanced on one stand', es: 'Tubo en equilibrio sobre un soporte' },
  cost: 'quick',
  run: (site, { limits, mechanics }) => {
    const stickM = site.sticks.stickLengthM
    if (stickM === null || mechanics.missing.length > 0) return []
    const limit = limits.limit('balanced')
    return (['infeed', 'exit'] as const).flatMap((side) => {
      const lone = loneSupport(site, side)
      if (lone === null) return []
      const offM = Math.abs(Math.abs(lone.runningM) - stickM / 2)
      const boundM = (limit.check ?? 0) * stickM
      const isBalanced = offM < boundM
      return [finding('balance', {
        about: side,
        level: isBalanced ? 'CHECK' : 'met',
        measured: q('length', offM),
        limit: q('length', boundM),
        bound: 'least',
        source: sourceOf(limit),
        phases: ['load'],
        where: atSupport(lone),
        items: [lone.itemId],
        what: isBalanced
          ? say('The {side} stick is balanced on {label} alone, its weight {off} from it: it can swing up.', 'El tubo de {side} queda en equilibrio sobre {label}, con su peso a {off}: puede levantarse.', { side: sideWord(side), label: lone.label, off: q('length', offM) })
          : say('The {side} stick lies on {label} and the jaws.', 'El tubo de {side} descansa en {label} y en las mordazas.', { side: sideWord(side), label: lone.label }),
        ...(isBalanced ? { move: say('Hold it until the jaws are closed, or add a stand.', 'Sujételo hasta cerrar las mordazas, o agregue un soporte.') } : {}),
      })]
    })
  },
})
