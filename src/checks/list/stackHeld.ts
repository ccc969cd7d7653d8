import { stackRows } from '../../engine/pipe/stackRows.ts'
import type { StackRecord } from '../../scene/kinds/stack.ts'
import { atPoint, defineCheck, finding, nameOf, q, say } from '../make.ts'

const ID = 'stack-held'

export const stackHeld = defineCheck({
  id: ID,
  title: { en: 'Pipe stacks: rows', es: 'Pilas de tubos: hileras' },
  cost: 'quick',
  run: (site) => {
    const most = stackRows({ odM: site.pipe.odM, dr: site.job.pipe?.dr ?? null })
    if (most.status !== 'ok') return []
    return [...site.placed.values()].flatMap((item) => {
      if (item.kind !== 'stack') return []
      const rows = (item.record as StackRecord).figures.rowCount.value
      if (rows === null || rows <= most.value) return []
      return [finding(ID, {
        level: 'FIX', about: item.id, items: [item.id], where: atPoint(item.xM, item.yM), measured: q('count', rows), limit: q('count', most.value), source: { class: 'published', cite: 'PPI Handbook of Polyethylene Pipe, 2nd edition, chapter 2', fromMemory: true },
        what: say('{stack} lies {rows} rows high; loose pipe of this size and wall lies {most} rows high at most.', '{stack} tiene {rows} hileras; tubo suelto de este tamaño y pared va a lo más en {most}.', { stack: nameOf(site, item.id), rows, most: most.value }),
        move: say('Take rows off, or start a second stack.', 'Quite hileras, o empiece otra pila.'),
      })]
    })
  },
})
