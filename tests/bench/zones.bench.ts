/** All zones and people checks of a yard in its eight phases, by number of items: `npx tsx tests/bench/zones.bench.ts`. Nothing here is asserted. */
import { limitsOf } from '../../src/checks/limits.ts'
import { siteChecks } from '../../src/checks/siteChecks.ts'
import { createMechanics } from '../../src/derive/mechanics.ts'
import { deriveSite } from '../../src/derive/site.ts'
import { stringPullOf } from '../../src/derive/stringPull.ts'
import { zoneStagesOf } from '../../src/derive/zoneStages.ts'
import { zonesYard } from './zonesYard.ts'

/** Checks that judge people and ways by zones. */
const people = ['crew-in-zone', 'public-way', 'zone-inputs']
const peopleChecks = siteChecks.filter(({ id }) => people.includes(id))
const median = (values: readonly number[]): number => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!
const TIMES = 9
let smaller: { items: number; totalMs: number } | null = null

console.log('processor time beside wall time: a busy machine makes the wall time say nothing')
console.log('records  zones of 8 stages  people checks  together, ms (median of 9; site derived and pull solved before)')
for (const items of [125, 250, 500, 1000, 2000]) {
  const document = zonesYard(items)
  const [zoneMs, checkMs, cpuMs]: [number[], number[], number[]] = [[], [], []]
  let zoneCount = 0
  for (let i = 0; i < TIMES; i += 1) {
    const site = deriveSite(document)
    stringPullOf(site)
    const limits = limitsOf(document)
    const tools = { limits, mechanics: createMechanics(site, limits), owned: null }
    const before = process.cpuUsage()
    const start = performance.now()
    zoneCount = zoneStagesOf(site).reduce((sum, { zones }) => sum + zones.length, 0)
    const middle = performance.now()
    for (const check of peopleChecks) check.run(site, tools)
    zoneMs.push(middle - start)
    checkMs.push(performance.now() - middle)
    const used = process.cpuUsage(before)
    cpuMs.push((used.user + used.system) / 1000)
  }
  const [zones, checks] = [median(zoneMs), median(checkMs)]
  const growth = smaller === null ? '' : `  × ${((zones + checks) / smaller.totalMs).toFixed(2)} for × ${(items / smaller.items).toFixed(0)} records`
  console.log(`${String(items).padStart(7)}  ${zones.toFixed(1).padStart(17)}  ${checks.toFixed(1).padStart(13)}  ${(zones + checks).toFixed(1).padStart(8)}  least ${Math.min(...zoneMs.map((ms, i) => ms + checkMs[i]!)).toFixed(1)}, processor ${median(cpuMs).toFixed(1)} (${zoneCount} zones)${growth}`)
  smaller = { items, totalMs: zones + checks }
}
