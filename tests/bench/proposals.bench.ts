/** Time of 'Place the stands' and 'Place the rollers' on the examples, best of five, with what was spent. Printed, never asserted. */
import { propose } from '../../src/checks/proposals/propose.ts'
import { runChecks } from '../../src/checks/runner.ts'
import { deriveSite } from '../../src/derive/site.ts'
import { examples } from '../helpers/makeExamples.ts'

const best = (work: () => void): number => Math.min(...Array.from({ length: 5 }, () => {
  const from = performance.now()
  work()
  return performance.now() - from
}))

console.log('yard, kind: ms · ratio to one run of all checks · solves · check runs · answer')
for (const [name, make] of Object.entries(examples)) {
  const document = make()
  const checksMs = best(() => { runChecks(deriveSite({ records: { ...document.records } })) })
  for (const kind of ['stands', 'rollers'] as const) {
    const result = propose({ kind, document, owned: null })
    const ms = best(() => { propose({ kind, document, owned: null }) })
    console.log(`${name}, ${kind}: ${ms.toFixed(0)} · ${(ms / checksMs).toFixed(1)} · ${result.solveCount} · ${result.runCount} · ${result.status}${result.status === 'found' ? ` ${result.proposed.stands} + ${result.proposed.rollers}` : ''}`)
  }
}
