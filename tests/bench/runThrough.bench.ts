/**
 * Speed of the run-through: a job of eight sticks and one of 101 sticks on 250 rollers, cold, after one roller has moved, and every
 * stage solved by itself. Run: npx tsx tests/bench/runThrough.bench.ts [--json FILE]. Prints medians; asserts nothing.
 */
import { readFileSync, writeFileSync } from 'node:fs'
import { deriveSite } from '../../src/derive/site.ts'
import { createRunMemory } from '../../src/derive/stages/memory.ts'
import { runThroughOf, runThroughSteps } from '../../src/derive/stages/runThrough.ts'
import { stagesOf } from '../../src/derive/stages/stagesOf.ts'
import type { YardDocument } from '../../src/scene/document.ts'
import { readFile } from '../../src/scene/readFile.ts'
import { root } from '../tools/install.mjs'
import { longYard } from '../helpers/longYard.ts'

const REPEATS = 9
const median = (values: readonly number[]): number => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!
const timed = (work: () => void): number => {
  const from = performance.now()
  work()
  return performance.now() - from
}
const medianOf = (work: () => void, repeats = REPEATS): number => median(Array.from({ length: repeats }, () => timed(work)))

function eightSticks(): YardDocument {
  const outcome = readFile(readFileSync(`${root}shared/examples/maple-fork-good.yard.json`, 'utf8'))
  if (!outcome.ok) throw new Error('the example does not read')
  return outcome.document
}

/** The document with its middle roller half a metre on. */
function withMovedRoller(document: YardDocument): YardDocument {
  const rollers = Object.values(document.records).filter((record) => record.kind === 'roller')
  const roller = rollers[Math.floor(rollers.length / 2)]!
  const place = roller.place.at === 'onRun' ? { ...roller.place, runningM: roller.place.runningM + 0.5 } : roller.place
  return { records: { ...document.records, [roller.id]: { ...roller, place } } }
}

/** Each stage on a site of its own with an empty memory: what it would cost to share nothing. */
function eachStageCold(document: YardDocument): number {
  let spentMs = 0
  for (const { index } of stagesOf(deriveSite(document))) {
    const site = deriveSite(document)
    spentMs += timed(() => void runThroughSteps(site, { from: index }).next())
  }
  return spentMs
}

function benchOf(name: string, document: YardDocument) {
  runThroughOf(deriveSite(document))
  const memory = createRunMemory()
  const whole = runThroughOf(deriveSite(document), { memory })
  const moved = withMovedRoller(document)
  const again = runThroughOf(deriveSite(moved), { memory })
  const firstMs = medianOf(() => void runThroughSteps(deriveSite(document)).next())
  const wholeMs = medianOf(() => void runThroughOf(deriveSite(document)))
  let isMoved = true
  const movedMs = medianOf(() => {
    isMoved = !isMoved
    runThroughOf(deriveSite(isMoved ? moved : document), { memory })
  })
  const coldMs = median(Array.from({ length: 3 }, () => eachStageCold(document)))
  return {
    job: name, stages: whole.counts.stages, solves: whole.counts.solves, 'solves after a move': again.counts.solves,
    'first stage ms': firstMs, 'whole ms': wholeMs, 'after a move ms': movedMs,
    'stages per s': (1000 * whole.counts.stages) / wholeMs, 'every stage cold ms': coldMs, 'cold / whole': coldMs / wholeMs, 'cold / after a move': coldMs / movedMs,
  }
}

const rows = [benchOf('8 sticks, 28 supports', eightSticks()), benchOf('101 sticks, 250 rollers', longYard())]
for (const row of rows) console.log(Object.entries(row).map(([name, value]) => `${name.padEnd(22)}${typeof value === 'number' ? value.toFixed(value < 10 ? 2 : 0).padStart(10) : value}`).join('\n'), '\n')
const at = process.argv.indexOf('--json')
if (at > 0) writeFileSync(process.argv[at + 1]!, JSON.stringify(rows, null, 1))
