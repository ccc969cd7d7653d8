import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { runChecks } from '../../src/checks/runner.ts'
import { deriveSite } from '../../src/derive/site.ts'
import { profileAt } from '../../src/derive/profile.ts'
import { readFile } from '../../src/scene/readFile.ts'
import { writeFile } from '../../src/scene/writeFile.ts'
import type { YardDocument } from '../../src/scene/document.ts'
import { examples, expected, type Expected } from '../helpers/makeExamples.ts'

const names = readdirSync('shared/examples').filter((name) => name.endsWith('.yard.json')).map((name) => name.slice(0, -'.yard.json'.length))
const textOf = (name: string): string => readFileSync(`shared/examples/${name}.yard.json`, 'utf8')
const documentOf = (name: string): YardDocument => {
  const result = readFile(textOf(name))
  if (!result.ok) throw new Error(`${name}: ${result.issues[0]?.path} ${result.issues[0]?.message.en}`)
  return result.document
}
const expectedOf = (name: string): Expected => JSON.parse(readFileSync(`shared/examples/${name}.expected.json`, 'utf8')) as Expected

describe('the examples', () => {
  it('are those of the script, each with what it must raise beside it', () => {
    expect(names.toSorted()).toEqual(Object.keys(examples).toSorted())
    for (const name of names) {
      expect(existsSync(`shared/examples/${name}.expected.json`), name).toBe(true)
      expect(expectedOf(name)).toEqual(expected[name])
    }
  })
  it.each(names)('%s is what the commands of the app make today', (name) => expect(textOf(name)).toBe(writeFile(examples[name]!())))
  it.each(names)('%s reads and writes back unchanged', (name) => expect(writeFile(documentOf(name))).toBe(textOf(name)))
  it.each(names)('%s raises what it must', (name) => {
    const document = documentOf(name)
    const site = deriveSite(document)
    const calls = (id: string): string[] => {
      const item = site.placed.get(id)
      return item === undefined ? [] : [item.label, 'name' in item.record ? item.record.name : '']
    }
    const { findings, counts } = runChecks(site)
    const raised = findings.map((one) => ({ check: one.checkId, level: one.level, items: one.itemIds.flatMap(calls) }))
    const { mustRaise, isGood } = expectedOf(name)
    for (const want of mustRaise) expect(raised.filter(({ check, level, items }) => check === want.check && level === want.level && want.items.every((label) => items.includes(label))), `${want.level} ${want.check} ${want.items.join(', ')}`).not.toEqual([])
    if (isGood) expect(findings.filter(({ level, isUnknown }) => level === 'STOP' || level === 'FIX' || isUnknown).map(({ key }) => key)).toEqual([])
    else expect(counts.STOP + counts.FIX).toBeGreaterThan(1)
  })
  it.each(names)('%s has a bent pipe that settles in every phase', (name) => {
    const site = deriveSite(documentOf(name))
    for (const phase of ['setUp', 'load', 'fuse', 'pull', 'rest'] as const) for (const joint of [1, 3, 99]) expect(profileAt(site, { phase, joint }).status, `${phase} ${joint}`).toBe('ok')
  })
})
