import { limitParam } from '../../engine/limits.ts'
import { sourceOf } from '../limits.ts'
import { atSupport, boundFor, defineCheck, finding, levelFor, q, say } from '../make.ts'

export const offsetChange = defineCheck({
  id: 'offset-change',
  title: { en: 'Change of offset when a stand sinks', es: 'Cambio de desalineación si un soporte se hunde' },
  cost: 'slow',
  run: (site, { limits, mechanics }) => {
    const limit = limits.limit('offset-change')
    const wallM = site.pipe.properties?.minimumWallM
    const worst = mechanics.sinkChanges().toSorted((a, b) => b.changeM - a.changeM)[0]
    if (worst === undefined || wallM === undefined) return []
    const allowanceM = limitParam(limit, 'allowanceOfWall') * wallM
    const level = levelFor(limit, worst.changeM / allowanceM)
    const bound = boundFor(limit, level)
    const offsetM = Math.max(...mechanics.solvedJoints().map((one) => Math.abs(one.offsetM)))
    const values = { label: worst.view.label, sink: q('shortLength', limitParam(limit, 'sinkM')), change: q('shortLength', worst.changeM), allowance: q('shortLength', allowanceM), offset: q('shortLength', offsetM) }
    return [finding('offset-change', {
      level,
      measured: q('shortLength', worst.changeM),
      limit: q('shortLength', bound === null ? null : bound * allowanceM),
      source: sourceOf(limit),
      phases: ['fuse'],
      where: atSupport(worst.view),
      items: [worst.view.itemId],
      what: level === 'met'
        ? say('A stand that sinks {sink} hardly moves the joint.', 'Un soporte que se hunde {sink} casi no mueve la junta.', values)
        : say('If {label} sinks {sink} after facing, the ends shift {change} at the joint; {allowance} is allowed in all.', 'Si {label} se hunde {sink} después de refrentar, las puntas se corren {change} en la junta; se permite {allowance} en total.', values),
      ...(level === 'met' ? {} : { move: say('Put {label} on a firm pad, or farther from the jaws.', 'Ponga {label} sobre base firme o más lejos de las mordazas.', values) }),
    })]
  },
})
