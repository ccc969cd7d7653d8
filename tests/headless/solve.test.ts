import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { InputRefused } from '../../src/headless/fields.ts'
import { LARGEST_FILE_BYTES, readJson } from '../../src/headless/readJson.ts'
import { loadSolver, solveFiles, solveOrReject } from '../../src/headless/solve.ts'

let folder = ''
const file = (name: string): string => join(folder, name)
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'yard-'))
  writeFileSync(file('good.json'), '{"id":"g","value":1}')
  writeFileSync(file('bad.json'), '{"id":"b","value":-1}')
  writeFileSync(file('text.json'), 'not json')
  writeFileSync(file('bom.json'), '\uFEFF{"id":"m","value":2}')
  writeFileSync(file('huge.json'), ' '.repeat(LARGEST_FILE_BYTES + 1))
})
afterAll(() => rmSync(folder, { recursive: true }))

const doubler = (json: unknown): unknown => {
  const { value } = json as { value: number }
  if (value < 0) throw new InputRefused(`value is ${value}`)
  return { status: 'ok', twice: 2 * value }
}

describe('solving files', () => {
  it('writes one line each, in order; a refused case is no error', async () => {
    const lines: string[] = []
    expect(await solveFiles(doubler, [file('bad.json'), file('good.json'), file('bom.json')], (line) => lines.push(line))).toBe(0)
    expect(lines.map((line) => JSON.parse(line) as unknown)).toEqual([{ id: 'b', status: 'rejected', reason: 'value is -1' }, { status: 'ok', twice: 2 }, { status: 'ok', twice: 4 }])
  })

  it('a file that cannot be read keeps its line and makes the exit code 2', async () => {
    const lines: string[] = []
    expect(await solveFiles(doubler, [file('missing.json'), file('good.json')], (line) => lines.push(line))).toBe(2)
    expect(JSON.parse(lines[0]!)).toMatchObject({ status: 'rejected', reason: 'cannot be read: no such file' })
    expect(JSON.parse(lines[1]!)).toMatchObject({ status: 'ok' })
  })

  it.each([
    ['text.json', 'not JSON'],
    ['huge.json', 'at most 20971520 are read'],
    ['', 'it is a folder'],
  ])('says why %s cannot be read', async (name, why) => {
    const read = await readJson(file(name))
    expect(read.ok).toBe(false)
    expect(!read.ok && read.reason).toContain(why)
  })

  it('a fault of the program is told apart and carries no trace', () => {
    const broken = (): unknown => {
      throw new TypeError('cannot read\n  at somewhere')
    }
    const { answer, isOurFault } = solveOrReject(broken, { name: 'n' })
    expect(isOurFault).toBe(true)
    expect(answer).toEqual({ name: 'n', status: 'rejected', reason: 'internal error: cannot read' })
  })

  it('loads the engine that was asked for', async () => {
    const clearance = await loadSolver('clearance')
    expect(clearance({ corridor: { pts: [[0, 0]], width: 0 }, obstacles: [] })).toEqual({ status: 'ok', obstacles: [] })
    expect((await loadSolver('pull'))).toBeTypeOf('function')
  })
})
