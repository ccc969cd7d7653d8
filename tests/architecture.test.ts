import { existsSync, readdirSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { createRequire } from 'node:module'
import type { IConfiguration, ICruiseResult } from 'dependency-cruiser'
import { describe, expect, it } from 'vitest'
import configuration, { layers } from '../.dependency-cruiser.mjs'

const config = configuration as unknown as IConfiguration

/**
 * The import tool hands .tsx files to its parser without saying that they hold JSX, and the parser refuses them. The
 * parser is told here, before the tool is loaded; the first test fails if any file of src was not read after all.
 */
const loadCruise = async (): Promise<typeof import('dependency-cruiser').cruise> => {
  const swc = createRequire(import.meta.url)('@swc/core') as { parseFileSync: (file: string, options: object) => unknown }
  const { parseFileSync } = swc
  swc.parseFileSync = (file, options) => parseFileSync(file, { ...options, tsx: file.endsWith('.tsx') })
  return (await import('dependency-cruiser')).cruise
}
const cruised = async (): Promise<ICruiseResult> => {
  const cruise = await loadCruise()
  const { output } = await cruise(['src'], { ...config.options, ruleSet: { forbidden: config.forbidden ?? [] }, validate: true })
  return output as ICruiseResult
}

const walk = (folder: string): string[] => readdirSync(folder).flatMap((name) => (statSync(join(folder, name)).isDirectory() ? walk(join(folder, name)) : [join(folder, name)]))

describe('architecture', () => {
  it('imports point one way, and the tool that says so has read the code', async () => {
    const output = await cruised()
    // A guard that reads nothing must fail: every source file of ours is among the modules it read.
    const read = new Set(output.modules.map(({ source }) => source))
    const ours = walk('src').filter((file) => /\.tsx?$/.test(file))
    expect(ours.length).toBeGreaterThan(60)
    expect(ours.filter((file) => !read.has(file))).toEqual([])
    expect(output.summary.totalDependenciesCruised ?? 0).toBeGreaterThan(200)
    const band = output.modules.find(({ source }) => source === 'src/canvas/plan/PlanBand.tsx')
    expect(band?.dependencies.map(({ resolved }) => resolved)).toContain('src/state/app.ts')
    expect(output.summary.violations.map(({ rule, from, to }) => `${rule.name}: ${from} -> ${to}`)).toEqual([])
  }, 60_000)

  it('every folder of src is a layer with a rule', () => {
    expect(readdirSync('src').filter((name) => statSync(join('src', name)).isDirectory()).sort()).toEqual(Object.keys(layers).sort())
  })

  it('the top level holds only what the design card names', () => {
    const allowed = ['README.md', 'DEVELOPERS.md', 'package.json', 'src', 'tests', 'e2e', 'shared', 'docs', 'package-lock.json', 'tsconfig.json', 'vite.config.ts', 'vitest.config.ts', 'playwright.config.ts',
      '.dependency-cruiser.mjs', '.oxlintrc.json', '.gitignore', '.nvmrc', '.ci', 'LICENSE', '.git', 'node_modules', 'dist', '.cache', 'test-results', '.npmrc']
    expect(readdirSync('.').filter((name) => !allowed.includes(name))).toEqual([])
    expect(existsSync('LICENSE')).toBe(true)
  })
})
