import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { checks } from '../../src/checks/registry.ts'
import { runChecks } from '../../src/checks/runner.ts'
import { ranges } from '../../src/checks/ranges/index.ts'
import { rangeOf } from '../../src/checks/ranges/range.ts'
import { deriveSite } from '../../src/derive/site.ts'
import { jobOf, type YardDocument } from '../../src/scene/document.ts'
import { readFile } from '../../src/scene/readFile.ts'

const examples = readdirSync('shared/examples').filter((name) => name.endsWith('.yard.json')).map((name) => {
  const read = readFile(readFileSync(`shared/examples/${name}`, 'utf8'))
  if (!read.ok) throw new Error(name)
  return { name, document: read.document }
})
const exampleNamed = (part: string): YardDocument => examples.find(({ name }) => name.includes(part))!.document
const withWall = (document: YardDocument, band: { low: number; likely: number; high: number } | undefined): YardDocument => {
  const job = jobOf(document)
  return { records: { ...document.records, [job.id]: { ...job, wallTemperatureC: { value: 30, basis: 'measured', ...(band === undefined ? {} : { band }) } } } }
}

describe('ranges of findings', () => {
  it('names checks that exist, each once', () => {
    const ids = ranges.map(({ checkId }) => checkId)
    expect(new Set(ids).size).toBe(ids.length)
    for (const id of ids) expect(checks.some((check) => check.id === id)).toBe(true)
  })

  it('keeps low, likely and high in order on every example, and has at least one band on each', () => {
    for (const { name, document } of examples) {
      const bands = runChecks(document).findings.flatMap((finding) => rangeOf(document, {}, finding, ranges) ?? [])
      expect(bands.length, name).toBeGreaterThan(0)
      for (const { low, likely, high } of bands) expect(low <= likely && likely <= high && low < high, name).toBe(true)
    }
  })

  it('holds the pull the plan works with: high friction and the modulus of the table lie within the band', () => {
    const document = exampleNamed('maple-fork-good')
    const pull = runChecks(document).findings.find(({ key }) => key === 'puller-pull@pipe')!
    const band = rangeOf(document, {}, pull, ranges)!
    expect(band.low).toBeLessThan(pull.measured!.value!)
    expect(band.high).toBeGreaterThanOrEqual(pull.measured!.value! * (1 - 1e-9))
    expect(band.likely).toBeLessThan(pull.measured!.value!)
    expect(band.by).toContain('friction')
  })

  it('is wider where the wall temperature has a band of its own, and names it only then', () => {
    const bandOf = (document: YardDocument) => {
      const effort = runChecks(document).findings.find(({ checkId }) => checkId === 'face-gap')!
      return rangeOf(document, {}, effort, ranges)!
    }
    const plain = bandOf(withWall(exampleNamed('maple-fork-good'), undefined))
    const banded = bandOf(withWall(exampleNamed('maple-fork-good'), { low: 10, likely: 30, high: 55 }))
    expect(plain.by).toEqual(['modulus'])
    expect(banded.by).toEqual(['modulus', 'temperature'])
    expect(banded.high - banded.low).toBeGreaterThan(plain.high - plain.low)
    expect(banded.likely).toBeCloseTo(plain.likely, 12)
  })

  it('has none for a finding whose figure does not depend on them', () => {
    const document = exampleNamed('maple-fork-good')
    const others = runChecks(document).findings.filter(({ checkId }) => !ranges.some((one) => one.checkId === checkId))
    expect(others.length).toBeGreaterThan(0)
    for (const finding of others) expect(rangeOf(document, {}, finding, ranges)).toBeNull()
  })

  it('leaves the document alone and gives the same answer twice', () => {
    const document = exampleNamed('campo-arenal-first')
    const before = JSON.stringify(document)
    const { findings } = runChecks(deriveSite(document))
    const once = findings.map((finding) => rangeOf(document, {}, finding, ranges))
    expect(findings.map((finding) => rangeOf(document, {}, finding, ranges))).toEqual(once)
    expect(JSON.stringify(document)).toBe(before)
  })
})
