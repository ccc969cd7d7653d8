import { describe, expect, it } from 'vitest'
import { limitsOf } from '../../src/checks/limits.ts'
import { createMechanics, type Mechanics } from '../../src/derive/mechanics.ts'
import { deriveSite } from '../../src/derive/site.ts'
import type { SiteModel, SupportView } from '../../src/derive/types.ts'
import type { YardDocument, YardRecord } from '../../src/scene/document.ts'
import { ft, fusionYard, inch } from '../helpers/fusionYard.ts'

const asSet = (itemId: string, saddleM: number | null, farSaddleM: number | null = null): YardRecord => ({ id: `asSet:${itemId.replace(':', '')}`, kind: 'asSet', itemId, saddleM, farSaddleM, isTicked: false, isFarTicked: false, offsetM: null, runningM: null, when: '2025-06-03T15:00:00.000Z' })
/** E1 on the jaw line at 30 in, E2 so much lower. */
const yardWithE2 = (lowIn: number, more: readonly YardRecord[] = []): YardDocument => fusionYard({ exits: [[12.5, 0], [25, lowIn], [35.7, 8.5], [46.4, 17.5], [57.1, 22.75]], rollers: [67.8, 80.3, 92.8, 105.3, 117.8], neededFt: 110, more })
const yard = (...more: YardRecord[]): YardDocument => yardWithE2(1.5, more)
const supportAt = (site: SiteModel, label: string): SupportView => site.supports.find((one) => one.label === label)!

describe('heights as set', () => {
  it('replace the planned ones in the as-set case and only there', () => {
    const document = yard(asSet('stand:e2', inch(28)))
    const [planned, set] = [deriveSite(document), deriveSite(document, { variant: 'asSet' })]
    expect(supportAt(planned, 'E2').saddleM).toBeCloseTo(inch(28.5), 12)
    expect(supportAt(set, 'E2').saddleM).toBeCloseTo(inch(28), 12)
    for (const site of [planned, set]) {
      expect(supportAt(site, 'E2').plannedSaddleM).toBeCloseTo(inch(28.5), 12)
      expect(supportAt(site, 'E2').measuredSaddleM).toBeCloseTo(inch(28), 12)
      expect(supportAt(site, 'E1')).toMatchObject({ measuredSaddleM: null })
    }
    expect(supportAt(set, 'E1').saddleM).toBe(supportAt(planned, 'E1').saddleM)
  })
  it('E2 found at 28 in changes what the jaws feel: the same as E2 let down by ½ in', () => {
    const document = yard(asSet('stand:e2', inch(28)))
    const limits = limitsOf(document)
    const [planned, set, replanned] = [deriveSite(document), deriveSite(document, { variant: 'asSet' }), deriveSite(yardWithE2(2))].map((site) => createMechanics(site, limits)) as [Mechanics, Mechanics, Mechanics]
    for (const number of planned.joints) {
      expect(set.sideEffort('exit', number)).toBeCloseTo(replanned.sideEffort('exit', number)!, 9)
      expect(Math.abs(set.sideEffort('exit', number)! - planned.sideEffort('exit', number)!)).toBeGreaterThan(0.01)
    }
  })
  it('a rack has a figure for each beam; the beam nobody measured stays as planned', () => {
    const site = deriveSite(yard(asSet('rack:1', null, inch(29.5))), { variant: 'asSet' })
    expect(supportAt(site, 'R1').saddleM).toBeCloseTo(inch(30), 12)
    expect(supportAt(site, 'R2').saddleM).toBeCloseTo(inch(29.5), 12)
  })
  it('jaws found lower leave the stands where the plan put them', () => {
    const site = deriveSite(yard(asSet('machine:1', inch(29.75))), { variant: 'asSet' })
    expect(site.jaws.bopLevelM).toBeCloseTo(inch(29.75), 12)
    expect(supportAt(site, 'E1').saddleM).toBeCloseTo(inch(30), 12)
    // The jaw line itself went down: raising E1 to it means lowering it by ¼ in.
    expect(supportAt(site, 'E1').jawLineSaddleM).toBeCloseTo(inch(29.75), 12)
  })
  it('a height nobody planned is known once it is measured', () => {
    const document = yard(asSet('stand:new', inch(12)), { ...(yard().records['stand:e1'] as Extract<YardRecord, { kind: 'stand' }>), id: 'stand:new', height: { rule: 'unknown' }, place: { at: 'onRun', runId: 'run:1', runningM: ft(62), offsetM: 0, turnRad: 0 } })
    const find = (site: SiteModel): SupportView => site.supports.find(({ itemId }) => itemId === 'stand:new')!
    expect(find(deriveSite(document)).levelM).toBeNull()
    expect(find(deriveSite(document, { variant: 'asSet' })).saddleM).toBeCloseTo(inch(12), 12)
  })
  it('a figure taken back is forgotten, though nothing else changed', () => {
    const document = yard(asSet('stand:e2', inch(28)))
    deriveSite(document, { variant: 'asSet' })
    const records = { ...document.records }
    delete records['asSet:stande2']
    expect(supportAt(deriveSite({ records }, { variant: 'asSet' }), 'E2').saddleM).toBeCloseTo(inch(28.5), 12)
  })
})
