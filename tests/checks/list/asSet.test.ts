import { describe, expect, it } from 'vitest'
import { asSet } from '../../../src/checks/list/asSet.ts'
import { limitsOf } from '../../../src/checks/limits.ts'
import type { Finding } from '../../../src/checks/finding.ts'
import { createMechanics } from '../../../src/derive/mechanics.ts'
import { deriveSite } from '../../../src/derive/site.ts'
import type { YardDocument, YardRecord } from '../../../src/scene/document.ts'
import { fusionYard, inch, moveOf, textOf, type YardSpec } from '../../helpers/fusionYard.ts'

const measured = (itemId: string, saddleIn: number | null, farSaddleIn: number | null = null): YardRecord =>
  ({ id: `asSet:${itemId.replace(':', '')}`, kind: 'asSet', itemId, saddleM: saddleIn === null ? null : inch(saddleIn), farSaddleM: farSaddleIn === null ? null : inch(farSaddleIn), isTicked: false, isFarTicked: false, offsetM: null, runningM: null, when: '2025-06-03T15:00:00.000Z' })
/** Rack and two stands on the jaw line at 30 in; 36 in pipe wants E1 to about 1/8 in. */
const yard = (spec: YardSpec, ...more: readonly YardRecord[]): YardDocument => fusionYard({ ...spec, more })
const run = (document: YardDocument, variant: 'planned' | 'asSet' = 'planned'): readonly Finding[] => {
  const site = deriveSite(document, { variant })
  const limits = limitsOf(document)
  return asSet.run(site, { limits, mechanics: createMechanics(site, limits), owned: null })
}
const all = [measured('rack:1', 30, 30), measured('stand:e1', 30), measured('stand:e2', 30)]

describe('heights as set', () => {
  it('nothing typed yet: nothing to say', () => expect(run(yard({}))).toEqual([]))
  it('all measured as planned is met', () => {
    const [only, ...more] = run(yard({}, ...all))
    expect(more).toEqual([])
    expect(only).toMatchObject({ level: 'met' })
    expect(textOf(only!)).toBe('All 4 supports stand within the tolerance of their planned heights.')
  })
  it('names those not measured yet as missing input, one finding for all, and leads to their fields', () => {
    const [only] = run(yard({}, measured('rack:1', 30, null)))
    expect(only).toMatchObject({ level: 'CHECK', isUnknown: true, key: 'as-set@open' })
    expect(only!.missing.map(({ recordId, path }) => `${recordId} ${path}`)).toEqual(['rack:1 asSet.farSaddleM', 'stand:e1 asSet.saddleM', 'stand:e2 asSet.saddleM'])
    expect(textOf(only!)).toBe('Not measured yet, 3 of 4: R2, E1 and E2.')
    expect(textOf(run(yard({}, measured('rack:1', 30, null)), 'asSet')[0]!)).toContain('The planned height stands in.')
  })
  it('a stand 1 in low says so, with C as set and as planned, and what to do', () => {
    const found = run(yard({}, ...all.slice(0, 1), measured('stand:e1', 29), measured('stand:e2', 30)))
    expect(found.map(({ key, level, itemIds }) => [key, level, itemIds])).toEqual([['as-set@stand:e1', 'CHECK', ['stand:e1']]])
    expect(textOf(found[0]!)).toMatch(/^E1 was set 1 in lower than planned, more than ± ½ in: C at the exit jaws is [\d.]+ instead of 0\.88\.$/)
    expect(moveOf(found[0]!)).toBe('Raise E1 by 1 in to 30 in and measure it again.')
  })
  it('says the same in the as-set case as in the plan', () => {
    const document = yard({}, ...all.slice(0, 1), measured('stand:e1', 29), measured('stand:e2', 30))
    expect(textOf(run(document, 'asSet')[0]!)).toBe(textOf(run(document)[0]!))
  })
  it('is FIX where the jaws then fight: 36 in pipe on a stand 2 in high', () => {
    const found = run(yard({ size: '36' }, measured('rack:1', 30, 30), measured('stand:e1', 32), measured('stand:e2', 30)))
    expect(found.map(({ level }) => level)).toEqual(['FIX'])
    expect(textOf(found[0]!)).toContain('2 in higher')
    // A third of that on 4 in pipe, which gives way: no more than a CHECK.
    expect(run(yard({ size: '4', dr: 11 }, measured('rack:1', 30, 30), measured('stand:e1', 30.7), measured('stand:e2', 30))).map(({ level }) => level)).toEqual(['CHECK'])
  })
  it('within the tolerance and the reading of the tape nothing is off', () => {
    // ½ in is the most any tolerance is; 12 in pipe at 25 ft has it.
    expect(run(yard({}, measured('rack:1', 30, 30), measured('stand:e1', 30.5), measured('stand:e2', 30))).map(({ level }) => level)).toEqual(['met'])
    expect(run(yard({}, measured('rack:1', 30, 30), measured('stand:e1', 30.6), measured('stand:e2', 30))).map(({ level }) => level)).toEqual(['CHECK'])
  })
  it('jaws off by more than the tightest stand allows are told of the machine', () => {
    const found = run(yard({}, ...all, measured('machine:1', 29)))
    expect(found.map(({ key, level, itemIds }) => [key, level, itemIds])).toEqual([['as-set@jaws', 'CHECK', ['machine:1']]])
    expect(textOf(found[0]!)).toContain('The pipe lies 1 in lower in the jaws than planned')
  })
  it('reads in Spanish too', () => expect(textOf(run(yard({}, ...all.slice(0, 1), measured('stand:e1', 29), measured('stand:e2', 30)))[0]!, 'es')).toMatch(/^E1 quedó 1.+ más bajo que lo planeado/))
})
