/** All zones and people checks of a yard in its eight phases, by number of items: `npx tsx tests/bench/zones.bench.ts`. Nothing here is asserted. */
import { limitsOf } from '../../src/checks/limits.ts'
import { siteChecks } from '../../src/checks/siteChecks.ts'
import { createMechanics } from '../../src/derive/mechanics.ts'
import { deriveSite } from '../../src/derive/site.ts'
import { stringPullOf } from '../../src/derive/stringPull.ts'
import { zoneStagesOf } from '../../src/derive/zoneStages.ts'
import { zonesYard } from './zonesYard.ts'

/** Checks that judge people and ways, in their order in the registry: whoever asks first pays for what others share. */
const people = ['crew-in-zone', 'crew-spots', 'line-of-sight', 'way-out', 'hand-signals', 'extinguisher-reach', 'burn-kit-reach', 'fuel-hot-plate', 'generator-place', 'emergency-lane-clear', 'lane-taper', 'zone-off-site', 'no-ignition', 'public-way', 'zone-inputs']
const peopleChecks = siteChecks.filter(({ id }) => people.includes(id))
const missing = people.filter((id) => !siteChecks.some((check) => check.id === id))
if (missing.length > 0) throw new Error(`no check is called ${missing.join(', ')}`)
const median = (values: readonly number[]): number => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!
const TIMES = 9
const sizes = [125, 250, 500, 1000, 2000]
const rows = new Map<string, number[]>()
const cpus: number[] = []
const note = (into: Map<string, number[]>, name: string, ms: number): void => { into.set(name, [...(into.get(name) ?? []), ms]) }

for (const items of sizes) {
  const document = zonesYard(items)
  const times = new Map<string, number[]>()
  for (let i = 0; i < TIMES; i += 1) {
    const site = deriveSite(document)
    stringPullOf(site)
    const limits = limitsOf(document)
    const tools = { limits, mechanics: createMechanics(site, limits), owned: null }
    const before = process.cpuUsage()
    const start = performance.now()
    let from = start
    const lap = (name: string): void => {
      const now = performance.now()
      note(times, name, now - from)
      from = now
    }
    zoneStagesOf(site)
    lap('zones of 8 stages')
    for (const check of peopleChecks) {
      check.run(site, tools)
      lap(check.id)
    }
    note(times, 'together', from - start)
    const used = process.cpuUsage(before)
    note(times, 'processor time', (used.user + used.system) / 1000)
  }
  for (const [name, ms] of times) note(rows, name, median(ms))
  cpus.push(Math.min(...(times.get('together') ?? [])))
}

console.log(`ms, median of ${TIMES} (site derived and pull solved before); processor time beside wall time: a busy machine makes the wall time say nothing`)
console.log(`${'records'.padEnd(22)}${sizes.map((items) => String(items).padStart(8)).join('')}   growth for × ${sizes.at(-1)! / sizes.at(-2)!} records`)
for (const [name, ms] of rows) console.log(`${name.padEnd(22)}${ms.map((one) => one.toFixed(1).padStart(8)).join('')}   × ${(ms.at(-1)! / Math.max(0.01, ms.at(-2)!)).toFixed(2)}`)
console.log(`${'least together'.padEnd(22)}${cpus.map((one) => one.toFixed(1).padStart(8)).join('')}`)
