/** `npm run bench`: every bench, one after the other, each printing its own table. Nothing here is asserted. */
import { spawnSync } from 'node:child_process'
import { root } from '../tools/install.mjs'

const run = (command: string, args: readonly string[]): void => {
  const { status } = spawnSync(command, args, { cwd: root, stdio: 'inherit' })
  if (status !== 0) process.exitCode = status ?? 1
}
const tsx = `${root}node_modules/tsx/dist/cli.mjs`

console.log('# Contact beam')
run(process.execPath, [tsx, 'tests/bench/beam.bench.ts'])
console.log('\n# Run-through')
run(process.execPath, [tsx, 'tests/bench/runThrough.bench.ts'])
console.log('\n# Zones and people')
run(process.execPath, [tsx, 'tests/bench/zones.bench.ts'])
console.log('\n# Proposals')
run(process.execPath, [tsx, 'tests/bench/proposals.bench.ts'])
console.log('\n# Crew sheet')
run(process.execPath, [tsx, 'tests/bench/sheet.bench.ts'])
console.log('\n# Drag, pan and zoom in the built app, ms')
run(process.execPath, [`${root}node_modules/vite/bin/vite.js`, 'build', '--logLevel', 'error'])
run(process.execPath, [tsx, 'tests/bench/drag.bench.ts'])
console.log('\n# Scrubbing the run-through in the built app, ms')
run(process.execPath, [tsx, 'tests/bench/scrub.bench.ts'])
console.log('\n# Load with a processor 4 times slower, and memory over 10,000 presses of editing keys, in the built app')
run(process.execPath, [tsx, 'tests/bench/load.bench.ts'])
