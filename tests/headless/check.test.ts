import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { runCheck } from '../../src/headless/check.ts'
import { writeFile } from '../../src/scene/writeFile.ts'
import { emptyDocument } from '../../src/scene/newYard.ts'
import { testEnv } from '../helpers/documents.ts'
import { fusionYard } from '../helpers/fusionYard.ts'

const folder = mkdtempSync(join(tmpdir(), 'yard-check-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))
const file = (name: string, text: string): string => {
  const path = join(folder, name)
  writeFileSync(path, text)
  return path
}
const good = file('good.yard.json', writeFile(fusionYard()))
const bad = file('bad.yard.json', writeFile(fusionYard({ exits: [] })))

const check = async (files: string[], json: boolean): Promise<{ code: number; text: string }> => {
  const parts: string[] = []
  const code = await runCheck(files, json, (part) => parts.push(part))
  return { code, text: parts.join('') }
}

describe('yard check', () => {
  it('answers 0 without STOP and FIX, 1 with, 2 for a file it cannot use; the worst of several', async () => {
    const empty = file('empty.yard.json', writeFile(emptyDocument(testEnv(), 'metric')))
    expect((await check([empty], false)).code).toBe(0)
    expect((await check([good], false)).code).toBe(0)
    expect((await check([bad], false)).code).toBe(1)
    expect((await check([good, bad, join(folder, 'none')], false)).code).toBe(2)
  })
  it('says of a broken file which field and why', async () => {
    const broken = file('broken.yard.json', writeFile(fusionYard()).replace('"stickCount": 5', '"stickCount": "five"'))
    const { code, text } = await check([broken], false)
    expect(code).toBe(2)
    expect(text).toMatch(/stickCount/)
    expect(text.trim().split('\n')).toHaveLength(1)
  })
  it('writes one JSON line a file with findings, quantities and profile', async () => {
    const { text } = await check([good, bad], true)
    const lines = text.trim().split('\n').map((line) => JSON.parse(line) as Record<string, never>)
    expect(lines).toHaveLength(2)
    const report = lines[0] as unknown as { status: string; counts: Record<string, number>; quantities: { jaws: { joint: number; effortRatio: number; exit: { outerN: number } }[]; supports: { label: string; saddleM: number }[] }; profile: { status: string; bodies: { runningM: number[]; levelM: number[] }[] }; findings: { text: string }[] }
    expect(report.status).toBe('ok')
    expect(report.quantities.jaws[0]!.effortRatio).toBeCloseTo(0.884, 3)
    expect(report.quantities.supports.map(({ label }) => label)).toEqual(['R2', 'R1', 'E1', 'E2'])
    expect(report.quantities.supports[2]!.saddleM).toBeCloseTo(0.762, 6)
    expect(report.profile.bodies.map(({ runningM }) => runningM.length > 20)).toEqual([true, true])
    expect(report.findings.every(({ text: words }) => words.length > 5)).toBe(true)
  })
  it('a person reads level, sentence, place, value against limit, source and move', async () => {
    const { text } = await check([bad], false)
    expect(text).toMatch(/^FIX {3}The exit jaws fight the pipe at joint \d: .*\(at the datum\)$/m)
    expect(text).toMatch(/against 2 · houseRule: common practice, no published source/)
    expect(text).toMatch(/^to confirm$/m)
    // Also where it begins with an item's name: 'Loader L reaches …'.
    expect(text.split('\n').filter((line) => /^(?:STOP|FIX|CHECK|NOTE) +\p{Ll}/u.test(line))).toEqual([])
  })
})
