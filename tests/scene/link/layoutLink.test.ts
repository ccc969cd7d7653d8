import { deflateSync } from 'fflate'
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { fromBase64url, toBase64url } from '../../../src/scene/link/base64url.ts'
import { isLayoutFragment, linkContent, MOST_LINK_CHARS, readFragment, writeFragment } from '../../../src/scene/link/layoutLink.ts'
import { packed, unpacked } from '../../../src/scene/link/packing.ts'
import type { YardDocument, YardRecord } from '../../../src/scene/document.ts'
import { readFile } from '../../../src/scene/readFile.ts'
import { writeFile } from '../../../src/scene/writeFile.ts'
import { runLinkSoak } from '../../helpers/linkSoak.ts'
import links from '../../../shared/formats/link1/links.json' with { type: 'json' }

const open = (path: string): YardDocument => {
  const read = readFile(readFileSync(path, 'utf8'))
  if (!read.ok) throw new Error(`${path}: ${read.issues[0]?.message.en}`)
  return read.document
}
const reasonOf = (fragment: string): string => {
  const read = readFragment(fragment)
  return read.ok ? 'opened' : read.reason.en
}

describe('a link', () => {
  it('carries every example to the last digit of its file', () => {
    const names = readdirSync('shared/examples').filter((name) => name.endsWith('.yard.json'))
    expect(names.length).toBeGreaterThan(5)
    for (const name of names) {
      const document = open(`shared/examples/${name}`)
      const back = readFragment(`#${writeFragment(linkContent(document))}`)
      expect(back.ok && writeFile(back.document)).toBe(writeFile(document))
    }
  })

  it('of version 1 opens as long as there are links of version 1', () => {
    for (const [name, link] of Object.entries(links)) {
      const back = readFragment(link)
      const { document } = linkContent(open(`shared/formats/v0002/${name}.yard.json`))
      expect(back.ok && writeFile(back.document)).toBe(writeFile(document))
    }
  })

  it('leaves talks with their names and photos at home, and says how many', () => {
    const document = open('shared/examples/maple-fork-good.yard.json')
    const row = (id: string, what: 'talk' | 'shared' | 'signOff'): YardRecord => ({ id, kind: 'release', letter: 'A', what, when: '2026-01-01T00:00:00Z', contentHash: 'x', replaces: null, text: null, stageId: null, language: null, people: ['L. M.'] })
    const photo: YardRecord = { id: 'asset:1', kind: 'asset', sha256: 'a'.repeat(64), mime: 'image/png', bytes: 10, widthM: null }
    const records = [row('release:1', 'talk'), row('release:2', 'shared'), row('release:3', 'signOff'), photo]
    const content = linkContent({ records: { ...document.records, ...Object.fromEntries(records.map((record) => [record.id, record])) } })
    expect(content.left).toEqual({ talks: 2, photos: 1 })
    expect(records.map(({ id }) => content.document.records[id] !== undefined)).toEqual([false, true, false, false])
    expect(readFragment(writeFragment(content)).ok).toBe(true)
  })

  it('is told from other fragments by its beginning', () => {
    expect(['#yard1.abc', 'yard9.', '#yard1', '#plan', '', '#yards'].map(isLayoutFragment)).toEqual([true, true, true, false, false, false])
  })
})

describe('a link that is not right', () => {
  const good = writeFragment(linkContent(open('shared/examples/maple-fork-good.yard.json')))

  it('is refused with what is wrong with it', () => {
    expect(reasonOf('#plan')).toContain('no link to a layout')
    expect(reasonOf('#yard0.abcd')).toContain('no link to a layout')
    expect(reasonOf('#yard2.abcd')).toContain('newer Stringyard')
    expect(reasonOf(`#yard1.${'A'.repeat(MOST_LINK_CHARS + 1)}`)).toContain('characters long')
    expect(reasonOf('#yard1.ab%20')).toContain('characters that no such link has')
    expect(reasonOf('#yard1.')).toContain('cut off')
    expect(reasonOf(good.slice(0, -40))).toContain('cut off')
    expect(reasonOf(`#yard1.${packed('{"format":"stringyard","fileVersion":2}')}`)).toContain('layout: is missing')
    expect(reasonOf(`#yard1.${packed('['.repeat(40))}`)).toContain('deeper than 32')
  })

  it('is refused where one character changed what it says', () => {
    let told = 0
    for (let at = 20; at < good.length; at += 37) {
      const other = good[at] === 'A' ? 'B' : 'A'
      const reason = reasonOf(good.slice(0, at) + other + good.slice(at + 1))
      expect(reason).not.toBe('opened')
      if (reason.includes('changed on its way')) told++
    }
    expect(told).toBeGreaterThan(0)
  })

  it('that unpacks to a great deal is stopped while it unpacks', () => {
    // 20 MB of one byte in some 20 kB of deflate.
    const bomb = toBase64url(new Uint8Array([0, 0, 0, 0, ...deflateSync(new Uint8Array(20_000_000))]))
    expect(bomb.length).toBeLessThan(MOST_LINK_CHARS)
    expect(unpacked(bomb, 50_000)).toEqual({ ok: false, why: 'large' })
    expect(reasonOf(`#yard1.${bomb}`)).toContain('larger than any layout')
  })

  it('500 mutated links are opened whole or refused with a reason, never with an exception', () => {
    const report = runLinkSoak({ seed: 30_000, count: 500 })
    expect(report.failures).toEqual([])
    expect(Math.min(report.opened, report.refused)).toBeGreaterThan(20)
  })
})

describe('base64url', () => {
  it('writes the vectors of RFC 4648, section 10, without padding, and reads them back', () => {
    const vectors = { '': '', f: 'Zg', fo: 'Zm8', foo: 'Zm9v', foob: 'Zm9vYg', fooba: 'Zm9vYmE', foobar: 'Zm9vYmFy' }
    for (const [plain, coded] of Object.entries(vectors)) {
      const bytes = Uint8Array.from(plain, (letter) => letter.charCodeAt(0))
      expect(toBase64url(bytes)).toBe(coded)
      expect(fromBase64url(coded)).toEqual(bytes)
    }
    // All 64 letters, '-' and '_' for 62 and 63 (table 2 of the same).
    expect(toBase64url(new Uint8Array([0xfb, 0xff]))).toBe('-_8')
  })
  it('has one text for each run of bytes: bits left over and impossible lengths are refused', () => {
    expect(['Zh', 'Zm9', 'Zm9vY', 'a+b/', 'Zg=='].map(fromBase64url)).toEqual([null, null, null, null, null])
  })
})
