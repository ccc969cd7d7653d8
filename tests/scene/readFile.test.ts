import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { FILE_VERSION, layoutOf, recordKinds } from '../../src/scene/document.ts'
import { documentIssues } from '../../src/scene/references.ts'
import { asCopy, readFile, readForm } from '../../src/scene/readFile.ts'
import { fileFormOf, writeFile } from '../../src/scene/writeFile.ts'
import { item, onRun, yard } from '../helpers/documents.ts'

const folder = 'shared/formats'
const frozen = readdirSync(folder, { recursive: true, encoding: 'utf8' })
const ending = (end: string): string[] => frozen.filter((name) => name.endsWith(end)).map((name) => `${folder}/${name}`)
const text = (path: string): string => readFileSync(path, 'utf8')

describe('frozen files of every version', () => {
  it.each(ending('.yard.json'))('%s opens, holds together, and is written as the version of today', (path) => {
    const result = readFile(text(path))
    expect(result.ok ? [] : result.issues).toEqual([])
    if (!result.ok) return
    expect(documentIssues(result.document)).toEqual([])
    const again = readFile(writeFile(result.document))
    expect(again.ok && again.document).toEqual(result.document)
  })
  it("of today's version are written again to the letter", () => {
    const today = ending('.yard.json').filter((name) => name.includes(`v${String(FILE_VERSION).padStart(4, '0')}`))
    expect(today.length).toBeGreaterThan(2)
    for (const path of today) {
      const result = readFile(text(path))
      expect(result.ok && writeFile(result.document)).toBe(text(path))
    }
  })
  it('of version 1 open as what they are in version 2', () => {
    for (const path of ending('.yard.json').filter((name) => name.includes('v0001'))) {
      const [old, today] = [readFile(text(path)), readFile(text(path.replace('v0001', 'v0002')))]
      expect(old.ok && old.notes.map(({ en }) => en)).toEqual(['Brought up from file version 1 to 2.'])
      expect(old.ok && old.document).toEqual(today.ok && today.document)
    }
  })
  it('between them hold every kind of record', () => {
    const seen = new Set(ending('.yard.json').flatMap((path) => {
      const result = readFile(text(path))
      return result.ok ? Object.values(result.document.records).map(({ kind }) => kind as string) : []
    }))
    expect(recordKinds.filter((kind) => !seen.has(kind))).toEqual([])
  })
  it('with two set-ups, runs and strings keep both', () => {
    const result = readFile(text(`${folder}/v0001/several.yard.json`))
    const kinds = result.ok ? Object.values(result.document.records).map(({ kind }) => kind) : []
    expect(['setUp', 'run', 'string'].map((kind) => kinds.filter((one) => one === kind).length)).toEqual([2, 2, 2])
  })
})

describe('broken files', () => {
  it.each(ending('.broken.json'))('%s is refused at the path its sidecar names', (path) => {
    const expected = JSON.parse(text(path.replace('.broken.json', '.expected.json'))) as { path: string; dropped: string[] | null }
    const result = readFile(text(path))
    expect(result.ok).toBe(false)
    if (result.ok) return
    expect(result.issues[0]?.path).toBe(expected.path)
    expect(result.salvage?.dropped.map((one) => one.path) ?? null).toEqual(expected.dropped)
    for (const { message } of result.issues) expect(message.en !== '' && message.es !== '').toBe(true)
  })
  it.each(ending('.broken.json'))('%s, where it can be opened without some items, gives a sound copy under the new id', (path) => {
    const result = readFile(text(path))
    if (result.ok || result.salvage === undefined) return expect(result.ok).toBe(false)
    const copy = result.salvage.openAs('layout:copy')
    expect(documentIssues(copy)).toEqual([])
    expect(layoutOf(copy).layoutId).toBe('layout:copy')
  })
})

describe('reading', () => {
  it('says what a value is and what it must be', () => {
    const form = JSON.parse(writeFile(yard(item('stand', 'stand:1', onRun(5))))) as { items: { roller: string; figures: { ratedLoadN: { value: unknown } } }[] }
    form.items[0]!.roller = 'oval'
    form.items[0]!.figures.ratedLoadN.value = '900 lb'
    const result = readForm(form)
    expect(result.ok ? [] : result.issues.map(({ path, message }) => `${path} ${message.en}`)).toEqual([
      'items[0].roller "oval" is not known here; must be one of: flat, V, cradle',
      'items[0].figures.ratedLoadN.value must be a number, is "900 lb"',
    ])
  })
  it('refuses by size before looking inside', () => {
    const result = readFile('{'.repeat(50), { limits: { chars: 40 } })
    expect(result.ok ? '' : result.issues[0]?.message.en).toBe('the file has 50 characters; more than 40 are not read')
  })
  it('refuses by depth before parsing', () => {
    const result = readFile('['.repeat(200_000))
    expect(result.ok ? '' : result.issues[0]?.message.en).toBe('groups in groups go deeper than 32')
  })
  it('does not count brackets inside texts as depth', () => {
    const document = yard(item('note', 'note:1', onRun(5), { text: `${'['.repeat(60)} \\" ${'{'.repeat(60)}` }))
    expect(readFile(writeFile(document)).ok).toBe(true)
  })
  it('refuses more records than it has room for', () => {
    const document = yard(...[1, 2, 3].map((i) => item('stand', `stand:${i}`, onRun(i))))
    const result = readFile(writeFile(document), { limits: { records: 4 } })
    expect(result.ok ? '' : result.issues[0]?.path).toBe('items')
  })
  it('refuses a newer file by its version and offers no part of it', () => {
    const result = readForm({ ...fileFormOf(yard()), fileVersion: 7, items: 'not even a list' })
    expect(result).toMatchObject({ ok: false, newerVersion: 7, issues: [{ path: 'fileVersion' }] })
    expect(result.ok || result.salvage).toBe(undefined)
  })
  it('reads a file whose empty lists were left out, and one that starts with a byte order mark', () => {
    const { format, fileVersion, layout, job } = fileFormOf(yard())
    expect(readForm({ format, fileVersion, layout, job }).ok).toBe(true)
    expect(readFile(`\uFEFF${writeFile(yard())}`).ok).toBe(true)
  })
  it('refuses a name that would reach into the language', () => {
    const poisoned = writeFile(yard()).replace('"setUps"', '"__proto__": { "polluted": true }, "setUps"')
    const result = readFile(poisoned)
    expect(result.ok ? '' : result.issues[0]?.path).toBe('__proto__')
    expect(({} as { polluted?: boolean }).polluted).toBe(undefined)
  })
  it('a copy has its own layoutId and shares the rest', () => {
    const document = yard()
    expect(layoutOf(asCopy(document, 'layout:new', 'Copy'))).toMatchObject({ layoutId: 'layout:new', title: 'Copy' })
    expect(layoutOf(document).layoutId).toBe('layout-test')
  })
})
