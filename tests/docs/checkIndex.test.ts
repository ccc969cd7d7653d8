import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { levelOrder, type Finding } from '../../src/checks/finding.ts'
import { checks } from '../../src/checks/registry.ts'
import { runChecks } from '../../src/checks/runner.ts'
import type { YardDocument } from '../../src/scene/document.ts'
import { readFile } from '../../src/scene/readFile.ts'
import { fusionYard } from '../helpers/fusionYard.ts'
import { randomLayout } from '../helpers/randomLayout.ts'
import { checkEntries, checkIndexMarkdown, checkIndexPath } from '../helpers/makeCheckIndex.ts'
import { seededRandom } from '../helpers/seededRandom.ts'

const entries = checkEntries()

const exampleOf = (name: string): YardDocument => {
  const read = readFile(readFileSync(`shared/examples/${name}`, 'utf8'))
  if (!read.ok) throw new Error(`${name} cannot be read`)
  return read.document
}
/** The examples, two lines of bare stands, and seeded layouts of every kind of gear in places that make no sense. */
const layouts: readonly YardDocument[] = [
  ...readdirSync('shared/examples').filter((name) => name.endsWith('.yard.json')).map(exampleOf),
  fusionYard(), fusionYard({ exits: [], infeed: 'none', job: { noseHold: 'free' } }),
  ...Array.from({ length: 25 }, (_, i) => randomLayout(seededRandom(300 + i))),
]
const findings: readonly Finding[] = layouts.flatMap((document) => runChecks(document).findings)
const rankOf = (level: Finding['level']): number => levelOrder.indexOf(level)

describe('docs/checks/README.md', () => {
  it('is what tests/helpers/makeCheckIndex.ts gives; run it where this fails', () => {
    expect(readFileSync(checkIndexPath, 'utf8')).toBe(checkIndexMarkdown(entries))
  })

  it('names every check once and links to a page that is there', () => {
    expect(entries.map(({ id }) => id)).toEqual(checks.map(({ id }) => id))
    expect(entries.filter(({ id }) => !existsSync(`docs/checks/${id}.md`))).toEqual([])
  })

  it('gives every check a level to raise and a class of source', () => {
    expect(entries.filter(({ worst, sources }) => worst === 'met' || sources.length === 0)).toEqual([])
  })

  it('is passed by no finding of any layout, neither in its level nor in its source', () => {
    const beyond = findings.filter((one) => {
      const entry = entries.find(({ id }) => id === one.checkId)
      return entry === undefined || rankOf(one.level) < rankOf(entry.worst) || !entry.sources.includes(one.source.class)
    })
    expect([...new Set(beyond.map(({ checkId, level, source }) => `${checkId} ${level} ${source.class}`))]).toEqual([])
  })

  it('does not promise what never comes: most worst levels are seen in these layouts', () => {
    const seen = entries.filter(({ id, worst }) => findings.some((one) => one.checkId === id && one.level === worst))
    // Public ways, overhead lines beside open roads and the like need a layout of their own; their tests raise them.
    expect(seen.length).toBeGreaterThanOrEqual(34)
  })
})
