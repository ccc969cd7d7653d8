/** Crew sheet of a yard of 1,000 items as PDF: layout and writing, without the checks, which have run by then. Prints; asserts nothing. */
import { readFileSync } from 'node:fs'
import { runChecks } from '../../src/checks/runner.ts'
import { limitsOf } from '../../src/checks/limits.ts'
import { deriveSite } from '../../src/derive/site.ts'
import { runThroughOf } from '../../src/derive/stages/runThrough.ts'
import { facePartFile } from '../../src/headless/faceFiles.ts'
import { crewSheet } from '../../src/sheet/crew/crewSheet.ts'
import { pdfOf } from '../../src/write/pdf.ts'
import { longYard } from '../helpers/longYard.ts'
import { manyItems } from './manyItems.ts'

/** Processor time: the machine may be busy with other things. */
const cpuMs = (): number => {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1000
}

for (const [name, document] of [['1,000 items', manyItems(1000)], ['5,000 ft, 250 rollers, 100 joints', longYard()]] as const) {
  const site = deriveSite(document)
  const run = runChecks(site)
  const times: Record<string, number>[] = []
  for (let i = 0; i < 3; i++) {
    const started = cpuMs()
    const fresh = deriveSite(document)
    const rehearsal = runThroughOf(fresh, { limits: limitsOf(document) })
    const rehearsed = cpuMs()
    const { pages } = crewSheet({ site: fresh, run, isSettled: true, rehearsal, language: 'en', system: 'feetInches', paper: 'letter', orientation: 'landscape', whenIso: '2026-01-05T10:00:00.000Z', when: '2026-01-05' })
    const laidOut = cpuMs()
    const { length } = await pdfOf(pages, { title: name, language: 'en-US', whenIso: '2026-01-05T10:00:00.000Z', loadFace: (weight, part) => Promise.resolve(new Uint8Array(readFileSync(facePartFile(weight, part)))) })
    const done = cpuMs()
    times.push({ pages: pages.length, kB: Math.round(length / 1000), 'run-through ms': Math.round(rehearsed - started), 'layout ms': Math.round(laidOut - rehearsed), 'PDF ms': Math.round(done - laidOut), 'all ms': Math.round(done - started) })
  }
  console.log(name)
  console.table(times)
}
