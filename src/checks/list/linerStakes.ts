import type { Finding } from '../finding.ts'
import { atRun, defineCheck, finding, houseRule, inRuns, listOf, nameOf, say } from '../make.ts'

const ID = 'liner-stakes'

export const linerStakes = defineCheck({
  id: ID,
  title: { en: 'Stakes and anchors on a liner', es: 'Estacas y anclas sobre geomembrana' },
  cost: 'quick',
  run: (site) => {
    const on = [...site.placed.values()].filter(({ kind, runningM }) => (kind === 'guide' || kind === 'anchor') && runningM !== null && site.surfaceAt(Math.max(0, runningM)) === 'liner')
    return inRuns(on.toSorted((a, b) => a.kind.localeCompare(b.kind) || a.runningM! - b.runningM!), (a, b) => a.kind === b.kind).map((group): Finding => {
      const [first] = group
      const common = { about: first!.kind, items: group.map(({ id }) => id), where: atRun(first!.runningM!, null, first!.offsetM ?? 0), source: houseRule }
      const values = { things: listOf(group.map(({ id }) => nameOf(site, id))) }
      return first!.kind === 'guide'
        ? finding(ID, { ...common, level: 'FIX', what: say('{things}: stakes go through the liner.', '{things}: las estacas perforan la geomembrana.', values), move: say('Hold the string by tethers from uphill, or by weights on a mat; no stakes through a liner.', 'Sujete la sarta con retenciones desde arriba, o con pesos sobre estera; sin estacas en la geomembrana.') })
        : finding(ID, { ...common, level: 'CHECK', what: say('{things}: the anchor stands on the liner.', '{things}: el ancla queda sobre la geomembrana.', values), move: say('Use a weight on a mat, or anchor beyond the edge of the liner.', 'Use un peso sobre estera, o ancle fuera de la geomembrana.') })
    })
  },
})
