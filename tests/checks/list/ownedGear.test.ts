import { describe, expect, it } from 'vitest'
import { ownedGear } from '../../../src/checks/list/ownedGear.ts'
import { runChecks } from '../../../src/checks/runner.ts'
import { deriveSite } from '../../../src/derive/site.ts'
import type { GearItem } from '../../../src/scene/gear.ts'
import { item, onRun, yard } from '../../helpers/documents.ts'
import { gearItem } from '../../helpers/gear.ts'
import { toolsFor } from '../yardCase.ts'

const stand = (id: string, runningM: number, over: Record<string, unknown> = {}) => item('stand', id, onRun(runningM), { roller: 'V', ...over })
/** Five V stands, the last along the tape not the last in the document, and a flat one. */
const five = yard(stand('stand:1', 4), stand('stand:5', 20), stand('stand:2', 8), stand('stand:3', 12), stand('stand:4', 16), item('stand', 'stand:6', onRun(24), { roller: 'flat' }))
const found = (owned: readonly GearItem[] | null, document = five) => {
  const site = deriveSite(document)
  return ownedGear.run(site, { ...toolsFor(site), owned })
}

describe('gear placed and owned', () => {
  it('more placed than owned is FIX, with what is beyond: the last along the tape', () => {
    const [one] = found([gearItem({ count: 3 })])
    expect([one!.level, one!.measured!.value, one!.limit!.value, one!.margin!.value]).toEqual(['FIX', 5, 3, -2])
    expect(one!.itemIds).toEqual(['stand:4', 'stand:5'])
    expect(one!.what.values).toMatchObject({ gear: 'V stands, blue', placed: 5, owned: 3, kind: { en: 'pipe stand' }, beyond: { en: 'pipe stand E4 and pipe stand E5' } })
    expect([one!.source, one!.move!.values]).toMatchObject([{ class: 'jobRule', cite: 'the crew’s gear list' }, { more: 2 }])
  })
  it('as many as are owned is met', () => expect(found([gearItem({ count: 5 })]).map(({ level }) => level)).toEqual(['met']))
  it('owning none of what is placed is FIX for all of it', () => expect(found([gearItem({ count: 0 })])[0]!.itemIds).toHaveLength(5))
  it('says nothing without a list, without a count, or of gear that is not on the list', () => {
    expect([found(null), found([]), found([gearItem({ count: null })])]).toEqual([[], [], []])
    expect(found([gearItem({ kind: 'roller', choices: {}, figures: {}, count: 1 })]).map(({ level }) => level)).toEqual(['met'])
  })
  it('counts an item against the sort it was taken from', () => {
    const own = [gearItem({ count: 4 }), gearItem({ id: 'gear:old', name: 'old stands', count: 0 })]
    const document = yard(stand('stand:1', 4), stand('stand:2', 8, { gearId: 'gear:old' }))
    expect(found(own, document).map(({ key, itemIds }) => [key, itemIds])).toEqual([['owned-gear@gear:old', ['stand:2']]])
  })
  it('each sort with too many has a finding of its own', () => {
    const flat = gearItem({ id: 'gear:flat', name: 'flat stands', choices: { roller: 'flat' }, count: 0 })
    expect(found([gearItem({ count: 4 }), flat]).map(({ key }) => key)).toEqual(['owned-gear@gear:v1', 'owned-gear@gear:flat'])
  })
  it('is run with the list the runner is given, and only then', () => {
    const of = (owned?: readonly GearItem[]) => runChecks(five, owned === undefined ? {} : { owned }).findings.filter(({ checkId }) => checkId === 'owned-gear').map(({ level }) => level)
    expect([of(), of([gearItem({ count: 4 })])]).toEqual([[], ['FIX']])
  })
})
