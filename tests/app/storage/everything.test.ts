import { describe, expect, it } from 'vitest'
import { everythingOf, readEverything } from '../../../src/app/storage/everything.ts'
import { memoryTables } from '../../../src/app/storage/tables.ts'
import { documentOf, item, job, layout, onRun, run, setUp, yard } from '../../helpers/documents.ts'
import { gearItem } from '../../helpers/gear.ts'
import { keeperOn, storeOf } from '../../helpers/keeperBench.ts'

const first = yard(item('stand', 'stand:1', onRun(6)))
const second = documentOf(layout({ layoutId: 'layout-two', title: 'Second' }), job(), setUp(), run())
const text = everythingOf({ at: '', documents: [first, second], gear: [gearItem()] })

describe('everything of a device', () => {
  it('is read back as it was written', () => {
    expect(readEverything(text)).toEqual({ documents: [first, second], gear: [gearItem()], refused: [] })
  })
  it('with one broken layout gives back the others and says which and why', () => {
    const broken = text.replace('"displayUnits": "feetInches"', '"displayUnits": "rods"')
    expect(readEverything(broken)).toMatchObject({ documents: [{ records: { 'layout:this': { layoutId: 'layout-two' } } }], refused: [{ en: expect.stringContaining('layout 1: layout.displayUnits "rods" is not known here') }] })
  })
  it('is nothing else: another file, another text', () => {
    expect([readEverything('{"format":"stringyard"}'), readEverything('no'), readEverything('null')]).toEqual([null, null, null])
  })
  it('comes back on to an empty device with its own ids, and beside what is there as copies', async () => {
    const keeper = keeperOn(memoryTables())
    expect(await keeper.restore(text)).toEqual({ layouts: 2, gear: 1, refused: [] })
    expect((await keeper.load('layout-two'))?.document).toEqual(second)
    expect(await keeper.gear()).toEqual([gearItem()])
    expect(await keeper.restore(text)).toEqual({ layouts: 2, gear: 0, refused: [] })
    const ids = (await keeper.layouts()).map(({ layoutId }) => layoutId)
    expect([ids.length, new Set(ids).size]).toEqual([4, 4])
    expect((await keeper.load('layout-two'))?.document).toEqual(second)
  })
  it('is what the keeper hands out', async () => {
    const keeper = keeperOn(memoryTables())
    const documents = storeOf(second)
    await keeper.attach(documents, 'layout-two', null)
    await keeper.putGear([gearItem()])
    expect(readEverything(await keeper.everything())).toEqual({ documents: [second], gear: [gearItem()], refused: [] })
  })
})
