import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { levelOrder, type CheckDefinition, type Finding } from '../../src/checks/finding.ts'
import { limitsOf } from '../../src/checks/limits.ts'
import { checks } from '../../src/checks/registry.ts'
import { createMechanics } from '../../src/derive/mechanics.ts'
import { deriveSite } from '../../src/derive/site.ts'
import { assertPlaceholders, renderText } from '../../src/messages/render.ts'
import type { YardDocument } from '../../src/scene/document.ts'
import { emptyDocument } from '../../src/scene/newYard.ts'
import { readFile } from '../../src/scene/readFile.ts'
import { testEnv } from '../helpers/documents.ts'
import { fusionYard } from '../helpers/fusionYard.ts'
import { randomLayout } from '../helpers/randomLayout.ts'
import { deepFrozen, movedScene } from '../helpers/scenes.ts'
import { seededRandom } from '../helpers/seededRandom.ts'

const run = (check: CheckDefinition, document: YardDocument): readonly Finding[] => {
  const site = deriveSite(document)
  const limits = limitsOf(document)
  return check.run(site, { limits, mechanics: createMechanics(site, limits), owned: null })
}

const examples = readdirSync('shared/examples').filter((name) => name.endsWith('.yard.json')).map((name) => {
  const result = readFile(readFileSync(`shared/examples/${name}`, 'utf8'))
  if (!result.ok) throw new Error(`${name}: ${result.issues[0]?.path} ${result.issues[0]?.message.en}`)
  return [name, result.document] as const
})
const documents: readonly (readonly [string, YardDocument])[] = [
  ['empty', emptyDocument(testEnv(), 'feetInches')],
  ['a fusion line', fusionYard()],
  ['no stands', fusionYard({ exits: [], infeed: 'none', job: { noseHold: 'free' } })],
  ...examples,
  ...[11, 12, 13].map((seed) => [`random ${seed}`, randomLayout(seededRandom(seed))] as const),
]
const fileOf = (check: CheckDefinition): string => check.id.replace(/-([a-z])/g, (_all, letter: string) => letter.toUpperCase())

describe('the registry', () => {
  it('has every check of the folder, each once', () => {
    const files = readdirSync('src/checks/list').map((name) => name.replace(/\.ts$/, ''))
    expect(checks.map(fileOf).toSorted()).toEqual(files.toSorted())
    expect(new Set(checks.map(({ id }) => id)).size).toBe(checks.length)
  })
  it.each(checks.map((check) => [check.id, check] as const))('%s has a page with a line of Spanish, a test of its own and titles in both languages', (id, check) => {
    const page = readFileSync(`docs/checks/${id}.md`, 'utf8')
    expect(page).toMatch(/^# .+\n\*?.+/)
    expect(existsSync(`tests/checks/list/${fileOf(check)}.test.ts`) || existsSync(`tests/checks/${fileOf(check)}.test.ts`)).toBe(true)
    expect(check.title.en).not.toBe('')
    expect(check.title.es).not.toBe('')
    expect(check.title.es).not.toBe(check.title.en)
  })
})

describe.each(documents)('on %s', (name, document) => {
  it('no check throws, writes into the document or answers twice differently', () => {
    const frozen = deepFrozen(structuredClone(document))
    for (const check of checks) expect(run(check, frozen), check.id).toEqual(run(check, frozen))
  })
  it('findings are plain JSON, named by their check, with unique keys', () => {
    const all = checks.flatMap((check) => run(check, document).map((one) => [check.id, one] as const))
    for (const [id, one] of all) {
      expect(JSON.parse(JSON.stringify(one)), one.key).toEqual(one)
      expect(one.checkId).toBe(id)
      expect(one.key.startsWith(id), one.key).toBe(true)
      expect(levelOrder).toContain(one.level)
      if (one.isUnknown) expect([one.level, one.missing.length > 0], one.key).toEqual(['CHECK', true])
    }
    expect(new Set(all.map(([, one]) => one.key)).size).toBe(all.length)
  })
  it('sentences have the same places in both languages and a value for each', () => {
    for (const check of checks) {
      for (const one of run(check, document)) {
        for (const sentence of [one.what, one.move, one.remedy?.label]) {
          if (sentence === null || sentence === undefined) continue
          assertPlaceholders(sentence.text, Object.keys(sentence.values ?? {}))
          expect(sentence.text.es, one.key).not.toBe('')
          for (const language of ['en', 'es'] as const) for (const system of ['feetInches', 'metric'] as const) expect(renderText(sentence.text, sentence.values ?? {}, { system, language }), one.key).not.toMatch(/NaN|undefined|Infinity|\{/)
        }
      }
    }
  })
  it('moving and turning the whole scene changes no finding’s level', () => {
    const levels = (one: YardDocument): string[] => checks.flatMap((check) => run(check, one).map(({ key, level }) => `${level} ${key}`))
    expect(levels(movedScene(document, { dxM: 431.7, dyM: -88.3 })), name).toEqual(levels(document))
    expect(levels(movedScene(document, { dxM: 12, dyM: 5, turnRad: 0.7 })), name).toEqual(levels(document))
  })
})

describe('an empty layout', () => {
  it('raises no STOP and no FIX', () => {
    const all = checks.flatMap((check) => run(check, emptyDocument(testEnv(), 'metric')))
    expect(all.filter(({ level }) => level === 'STOP' || level === 'FIX')).toEqual([])
  })
})
