import { readFileSync, readdirSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { Finding } from '../../src/checks/finding.ts'
import { runChecks } from '../../src/checks/runner.ts'
import { stringPullOf } from '../../src/derive/stringPull.ts'
import { deriveSite } from '../../src/derive/site.ts'
import { layoutOf, type YardDocument } from '../../src/scene/document.ts'
import { readFile } from '../../src/scene/readFile.ts'
import { mirroredScene } from '../helpers/mirroredScene.ts'
import { randomLayout } from '../helpers/randomLayout.ts'
import { seededRandom } from '../helpers/seededRandom.ts'

const examples = readdirSync('shared/examples').filter((name) => name.endsWith('.yard.json')).map((name): readonly [string, YardDocument] => {
  const read = readFile(readFileSync(`shared/examples/${name}`, 'utf8'))
  if (!read.ok) throw new Error(name)
  return [name, read.document]
})
const yards = [...examples, ...Array.from({ length: 12 }, (_, i): readonly [string, YardDocument] => [`random ${500 + i}`, randomLayout(seededRandom(500 + i))])]

const close = (a: number | null | undefined, b: number | null | undefined): boolean => (typeof a === 'number' && typeof b === 'number' ? Math.abs(a - b) <= 1e-6 * Math.max(1, Math.abs(a)) : a === b)
const byKey = (findings: readonly Finding[]): ReadonlyMap<string, Finding> => new Map(findings.map((one) => [one.key, one]))
/** The key as the mirror has it: a side named in it is the other one. */
const mirroredKey = (key: string): string => key.replace(/:([LR])$/, (_all, side: string) => (side === 'L' ? ':R' : ':L'))
const heads = (findings: readonly Finding[]): string[] => findings.map(({ level, key }) => `${level} ${key}`).toSorted()

describe.each(yards)('%s', (_name, document) => {
  const plain = runChecks(document).findings

  it('seen in a mirror gives the same findings on the other side', () => {
    const mirrored = runChecks(mirroredScene(document)).findings
    expect(heads(mirrored.map((one) => ({ ...one, key: mirroredKey(one.key) })))).toEqual(heads(plain))
    const others = byKey(mirrored)
    for (const one of plain) {
      const other = others.get(mirroredKey(one.key))!
      expect(close(other.measured?.value, one.measured?.value), `${one.key} measures ${one.measured?.value}, mirrored ${other.measured?.value}`).toBe(true)
      if (one.where?.at === 'run' && other.where?.at === 'run') expect([close(other.where.runningM, one.where.runningM), close(0 - other.where.offsetM, one.where.offsetM)], one.key).toEqual([true, true])
    }
  })

  it('shown in the other units changes no level and no number', () => {
    const layout = layoutOf(document)
    const other = runChecks({ records: { ...document.records, [layout.id]: { ...layout, displayUnits: layout.displayUnits === 'metric' ? 'feetInches' : 'metric' } } }).findings
    expect(heads(other)).toEqual(heads(plain))
    const others = byKey(other)
    for (const one of plain) {
      const { measured, limit, margin, where, missing } = others.get(one.key)!
      expect({ measured, limit, margin, where, missing }, one.key).toEqual({ measured: one.measured, limit: one.limit, margin: one.margin, where: one.where, missing: one.missing })
    }
  })

  it('with more friction pulls no easier, and leaves by itself no sooner', () => {
    const [low, likely, high] = (['low', 'likely', 'high'] as const).map((friction) => stringPullOf(deriveSite(document, { whatIf: { friction } })).joints) as [Joints, Joints, Joints]
    for (const [less, more] of [[low, likely], [likely, high]] as const) {
      less.forEach((joint, i) => {
        const slackN = 1e-9 * joint.weightN
        expect(more[i]!.pullN).toBeGreaterThanOrEqual(joint.pullN - slackN)
        expect(more[i]!.startN).toBeGreaterThanOrEqual(joint.startN - slackN)
        expect(more[i]!.runAwayN.exit).toBeLessThanOrEqual(joint.runAwayN.exit + slackN)
        expect(more[i]!.runAwayN.infeed).toBeLessThanOrEqual(joint.runAwayN.infeed + slackN)
      })
    }
  })
})

type Joints = ReturnType<typeof stringPullOf>['joints']
