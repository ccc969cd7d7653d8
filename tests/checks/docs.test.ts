import { existsSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { siteChecks } from '../../src/checks/siteChecks.ts'

describe('pages of the site checks', () => {
  it.each(siteChecks.map(({ id, title }) => [id, title] as const))('%s has a page with meaning, working, limit and what to do', (id, title) => {
    const path = new URL(`../../docs/checks/${id}.md`, import.meta.url)
    expect(existsSync(path)).toBe(true)
    const text = readFileSync(path, 'utf8')
    expect(text.startsWith(`# ${title.en}\n*`)).toBe(true)
    for (const part of ['**What it means.**', '**How it is worked out.**', '**Limit and source.**', '**What to do.**']) expect(text).toContain(part)
  })

  it('gives every check a Spanish title', () => {
    expect(siteChecks.filter(({ title }) => title.es === '' || title.es === title.en)).toEqual([])
  })
})
