/** The command as a stranger runs it: three processes, no more (docs: testing budget). */
import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'

let folder = ''
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'yard-'))
})
afterAll(() => rmSync(folder, { recursive: true }))

const write = (name: string, value: unknown): string => {
  const path = join(folder, name)
  writeFileSync(path, typeof value === 'string' ? value : JSON.stringify(value))
  return path
}
const yard = (...args: string[]) => spawnSync(process.execPath, ['--import', 'tsx', 'src/headless/yard.ts', ...args], { encoding: 'utf8' })
const clearance = (name: string, y: number) => ({ name, corridor: { pts: [[0, 0], [10, 0]], width: 2 }, obstacles: [{ type: 'point', x: 5, y, radius: 0.5 }] })

describe('yard', () => {
  it('solves several files, one JSON line each, in order, exit 0', () => {
    const files = [write('b.json', clearance('b', 4)), write('a.json', clearance('a', 1)), write('c.json', { name: 'c', corridors: [] })]
    const { status, stdout, stderr } = yard('solve', 'clearance', ...files)
    expect([status, stderr]).toEqual([0, ''])
    const answers = stdout.trimEnd().split('\n').map((line) => JSON.parse(line) as unknown)
    expect(answers).toEqual([
      { name: 'b', status: 'ok', obstacles: [{ dist: 4, clearance: 2.5, hit: false }] },
      { name: 'a', status: 'ok', obstacles: [{ dist: 1, clearance: -0.5, hit: true }] },
      { name: 'c', status: 'rejected', reason: 'corridors is not a known field' },
    ])
  })

  it('an unreadable file is one line and exit 2, never a stack trace', () => {
    const { status, stdout, stderr } = yard('solve', 'pull', join(folder, 'missing.json'))
    expect(status).toBe(2)
    expect(`${stdout}${stderr}`.trimEnd().split('\n')).toHaveLength(1)
    expect(stdout).toContain('cannot be read: no such file')
  })

  it('a command that is not understood is one line on the error stream and exit 2', () => {
    const { status, stdout, stderr } = yard('weld')
    expect([status, stdout]).toEqual([2, ''])
    expect(stderr).toBe('yard: "weld" is not a command: check, sheet or solve (see --help)\n')
  })
})
