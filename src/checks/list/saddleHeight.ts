import { atSupport, defineCheck, finding, plate, q, say } from '../make.ts'
import type { SupportView } from '../../derive/types.ts'

/** Screw threads and rule heights are not finer than this. */
const SLACK_M = 0.0005

export const saddleHeight = defineCheck({
  id: 'saddle-height',
  title: { en: 'Saddle heights within the range of the stands', es: 'Alturas de apoyo dentro del rango de los soportes' },
  cost: 'quick',
  run: (site) => {
    const known = site.supports.filter(({ saddleM, lowestSaddleM, highestSaddleM }) => saddleM !== null && (lowestSaddleM !== null || highestSaddleM !== null))
    const outside = known.filter((support) => beyondM(support) !== 0)
    const source = plate('height range on the plate of the stand')
    if (outside.length === 0) {
      const [first] = known
      return first === undefined ? [] : [finding('saddle-height', { level: 'met', source, phases: ['setUp'], what: say('Every saddle height lies within its stand’s range.', 'Cada altura de apoyo está dentro del rango de su soporte.') })]
    }
    return outside.map((support) => {
      const { saddleM, label, itemId, lowestSaddleM, highestSaddleM } = support
      const isLow = beyondM(support) < 0
      const bound = isLow ? lowestSaddleM! : highestSaddleM!
      const values = { label, saddle: q('height', saddleM), bound: q('height', bound) }
      return finding('saddle-height', {
        about: support.key,
        level: 'FIX',
        measured: q('height', saddleM),
        limit: q('height', bound),
        bound: isLow ? 'least' : 'most',
        source,
        phases: ['setUp'],
        where: atSupport(support),
        items: [itemId],
        what: isLow
          ? say('{label} should stand {saddle} high; its stand goes no lower than {bound}.', '{label} debe quedar a {saddle}; su soporte no baja de {bound}.', values)
          : say('{label} should stand {saddle} high; its stand goes no higher than {bound}.', '{label} debe quedar a {saddle}; su soporte no sube de {bound}.', values),
        move: isLow ? say('Use a lower stand or a ground roller there, or dig it in.', 'Use un soporte más bajo o un rodillo de suelo, o húndalo.') : say('Use a higher stand, or pack it up on timber.', 'Use un soporte más alto o calce con madera.'),
        remedy: support.locked ? null : {
          command: 'setHeight',
          args: { ids: [itemId], height: { rule: 'aboveGround', saddleM: bound } },
          label: isLow ? say('Set {label} at its lowest, {bound}', 'Poner {label} en lo más bajo, {bound}', values) : say('Set {label} at its highest, {bound}', 'Poner {label} en lo más alto, {bound}', values),
        },
      })
    })
  },
})

/** How far the saddle lies outside the range: below it negative, above it positive, 0 within. */
export function beyondM({ saddleM, lowestSaddleM, highestSaddleM }: SupportView): number {
  if (saddleM === null) return 0
  if (lowestSaddleM !== null && saddleM < lowestSaddleM - SLACK_M) return saddleM - lowestSaddleM
  return highestSaddleM !== null && saddleM > highestSaddleM + SLACK_M ? saddleM - highestSaddleM : 0
}
