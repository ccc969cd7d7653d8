import { readFileSync } from 'node:fs'
import { limitsOf } from '../../../src/checks/limits.ts'
import { runChecks } from '../../../src/checks/runner.ts'
import { deriveSite } from '../../../src/derive/site.ts'
import { runThroughOf } from '../../../src/derive/stages/runThrough.ts'
import type { YardDocument } from '../../../src/scene/document.ts'
import { readFile } from '../../../src/scene/readFile.ts'
import type { CrewSheetContent } from '../../../src/sheet/crew/types.ts'

export const exampleDocument = (name: string): YardDocument => {
  const read = readFile(readFileSync(`shared/examples/${name}.yard.json`, 'utf8'))
  if (!read.ok) throw new Error(`example ${name} does not open`)
  return read.document
}

/** A crew sheet's content of a document, checked and rehearsed; printed on a fixed day. */
export const contentOf = (document: YardDocument, over: Partial<CrewSheetContent> = {}): CrewSheetContent => {
  const site = deriveSite(document)
  return {
    site, run: runChecks(site), isSettled: true, rehearsal: runThroughOf(site, { limits: limitsOf(document) }),
    language: 'en', system: 'feetInches', paper: 'letter', orientation: 'landscape', whenIso: '2026-01-05T10:00:00.000Z', when: '2026-01-05', ...over,
  }
}
