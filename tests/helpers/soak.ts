/**
 * `npm run soak -- KIND [--seed N] [--count N]`: the long seeded runs of which `npm test` holds slices.
 * Layouts also take `--workers N` (default 2) and `--log FILE`, with which a run broken off goes on where it was.
 */
import { runBeamSoak } from './beamSoak.ts'
import { runFileSoak } from './fileSoak.ts'
import { runGeometrySoak } from './geometrySoak.ts'
import { runKillSoak } from './killSoak.ts'
import { runLayoutSoak } from './layoutSoak.ts'
import { runLinkSoak } from './linkSoak.ts'
import { soakInSlices } from './soakInSlices.ts'

const kinds: Record<string, { count: number; run: (options: { seed: number; count: number }) => unknown }> = {
  beam: { count: 1000, run: runBeamSoak },
  geometry: { count: 1000, run: runGeometrySoak },
  layouts: { count: 100_000, run: runLayoutSoak },
  files: { count: 10_000, run: runFileSoak },
  links: { count: 10_000, run: runLinkSoak },
  kills: { count: 200, run: runKillSoak },
}

const [kind, ...rest] = process.argv.slice(2)
const numberAfter = (name: string, otherwise: number): number => {
  const at = rest.indexOf(name)
  const value = at < 0 ? otherwise : Number(rest[at + 1])
  if (!Number.isInteger(value) || value < 0) throw new RangeError(`${name} takes a whole number`)
  return value
}

const chosen = kind === undefined ? undefined : kinds[kind]
if (chosen === undefined) {
  console.error(`soak takes one of: ${Object.keys(kinds).join(', ')}`)
  process.exit(2)
}
const options = { seed: numberAfter('--seed', 1), count: numberAfter('--count', chosen.count) }
const isSlice = rest.includes('--json')
const from = performance.now()
if (kind === 'layouts' && !isSlice) {
  const at = rest.indexOf('--log')
  const { failureCount } = await soakInSlices({ ...options, workers: numberAfter('--workers', 2), log: at < 0 ? null : (rest[at + 1] ?? null) })
  if (failureCount > 0) process.exitCode = 1
} else {
  console.log(JSON.stringify(await chosen.run(options), null, isSlice ? 0 : 2))
}
if (!isSlice) console.log(`${kind} seed ${options.seed} count ${options.count}: ${((performance.now() - from) / 1000).toFixed(1)} s`)
