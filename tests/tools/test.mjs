// `npm test`: installs what tests need, runs everything, ends with `N passed, N failed`.
// Steps that are one check each (lint, types, names, build, size) count as one; the two runners add their own counts.
import { spawnSync } from 'node:child_process'
import { mkdirSync, readFileSync, rmSync } from 'node:fs'
import { findChromium } from './chromium.mjs'
import { ensureInstalled, root } from './install.mjs'

ensureInstalled()
let passed = 0
let failed = 0
const started = Date.now()
const bin = (name, script) => [process.execPath, [`${root}node_modules/${name}/${script}`]]

const step = (title, [command, args], extra = []) => {
  const from = Date.now()
  const { status } = spawnSync(command, [...args, ...extra], { cwd: root, stdio: 'inherit', env: process.env })
  const isGood = status === 0
  console.log(`${isGood ? 'ok  ' : 'FAIL'} ${title} (${((Date.now() - from) / 1000).toFixed(1)} s)`)
  return isGood
}
const one = (...args) => {
  if (step(...args)) passed++
  else failed++
}

mkdirSync(`${root}.cache`, { recursive: true })
for (const name of ['unit.json', 'e2e.json']) rmSync(`${root}.cache/${name}`, { force: true })

one('lint', ['npx', ['--no-install', 'oxlint']], ['--quiet'])
one('types', ['npx', ['--no-install', 'tsc']], ['-p', 'tsconfig.json'])
one('types of the pure layers', ['npx', ['--no-install', 'tsc']], ['-p', 'src/tsconfig.pure.json'])

const unitRan = step('unit tests', bin('vitest', 'vitest.mjs'), ['run', '--reporter=default', '--reporter=json', '--outputFile.json=.cache/unit.json'])
try {
  const report = JSON.parse(readFileSync(`${root}.cache/unit.json`, 'utf8'))
  passed += report.numPassedTests
  failed += report.numFailedTests
  // A file that does not load has no failed test of its own.
  const broken = report.testResults.filter((file) => file.status === 'failed' && file.assertionResults.every((test) => test.status !== 'failed')).length
  failed += broken
  if (!unitRan && report.numFailedTests + broken === 0) failed++
} catch {
  failed++
}

const isBuilt = step('build', bin('vite', 'bin/vite.js'), ['build', '--logLevel', 'warn'])
if (isBuilt) passed++
else failed++
if (isBuilt) one('size of the initial script', [process.execPath, [`${root}tests/tools/size.mjs`]])

const chromium = findChromium()
if (chromium === null || !isBuilt) {
  failed++
} else {
  process.env.CHROMIUM_PATH = chromium
  const e2eRan = step('browser tests', bin('@playwright/test', 'cli.js'), ['test'])
  try {
    const { stats } = JSON.parse(readFileSync(`${root}.cache/e2e.json`, 'utf8'))
    passed += stats.expected
    failed += stats.unexpected + stats.flaky
    if (!e2eRan && stats.unexpected + stats.flaky === 0) failed++
  } catch {
    failed++
  }
}

console.log(`in ${((Date.now() - started) / 1000).toFixed(0)} s`)
console.log(`${passed} passed, ${failed} failed`)
process.exit(failed === 0 ? 0 : 1)
