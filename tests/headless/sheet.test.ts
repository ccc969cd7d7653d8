import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { parseArgs } from '../../src/headless/args.ts'
import { runSheet } from '../../src/headless/sheet.ts'

const folder = mkdtempSync(join(tmpdir(), 'sheet-'))
afterAll(() => rmSync(folder, { recursive: true }))
const file = 'shared/examples/maple-fork-good.yard.json'
const now = new Date('2026-01-05T10:00:00Z')

describe('yard sheet', () => {
  it('reads paper, language, units and what to write', () => {
    expect(parseArgs(['sheet', 'a.yard.json', '--pdf', 'o.pdf', '--paper', 'A3', '--portrait', '--language', 'both', '--units', 'metric', '--csv', 'o.csv'])).toEqual({
      kind: 'sheet', file: 'a.yard.json', outputs: [{ as: 'pdf', out: 'o.pdf' }, { as: 'csv', out: 'o.csv' }], paper: 'a3', orientation: 'portrait', language: 'both', units: 'metric',
    })
  })

  it.each([
    [['sheet'], 'needs a file'], [['sheet', 'a'], 'what to write'], [['sheet', 'a', 'b', '--pdf', 'o'], 'one too many'], [['sheet', 'a', '--png', 'o'], 'browser'],
    [['sheet', 'a', '--pdf'], 'needs a word'], [['sheet', 'a', '--paper', 'b5', '--pdf', 'o'], 'not a paper'], [['sheet', 'a', '--language', 'fr', '--pdf', 'o'], 'not a language'], [['sheet', 'a', '--wide'], 'not an option'],
  ])('refuses %j by name', (words, why) => {
    const request = parseArgs(words)
    expect(request.kind).toBe('wrong')
    if (request.kind === 'wrong') expect(request.message).toContain(why)
  })

  it('writes PDF, SVG pages, CSV, DXF and GeoJSON and names them', async () => {
    const said: string[] = []
    const outputs = (['pdf', 'svg', 'csv', 'dxf', 'geojson'] as const).map((as) => ({ as, out: join(folder, `o.${as}`) }))
    expect(await runSheet({ file, outputs, paper: 'letter', orientation: 'landscape', language: 'en', units: null }, now, (text) => said.push(text.trim()))).toBe(0)
    expect(readFileSync(join(folder, 'o.pdf')).subarray(0, 5).toString()).toBe('%PDF-')
    expect(readFileSync(join(folder, 'o-1.svg'), 'utf8')).toContain('<svg')
    expect(said).toContain(join(folder, 'o.csv'))
  }, 30_000)

  it('answers a file that cannot be used, or a place that cannot be written to, with one line and 2', async () => {
    const said: string[] = []
    const request = { outputs: [{ as: 'csv' as const, out: join(folder, 'no', 'such', 'o.csv') }], paper: 'letter', orientation: 'landscape', language: 'en', units: null } as const
    expect(await runSheet({ ...request, file: 'package.json' }, now, (text) => said.push(text))).toBe(2)
    expect(await runSheet({ ...request, file: 'nowhere.json' }, now, (text) => said.push(text))).toBe(2)
    expect(await runSheet({ ...request, file }, now, (text) => said.push(text))).toBe(2)
    expect(said).toHaveLength(3)
    for (const line of said) expect(line.trim().split('\n')).toHaveLength(1)
  })
})
